package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Range;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import darkrim.reflection.AngleLaw;
import darkrim.reflection.Fresnel;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Makes a reflection of the keys of a finish, for one band of wavelengths, and sees to it that no more is reflected than arrives. */
final class FinishReader {
    /** Organic dyes absorb visible light only; from here on, um, such blacks turn bright (from memory). */
    private static final double DYES_END = 0.75;

    /** What a sum of reflectances may exceed 1 by, for the rounding of its quadrature. */
    private static final double ROUNDING = 1e-6;

    private static final Range SHARE = Range.closed(0, 1);

    private final Optional<Band> band;
    private final SpectralMean means;
    private final FinishTables tables;
    private final Findings findings;

    FinishReader(Optional<Band> band, SideFiles files, Findings findings) {
        this.band = band;
        this.means = new SpectralMean(band, findings);
        this.tables = new FinishTables(files, findings);
        this.findings = findings;
    }

    /** The reflection; empty, with a finding, where it cannot be had. */
    Optional<Reflection> reflection(Fields fields) {
        OptionalDouble diffuse = means.of(fields, "diffuse", SHARE);
        OptionalDouble mirror = means.of(fields, "mirror", SHARE);
        if (diffuse.isEmpty() || mirror.isEmpty()) {
            return Optional.empty();
        }
        List<Optional<Reflection>> parts = new ArrayList<>();
        parts.add(Optional.of(Reflection.of(diffuse.getAsDouble(), mirror.getAsDouble())));
        fields.find("fresnel").ifPresent(law -> parts.add(fresnel((Fields) law)));
        fields.find("coat").ifPresent(law -> parts.add(coat((Fields) law)));
        fields.list("roll_off").forEach(law -> parts.add(rollOff((Fields) law)));
        fields.find("brdf_table").ifPresent(name -> parts.add(tables.brdf(name)));
        Optional<Reflection> sum = sum(parts);
        Optional<Value> table = fields.find("reflectance_table");
        if (table.isPresent() && sum.isPresent()) {
            parts.add(tables.reflectance((Fields) table.get(), sum.get()));
            sum = sum(parts);
        }
        return sum.filter(all -> reflectsNotTooMuch(all, fields));
    }

    /** Warns of a black that is none in the layout's band. */
    void warnOfDye(Fields keys, Fields place) {
        if (keys.flag("dyed") && band.map(each -> each.to() > DYES_END).orElse(true)) {
            findings.warning(
                    "dyed-black",
                    place.place(),
                    "black by an organic dye, "
                            + band.map(each -> "in a band of " + each.describe())
                                    .orElse("and the layout states no band")
                            + ": beyond 0.75 um such blacks reflect 20 to 60 %; use measured values");
        }
    }

    private static Optional<Reflection> sum(List<Optional<Reflection>> parts) {
        return parts.stream().allMatch(Optional::isPresent)
                ? parts.stream().flatMap(Optional::stream).reduce(Reflection::and)
                : Optional.empty();
    }

    private Optional<Reflection> fresnel(Fields law) {
        OptionalDouble n = means.of(law, "n", Range.closed(0.01, 100));
        OptionalDouble k = means.of(law, "k", Range.closed(0, 1000));
        if (n.isEmpty() || k.isEmpty()) {
            return Optional.empty();
        }
        AngleLaw face = new Fresnel(n.getAsDouble(), k.getAsDouble(), law.number("times"));
        return Optional.of(new Reflection(0, List.of(face), List.of(), List.of()));
    }

    private Optional<Reflection> coat(Fields law) {
        OptionalDouble n = means.of(law, "n", Range.closed(1, 10));
        OptionalDouble base = means.of(law, "over", SHARE);
        return n.isEmpty() || base.isEmpty()
                ? Optional.empty()
                : Optional.of(Reflection.coat(n.getAsDouble(), base.getAsDouble()));
    }

    private Optional<Reflection> rollOff(Fields law) {
        OptionalDouble a = means.of(law, "a", Range.above(0, 1e9));
        return a.isEmpty()
                ? Optional.empty()
                : Optional.of(new Reflection(
                        0,
                        List.of(),
                        List.of(),
                        List.of(new RollOff(a.getAsDouble(), law.number("b"), law.number("g")))));
    }

    private boolean reflectsNotTooMuch(Reflection reflection, Fields fields) {
        boolean plain =
                reflection.isPlain() && reflection.mirrors().stream().allMatch(AngleLaw.Constant.class::isInstance);
        Reflection.Peak peak = reflection.peak();
        if (peak.reflectance() <= 1 + (plain ? 0 : ROUNDING)) {
            return true;
        }
        findings.error(
                "reflectance",
                fields.place(),
                plain
                        ? "diffuse and mirror add up to " + Wording.number(peak.reflectance()) + ", expected at most 1"
                        : "reflects " + shown(peak.reflectance()) + " at " + Wording.number(peak.angle())
                                + " deg, expected at most 1 at every angle");
        return false;
    }

    /** With as many digits as it takes to differ from 1. */
    private static String shown(double reflectance) {
        return Wording.number(reflectance < 1.001 ? reflectance : Math.round(1000 * reflectance) / 1000.0);
    }
}
