package darkrim.present;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers for people: three digits that matter, with the error in the same power of ten. Letters are ASCII. */
public final class Figures {
    private static final int DIGITS = 3;
    /** Digits of what was written by hand. */
    private static final int WRITTEN_DIGITS = 6;
    /** Digits of a value that is to be typed again: what is left out is rounding of the last digits. */
    private static final int VALUE_DIGITS = 12;
    /** Decimals after the leading digit, at most, however small the error is. */
    private static final int MOST_DECIMALS = 4;
    /** Powers of ten of the leading digit that are written without an exponent. */
    private static final int LEAST_PLAIN = -3;

    private static final int MOST_PLAIN = 4;

    private Figures() {}

    /** Three digits that matter, such as {@code 0.0123} or {@code 2.10e-6}. */
    public static String three(double value) {
        return three(value, RoundingMode.HALF_EVEN);
    }

    /** Three digits that matter, never less than the value: for upper bounds. */
    static String atMost(double value) {
        return three(value, RoundingMode.CEILING);
    }

    /** Three digits that matter, never more than the value: for lower bounds. */
    static String atLeast(double value) {
        return three(value, RoundingMode.FLOOR);
    }

    /**
     * A value with its error, such as {@code 0.0123 +- 0.0004} or {@code (2.10 +- 0.04)e-6}. The error is rounded up.
     *
     * @param value the value
     * @param error its standard error; infinite where it is unknown
     */
    public static String withError(double value, double error) {
        if (!Double.isFinite(value) || !Double.isFinite(error)) {
            return three(value) + " +- unknown";
        }
        if (error == 0) {
            return three(value) + " +- 0";
        }
        int power = power(rounded(value != 0 ? value : error, RoundingMode.HALF_EVEN));
        int errorPower = power(BigDecimal.valueOf(error));
        int decimals = Math.min(MOST_DECIMALS, Math.max(DIGITS - 1, power - errorPower));
        if (isPlain(power)) {
            int scale = Math.max(0, decimals - power);
            return scaled(value, scale, RoundingMode.HALF_EVEN) + " +- " + scaled(error, scale, RoundingMode.CEILING);
        }
        BigDecimal shownValue = BigDecimal.valueOf(value).scaleByPowerOfTen(-power);
        BigDecimal shownError = BigDecimal.valueOf(error).scaleByPowerOfTen(-power);
        return "(" + shownValue.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString() + " +- "
                + shownError.setScale(decimals, RoundingMode.CEILING).toPlainString() + ")e" + power;
    }

    /** A count with separators, such as {@code 1,048,576}. */
    public static String count(long count) {
        return String.format(Locale.ROOT, "%,d", count);
    }

    /** A count of things, such as {@code 1 surface} or {@code 2 surfaces}. */
    public static String counted(long count, String one) {
        return count(count) + " " + one + (count == 1 ? "" : "s");
    }

    /** All of some things: {@code the surface}, {@code both surfaces} or {@code all 3 surfaces}. */
    static String all(long count, String one) {
        return count == 1 ? "the " + one : count == 2 ? "both " + one + "s" : "all " + counted(count, one);
    }

    /** A share as a percentage with one decimal; a share too small for it is {@code < 0.1 %}. */
    public static String percent(double share) {
        return share > 0 && share < 0.001 ? "< 0.1 %" : String.format(Locale.ROOT, "%.1f %%", 100 * share);
    }

    /** A share of a whole with six decimals at most, never more than the share, such as {@code 0.9931}. */
    static String shareAtLeast(double share) {
        return share(share, RoundingMode.FLOOR);
    }

    /** A share of a whole with six decimals at most, such as {@code 0.9931}. */
    static String share(double share) {
        return share(share, RoundingMode.HALF_EVEN);
    }

    private static String share(double share, RoundingMode mode) {
        BigDecimal shown = BigDecimal.valueOf(share).setScale(6, mode);
        return shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
    }

    /** A confidence as a percentage with all its nines, such as {@code 99.9 %}; below 100 % unless it is 1. */
    public static String confidence(double share) {
        return digits(share).movePointRight(2).toPlainString() + " %";
    }

    /** A limit as it was written, such as {@code 2e-5} or {@code 0.999}; below 1 it never reads 1. */
    public static String limit(double value) {
        BigDecimal shown = digits(value);
        int power = power(shown);
        return shown.signum() == 0 || power >= LEAST_PLAIN
                ? shown.toPlainString()
                : shown.scaleByPowerOfTen(-power).toPlainString() + "e" + power;
    }

    /** Six digits that matter, and more where the value is so near 1 that they would not tell it from 1; no useless zeros. */
    private static BigDecimal digits(double value) {
        BigDecimal exact = BigDecimal.valueOf(value);
        BigDecimal toOne = BigDecimal.ONE.subtract(exact).round(new MathContext(DIGITS));
        int decimals = Math.max(WRITTEN_DIGITS - 1 - power(exact), toOne.signum() == 0 ? 0 : toOne.scale());
        BigDecimal stripped =
                exact.setScale(Math.max(0, decimals), RoundingMode.HALF_EVEN).stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /** A length in mm with three decimals at most, without the unit. */
    public static String length(double millimetres) {
        BigDecimal shown = BigDecimal.valueOf(millimetres).setScale(3, RoundingMode.HALF_EVEN);
        return shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
    }

    /** The value of a dimension with as many digits as give the layout back, at most twelve that matter; no useless zeros. */
    public static String value(double value) {
        return decimal(value).toPlainString();
    }

    /** How far a dimension goes from one value to another, with its sign; the difference of {@link #value} of both. */
    static String change(double from, double to) {
        BigDecimal change = decimal(to).subtract(decimal(from)).stripTrailingZeros();
        return (change.signum() > 0 ? "+" : "") + (change.signum() == 0 ? "0" : change.toPlainString());
    }

    private static BigDecimal decimal(double value) {
        BigDecimal shown = BigDecimal.valueOf(value)
                .round(new MathContext(VALUE_DIGITS, RoundingMode.HALF_EVEN))
                .stripTrailingZeros();
        return shown.signum() == 0 ? BigDecimal.ZERO : shown;
    }

    /** A margin in mm with three decimals, never more than it is, without the unit. */
    public static String margin(double millimetres) {
        return toNanometres(millimetres).setScale(3, RoundingMode.FLOOR).toPlainString();
    }

    /** A margin in mm with three decimals, never less than it is, without the unit: for what is only known to be at most that. */
    static String marginAtMost(double millimetres) {
        return toNanometres(millimetres).setScale(3, RoundingMode.CEILING).toPlainString();
    }

    /** A margin in mm with three digits that matter, never more than it is, without the unit. */
    static String fineMargin(double millimetres) {
        return atLeast(toNanometres(millimetres).doubleValue());
    }

    /** What is less is rounding. */
    private static BigDecimal toNanometres(double millimetres) {
        return BigDecimal.valueOf(millimetres).setScale(6, RoundingMode.HALF_EVEN);
    }

    private static String three(double value, RoundingMode mode) {
        if (!Double.isFinite(value)) {
            return "unknown";
        }
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = rounded(value, mode);
        int power = power(rounded);
        if (isPlain(power)) {
            return rounded.setScale(Math.max(0, DIGITS - 1 - power), RoundingMode.UNNECESSARY)
                    .toPlainString();
        }
        return rounded.scaleByPowerOfTen(-power)
                        .setScale(DIGITS - 1, RoundingMode.UNNECESSARY)
                        .toPlainString()
                + "e" + power;
    }

    private static BigDecimal rounded(double value, RoundingMode mode) {
        return BigDecimal.valueOf(value).round(new MathContext(DIGITS, mode));
    }

    private static int power(BigDecimal value) {
        return value.precision() - value.scale() - 1;
    }

    private static boolean isPlain(int power) {
        return power >= LEAST_PLAIN && power <= MOST_PLAIN;
    }

    private static String scaled(double value, int scale, RoundingMode mode) {
        return BigDecimal.valueOf(value).setScale(scale, mode).toPlainString();
    }
}
