package darkrim.view.work;

import darkrim.layout.Quantity;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The value of a dimension as it is typed: a number with or without its unit. */
public final class TypedValue {
    private static final Pattern FORM =
            Pattern.compile("([-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d{1,4})?)\\s*([a-z]*)");

    private TypedValue() {}

    /**
     * Reads a value.
     *
     * @param text what was typed
     * @param kind what it is a value of
     * @return the value, in mm, degrees or plain; empty if it is no finite number, or in another unit
     */
    public static Optional<Double> of(String text, Quantity kind) {
        Matcher matcher = FORM.matcher(text.strip());
        if (!matcher.matches()
                || !(matcher.group(2).isEmpty() || matcher.group(2).equals(unit(kind)))) {
            return Optional.empty();
        }
        double value = Double.parseDouble(matcher.group(1));
        return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
    }

    /** What is expected, in words. */
    public static String expected(Quantity kind) {
        String unit = unit(kind);
        return unit.isEmpty() ? "a number without unit" : "a number, in " + unit + " or with the unit " + unit;
    }

    private static String unit(Quantity kind) {
        return kind == Quantity.LENGTH ? "mm" : kind == Quantity.ANGLE ? "deg" : "";
    }
}
