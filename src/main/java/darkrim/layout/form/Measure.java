package darkrim.layout.form;

import java.util.ArrayList;
import java.util.List;

/**
 * What a number measures, as powers of length and angle.
 *
 * @param length power of length
 * @param angle power of angle
 */
public record Measure(int length, int angle) {
    /** A plain number. */
    public static final Measure NUMBER = new Measure(0, 0);
    /** A length. */
    public static final Measure LENGTH = new Measure(1, 0);
    /** An angle. */
    public static final Measure ANGLE = new Measure(0, 1);

    /** Whether a dimension can be this: a length, an angle or a plain number. */
    boolean isOfADimension() {
        return equals(LENGTH) || equals(ANGLE) || equals(NUMBER);
    }

    /** What a product measures. */
    Measure times(Measure other) {
        return new Measure(length + other.length, angle + other.angle);
    }

    /** What a quotient measures. */
    Measure over(Measure other) {
        return new Measure(length - other.length, angle - other.angle);
    }

    /** What a power measures. */
    Measure power(int exponent) {
        return new Measure(length * exponent, angle * exponent);
    }

    /** {@code a length}, {@code an angle}, {@code a plain number}, or such as {@code length^2}. */
    @Override
    public String toString() {
        if (equals(NUMBER)) {
            return "a plain number";
        }
        if (equals(LENGTH)) {
            return "a length";
        }
        if (equals(ANGLE)) {
            return "an angle";
        }
        List<String> factors = new ArrayList<>();
        addFactor(factors, "length", length);
        addFactor(factors, "angle", angle);
        return String.join(" times ", factors);
    }

    private static void addFactor(List<String> factors, String name, int power) {
        if (power != 0) {
            factors.add(power == 1 ? name : name + "^" + power);
        }
    }
}
