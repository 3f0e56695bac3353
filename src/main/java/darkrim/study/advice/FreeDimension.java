package darkrim.study.advice;

import darkrim.layout.Dimension;
import darkrim.layout.Quantity;
import darkrim.layout.Tolerance;
import java.math.BigDecimal;

/**
 * A named dimension that may change.
 *
 * @param name its name
 * @param kind what it measures
 * @param value its value in the file, in mm, degrees or plain
 * @param least least value that is tried
 * @param most greatest value that is tried
 * @param scale the change that counts as 1 where changes of several dimensions are added: its tolerance, or a usual one
 */
public record FreeDimension(String name, Quantity kind, double value, double least, double most, double scale) {
    /** How far an angle may go either way, deg. */
    private static final double ANGLE = 15;
    /** How far a length may go either way: half of itself, but at least so many mm. */
    private static final double HALF = 0.5;

    private static final double SHORT = 3;
    /** How far a plain number that is 0 may go either way. */
    private static final double PLAIN = 1;
    /** A size goes no nearer to 0 than this share of itself. */
    private static final double NEAREST_ZERO = 0.05;

    /** Sizes up to which the next general tolerance counts, mm: ISO 2768-1, class m, linear dimensions, from memory. */
    private static final double[] SIZES = {6, 30, 120, 400, 1000, 2000, Double.POSITIVE_INFINITY};

    private static final double[] TOLERANCES = {0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2};
    /** Of an angle, deg; the same source, sides of 10 to 50 mm, from memory. */
    private static final double ANGLE_TOLERANCE = 0.5;
    /** Of a plain number, as a share of it. */
    private static final double PLAIN_TOLERANCE = 0.01;

    /**
     * A dimension within the range that is tried where the user states none: an angle 15 deg either way; a length or plain number half of itself
     * either way, a length at least 3 mm, but no nearer to 0 than a twentieth of itself.
     */
    static FreeDimension of(Dimension dimension) {
        double value = dimension.value();
        double way = switch (dimension.kind()) {
            case ANGLE -> ANGLE;
            case LENGTH -> Math.max(SHORT, HALF * Math.abs(value));
            case NUMBER -> value == 0 ? PLAIN : HALF * Math.abs(value);
        };
        double least = value - way;
        double most = value + way;
        if (dimension.kind() != Quantity.ANGLE && value != 0) {
            least = value > 0 ? Math.max(least, NEAREST_ZERO * value) : least;
            most = value < 0 ? Math.min(most, NEAREST_ZERO * value) : most;
        }
        return new FreeDimension(dimension.name(), dimension.kind(), value, least, most, scale(dimension));
    }

    private static double scale(Dimension dimension) {
        double stated = dimension
                .tolerance()
                .filter(tolerance -> !tolerance.isNothing())
                .map(FreeDimension::half)
                .orElse(0.0);
        if (stated > 0) {
            return stated;
        }
        double size = Math.abs(dimension.value());
        return switch (dimension.kind()) {
            case ANGLE -> ANGLE_TOLERANCE;
            case LENGTH -> general(size);
            case NUMBER -> PLAIN_TOLERANCE * (size == 0 ? 1 : size);
        };
    }

    private static double half(Tolerance tolerance) {
        return 0.5 * (tolerance.minus() + tolerance.plus());
    }

    private static double general(double size) {
        int row = 0;
        while (size > SIZES[row]) {
            row++;
        }
        return TOLERANCES[row];
    }

    /** The same within another range. */
    FreeDimension within(double newLeast, double newMost) {
        return new FreeDimension(name, kind, value, newLeast, newMost, scale);
    }

    /** What round values are steps of: 1 mm, 1 deg, or the power of ten that a plain number begins with (1 for 0), so that they have few digits. */
    double unitSize() {
        if (kind != Quantity.NUMBER || value == 0) {
            return 1;
        }
        BigDecimal written = BigDecimal.valueOf(value);
        return BigDecimal.ONE
                .scaleByPowerOfTen(written.precision() - written.scale() - 1)
                .doubleValue();
    }

    /** Unit of its values: {@code mm}, {@code deg}, or empty. */
    public String unit() {
        return switch (kind) {
            case LENGTH -> "mm";
            case ANGLE -> "deg";
            case NUMBER -> "";
        };
    }
}
