package darkrim.reference;

import java.util.Locale;

/**
 * A comparison of what was computed with what is known.
 *
 * @param id short name; rows are sorted by it
 * @param title what the number is
 * @param way how it was computed
 * @param expected what is known
 * @param got what was computed, as it is printed
 * @param allowed by how much it may differ, or the interval
 * @param z difference in standard errors; empty where nothing was sampled
 * @param source where the known number comes from
 */
record ValidationRow(
        String id, String title, String way, double expected, String got, String allowed, String z, String source) {

    /** A computed number, with no more digits than it must agree in. */
    static ValidationRow exact(
            String id, String title, String source, double expected, String way, double got, double within) {
        int digits = expected == 0 || within == 0
                ? 8
                : (int) Math.max(3, Math.min(8, Math.floor(Math.log10(Math.abs(expected) / within))));
        String allowed = within == 0 ? "0" : String.format(Locale.ROOT, "%.1g", within);
        // A difference that may be rounding is not shown: its bits are those of the machine.
        String shown = Math.abs(got) < within ? "0" : number(got, digits);
        return new ValidationRow(id, title, way, expected, shown, allowed, "", source);
    }

    /** A number with samples. */
    static ValidationRow sampled(ReferenceScalar scalar, String way, double got, String allowed, String z) {
        return new ValidationRow(
                scalar.id(),
                scalar.from().title(),
                way,
                scalar.value(),
                number(got, 8),
                allowed,
                z,
                scalar.from().source());
    }

    String known() {
        return number(expected, 8);
    }

    private static String number(double value, int digits) {
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : String.format(Locale.ROOT, "%." + digits + "g", value);
    }
}
