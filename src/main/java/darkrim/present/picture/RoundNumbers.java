package darkrim.present.picture;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers that are easily read: one digit times a power of ten, made in decimals so that no rounding shows in their letters. */
final class RoundNumbers {
    private static final int LEAST_PLAIN = -3;
    private static final int MOST_PLAIN = 4;

    /** Tenths of the numbers that may end a scale. */
    private static final int[] ENDS = {10, 12, 15, 20, 25, 30, 40, 50, 60, 80};

    private RoundNumbers() {}

    /** A number that may end a scale, no less than a value above 0 and at most a third more. */
    static double end(double value) {
        int decade = decadeBelow(value);
        for (int tenths : ENDS) {
            if (times(tenths, decade - 1) >= value) {
                return times(tenths, decade - 1);
            }
        }
        return powerOfTen(decade + 1);
    }

    /** The least of 1, 2, 5 times a power of ten that is no less than a value above 0. */
    static double atLeast(double value) {
        int decade = decadeBelow(value);
        for (int digit : new int[] {1, 2, 5}) {
            if (times(digit, decade) >= value) {
                return times(digit, decade);
            }
        }
        return powerOfTen(decade + 1);
    }

    /** The largest power of ten that is no more than a value above 0. */
    static int decadeBelow(double value) {
        BigDecimal exact = BigDecimal.valueOf(value);
        return exact.precision() - exact.scale() - 1;
    }

    /** The least power of ten that is no less than a value above 0. */
    static int decadeAbove(double value) {
        int below = decadeBelow(value);
        return powerOfTen(below) >= value ? below : below + 1;
    }

    /** A power of ten, correctly rounded. */
    static double powerOfTen(int power) {
        return BigDecimal.ONE.scaleByPowerOfTen(power).doubleValue();
    }

    /** A digit times a power of ten, correctly rounded. */
    static double times(int digit, int power) {
        return BigDecimal.valueOf(digit).scaleByPowerOfTen(power).doubleValue();
    }

    /** A whole number of steps, in the decimals of the step. */
    static double times(long count, double step) {
        return BigDecimal.valueOf(step).multiply(BigDecimal.valueOf(count)).doubleValue();
    }

    /** Three digits of a number in letters. */
    static String three(double value) {
        return Double.isFinite(value)
                ? letters(BigDecimal.valueOf(value).round(new MathContext(3)).doubleValue())
                : "unknown";
    }

    /** A number in letters, such as {@code 0.02}, {@code 5e-6} or {@code 1.25e6}. */
    static String letters(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).round(new MathContext(6));
        if (exact.signum() == 0) {
            return "0";
        }
        BigDecimal shown = exact.stripTrailingZeros();
        int power = shown.precision() - shown.scale() - 1;
        return power >= LEAST_PLAIN && power <= MOST_PLAIN
                ? shown.toPlainString()
                : shown.scaleByPowerOfTen(-power).stripTrailingZeros().toPlainString() + "e" + power;
    }
}
