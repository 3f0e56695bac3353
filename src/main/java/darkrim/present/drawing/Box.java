package darkrim.present.drawing;

import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A rectangle on paper; x to the right, y downward from the upper left corner of the sheet, mm.
 *
 * @param x left side
 * @param y upper side
 * @param width width
 * @param height height
 */
public record Box(double x, double y, double width, double height) {
    /** Right side, mm. */
    public double right() {
        return x + width;
    }

    /** Lower side, mm. */
    public double bottom() {
        return y + height;
    }

    /** Whether they have more than their border in common. */
    public boolean overlaps(Box other) {
        return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
    }

    /** Whether the other lies inside it; the border counts. */
    public boolean holds(Box other) {
        return other.x >= x && other.y >= y && other.right() <= right() && other.bottom() <= bottom();
    }

    /** Whether a point lies inside it. */
    public boolean holds(Vector2D point) {
        return point.getX() >= x && point.getX() <= right() && point.getY() >= y && point.getY() <= bottom();
    }

    /** The same, smaller on every side. */
    public Box inside(double by) {
        return new Box(x + by, y + by, width - 2 * by, height - 2 * by);
    }
}
