package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import darkrim.reflection.AngleLaw;
import darkrim.reflection.AngleTable;
import darkrim.reflection.BrdfRow;
import darkrim.reflection.BrdfTable;
import darkrim.reflection.ProductScatter;
import darkrim.reflection.Reflection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/** Measured finishes: reflectance against the angle of incidence, and BRDF. What lies beyond the measured angles is said in a warning. */
final class FinishTables {
    private static final List<String> REFLECTANCE = List.of("angle_deg", "reflectance");
    private static final List<String> BRDF = List.of("theta_i_deg", "theta_s_deg", "phi_s_deg", "brdf_per_sr");
    /** A table that is further than this from what was measured is named. */
    private static final double MISFIT = 0.25;

    private static final String CODE = "table";

    private final SideFiles files;
    private final Findings findings;

    FinishTables(SideFiles files, Findings findings) {
        this.files = files;
        this.findings = findings;
    }

    /**
     * The reflectance of a table.
     *
     * @param table the table's keys
     * @param others what the finish reflects beside it: beyond the last angle the table rises to all that this leaves at 90 deg
     */
    Optional<Reflection> reflectance(Fields table, Reflection others) {
        List<NumberTable.Row> rows = table.has("file")
                ? NumberTable.read(files, table.find("file").orElseThrow(), REFLECTANCE, findings)
                : table.list("rows").stream().map(NumberTable::inline).toList();
        List<Double> angles = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        boolean sound = !rows.isEmpty();
        for (NumberTable.Row row : rows) {
            double angle = row.numbers().get(0);
            double value = row.numbers().get(1);
            double last = angles.isEmpty() ? -1 : angles.get(angles.size() - 1);
            if (!(angle >= 0 && angle <= 90 && angle > last)) {
                sound = error(
                        row.places().get(0),
                        "an angle of incidence of " + Wording.number(angle)
                                + " deg, expected angles that increase, from 0 to 90 deg");
            }
            if (!(value >= 0 && value <= 1)) {
                sound = error(row.places().get(1), "a reflectance of " + Wording.number(value) + ", expected 0 to 1");
            }
            angles.add(angle);
            values.add(value);
        }
        if (!sound) {
            return Optional.empty();
        }
        double first = angles.get(0);
        double last = angles.get(angles.size() - 1);
        if (last < 90) {
            angles.add(90.0);
            values.add(Math.min(1, Math.max(values.get(values.size() - 1), 1 - others.reflectance(0))));
        }
        if (first > 0 || last < 90) {
            findings.warning(
                    "beyond-measured",
                    table.place(),
                    "measured from " + Wording.number(first) + " to "
                            + Wording.number(last) + " deg of incidence; "
                            + (first > 0 ? "below, the first value stands" : "")
                            + (first > 0 && last < 90 ? "; " : "")
                            + (last < 90
                                    ? "beyond, the reflectance is taken to rise in a straight line to "
                                            + Wording.number(values.get(values.size() - 1))
                                            + " at 90 deg; expected measured values there where such light counts"
                                    : ""));
        }
        if (angles.size() < 2) {
            angles.add(0, 0.0);
            values.add(0, values.get(0));
        }
        AngleLaw law = new AngleTable(angles, values);
        return Optional.of(
                table.text("as").equals("mirror")
                        ? new Reflection(0, List.of(law), List.of(), List.of())
                        : new Reflection(0, List.of(), List.of(ProductScatter.of(law)), List.of()));
    }

    /**
     * The lobe of a measured BRDF.
     *
     * @param name the name of its file
     */
    Optional<Reflection> brdf(Value name) {
        List<BrdfRow> rows = new ArrayList<>();
        boolean sound = true;
        for (NumberTable.Row row : NumberTable.read(files, name, BRDF, findings)) {
            Optional<BrdfRow> read = row(row);
            read.ifPresent(rows::add);
            sound &= read.isPresent();
        }
        if (!sound || rows.isEmpty()) {
            return Optional.empty();
        }
        if (rows.stream().allMatch(row -> row.value() == 0)) {
            error(name.place(), "every BRDF in the file is 0, expected one above 0");
            return Optional.empty();
        }
        BrdfTable table = files.table(Fields.text(name), rows);
        warn(table, name.place());
        return Optional.of(new Reflection(0, List.of(), List.of(), List.of(table)));
    }

    /** Angles as ASTM E2387 has them, the sign of azimuths from memory: a negative polar angle lies on the far side of the normal. */
    private Optional<BrdfRow> row(NumberTable.Row row) {
        double[] n = row.numbers().stream().mapToDouble(Double::doubleValue).toArray();
        boolean sound = true;
        if (!(n[0] >= 0 && n[0] <= 90)) {
            sound = error(
                    row.places().get(0), "an angle of incidence of " + Wording.number(n[0]) + " deg, expected 0 to 90");
        }
        if (!(n[1] >= -90 && n[1] <= 90)) {
            sound = error(row.places().get(1), "a polar angle of " + Wording.number(n[1]) + " deg, expected -90 to 90");
        }
        if (!(n[2] >= -360 && n[2] <= 360)) {
            sound = error(row.places().get(2), "an azimuth of " + Wording.number(n[2]) + " deg, expected -360 to 360");
        }
        if (!(n[3] >= 0 && n[3] < 1e9)) {
            sound = error(
                    row.places().get(3),
                    "a BRDF of " + Wording.number(n[3]) + " per sr, expected 0 or more and less than 1e9");
        }
        if (!sound) {
            return Optional.empty();
        }
        double turned = n[1] < 0 ? n[2] + 180 : n[2];
        double within = Math.abs(turned % 360);
        return Optional.of(new BrdfRow(n[0], Math.abs(n[1]), within > 180 ? 360 - within : within, n[3]));
    }

    private void warn(BrdfTable table, Place place) {
        TreeMap<Double, Double> reach = new TreeMap<>();
        for (BrdfRow row : table.rows()) {
            reach.merge(row.incidence(), row.polar(), Math::max);
        }
        double least =
                reach.values().stream().mapToDouble(Double::doubleValue).min().orElse(0);
        findings.warning(
                "beyond-measured",
                place,
                "measured at incidence " + Wording.number(reach.firstKey()) + " to "
                        + Wording.number(reach.lastKey()) + " deg and scattered up to " + Wording.number(least) + " deg"
                        + (table.isInPlaneOnly() ? ", in the plane of incidence only" : "")
                        + "; beyond, the nearest measured value stands, expected measured values there where such light counts");
        double misfit = table.worstMisfit();
        if (misfit > MISFIT) {
            findings.warning(
                    "misfit",
                    place,
                    "the reciprocal table is up to " + Math.round(100 * misfit)
                            + " % from a measured value: the measurement contradicts itself with both directions exchanged, or is"
                            + " too coarse or too sharply peaked for the table; expected more rows, or the peak under 'mirror' or 'roll_off'");
        }
    }

    private boolean error(Place place, String message) {
        findings.error(CODE, place, message);
        return false;
    }
}
