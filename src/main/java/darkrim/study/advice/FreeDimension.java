package darkrim.study.advice;

import darkrim.layout.Dimension;
import darkrim.layout.Quantity;

/**
 * A named dimension that may change.
 *
 * @param name its name
 * @param kind what it measures
 * @param value its value in the file, in mm, degrees or plain
 * @param least least value that is tried
 * @param most greatest value that is tried
 */
public record FreeDimension(String name, Quantity kind, double value, double least, double most) {
    /** How far a dimension that is 0 may go either way, mm or plain. */
    private static final double FROM_ZERO = 1;
    /** How far an angle may go either way, deg. */
    private static final double ANGLE = 15;
    /** A size goes no nearer to 0 than this share of itself. */
    private static final double NEAREST_ZERO = 0.01;

    /**
     * A dimension within the range that is tried where the user states none: an angle 15 deg either way; a length or plain number from a hundredth
     * to twice its value; one that is 0 from -1 to 1.
     */
    static FreeDimension of(Dimension dimension) {
        double value = dimension.value();
        if (dimension.kind() == Quantity.ANGLE) {
            return new FreeDimension(dimension.name(), dimension.kind(), value, value - ANGLE, value + ANGLE);
        }
        double one = value == 0 ? -FROM_ZERO : NEAREST_ZERO * value;
        double other = value == 0 ? FROM_ZERO : 2 * value;
        return new FreeDimension(dimension.name(), dimension.kind(), value, Math.min(one, other), Math.max(one, other));
    }

    /** The same within another range. */
    FreeDimension within(double newLeast, double newMost) {
        return new FreeDimension(name, kind, value, newLeast, newMost);
    }

    /** The change that counts as 1 where changes of several dimensions are added: 1 mm, 1 deg, or a plain number's own size (1 for 0). */
    public double scale() {
        return kind == Quantity.NUMBER && value != 0 ? Math.abs(value) : 1;
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
