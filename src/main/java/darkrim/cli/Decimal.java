package darkrim.cli;

import java.util.regex.Pattern;

/** Reads decimal numbers. */
final class Decimal {
    /** Java's own reader takes {@code 80f}, {@code 300d} and {@code 0x14p0} too, which nobody means by a number. */
    private static final Pattern FORM = Pattern.compile("[-+]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][-+]?[0-9]+)?");

    private Decimal() {}

    /**
     * The number that is written, such as {@code -0.5} or {@code 2e8}; space around it is no part of it.
     *
     * @throws NumberFormatException if it is no decimal number
     */
    static double read(String text) {
        String digits = text.strip();
        if (!FORM.matcher(digits).matches()) {
            throw new NumberFormatException(digits);
        }
        return Double.parseDouble(digits);
    }
}
