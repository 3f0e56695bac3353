package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.Amount;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Range;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Means of values over the band of a layout, every wavelength alike. Where values are not given for all of the band, nothing is made up: that is an
 * error.
 */
final class SpectralMean {
    private static final String CODE = "wavelength";

    private final Optional<Band> band;
    private final Findings findings;

    SpectralMean(Optional<Band> band, Findings findings) {
        this.band = band;
        this.findings = findings;
    }

    /** One stretch of wavelengths, the value at both ends. */
    private record Stretch(double from, double to, double first, double last) {
        /** The integral over what lies between two wavelengths. */
        double integral(double low, double high) {
            double a = Math.max(from, low);
            double b = Math.min(to, high);
            double middle = first + ((a + b) / 2 - from) / (to - from) * (last - first);
            return b > a ? (b - a) * middle : 0;
        }
    }

    /**
     * The value of a key, or its mean over the band.
     *
     * @param range what is allowed at every wavelength
     * @return empty, with a finding, where it cannot be had
     */
    OptionalDouble of(Fields fields, String key, Range range) {
        Value value = fields.find(key).orElseThrow();
        if (value instanceof Amount) {
            return OptionalDouble.of(Fields.number(value));
        }
        Fields table = (Fields) value;
        Optional<List<Stretch>> stretches =
                table.has("per_band") ? perBand(table, range) : overWavelength(table, range);
        return stretches.map(found -> mean(found, table.place())).orElse(OptionalDouble.empty());
    }

    private Optional<List<Stretch>> perBand(Fields table, Range range) {
        List<Stretch> stretches = new ArrayList<>();
        boolean sound = true;
        for (Value each : table.list("per_band")) {
            List<Value> three = ((Value.Items) each).items();
            double from = Fields.number(three.get(0));
            double to = Fields.number(three.get(1));
            double value = Fields.number(three.get(2));
            sound &= inRange(value, range, three.get(2).place());
            double last = stretches.isEmpty() ? 0 : stretches.get(stretches.size() - 1).to;
            if (!(from >= last && to > from)) {
                sound = error(
                        each.place(),
                        "a band from " + Wording.number(from) + " to " + Wording.number(to)
                                + " um, expected bands that increase and do not overlap");
            }
            stretches.add(new Stretch(from, to, value, value));
        }
        return sound ? Optional.of(stretches) : Optional.empty();
    }

    private Optional<List<Stretch>> overWavelength(Fields table, Range range) {
        List<Stretch> stretches = new ArrayList<>();
        boolean sound = true;
        double last = 0;
        double lastValue = 0;
        for (Value each : table.list("over_wavelength")) {
            List<Value> two = ((Value.Items) each).items();
            double at = Fields.number(two.get(0));
            double value = Fields.number(two.get(1));
            sound &= inRange(value, range, two.get(1).place());
            if (!(at > last)) {
                sound = error(
                        two.get(0).place(),
                        "a wavelength of " + Wording.number(at) + " um, expected wavelengths that increase");
            }
            if (last > 0) {
                stretches.add(new Stretch(last, at, lastValue, value));
            }
            last = at;
            lastValue = value;
        }
        return sound ? Optional.of(stretches) : Optional.empty();
    }

    private OptionalDouble mean(List<Stretch> stretches, Place place) {
        if (band.isEmpty()) {
            error(
                    place,
                    "the value depends on wavelength and the layout states no band, expected the key 'band'"
                            + " of the layout, such as band: [1, 2.5]");
            return OptionalDouble.empty();
        }
        double at = band.get().from();
        double sum = 0;
        for (Stretch stretch : stretches) {
            if (stretch.from <= at && stretch.to > at) {
                sum += stretch.integral(at, band.get().to());
                at = Math.min(stretch.to, band.get().to());
            }
        }
        if (at < band.get().to()) {
            error(
                    place,
                    "no value for " + Wording.number(at) + " um, expected values for all of the band of "
                            + band.get().describe());
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(sum / (band.get().to() - band.get().from()));
    }

    private boolean inRange(double value, Range range, Place place) {
        if (range.contains(value)) {
            return true;
        }
        findings.error("range", place, Wording.number(value) + " is out of range, expected " + range.describe(""));
        return false;
    }

    private boolean error(Place place, String message) {
        findings.error(CODE, place, message);
        return false;
    }
}
