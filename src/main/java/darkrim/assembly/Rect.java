package darkrim.assembly;

import darkrim.layout.DetectorsShape.Side;
import darkrim.layout.DetectorsShape.Sides;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A rectangle along the axes, mm.
 *
 * @param minX least x
 * @param maxX greatest x
 * @param minY least y
 * @param maxY greatest y
 */
record Rect(double minX, double maxX, double minY, double maxY) {
    /** Differences below this, mm, are rounding: the borders are one. */
    private static final double ROUNDING = 1e-9;

    /** A square about a point. */
    static Rect square(Vector2D centre, double side) {
        return new Rect(
                centre.getX() - side / 2, centre.getX() + side / 2, centre.getY() - side / 2, centre.getY() + side / 2);
    }

    /** Grown outward by a length on each side. */
    Rect grown(Sides by) {
        return new Rect(minX - by.minusX(), maxX + by.plusX(), minY - by.minusY(), maxY + by.plusY());
    }

    /** This rectangle with the borders of another one on some sides. */
    Rect onSides(Set<Side> sides, Rect other) {
        return new Rect(
                sides.contains(Side.MINUS_X) ? other.minX : minX,
                sides.contains(Side.PLUS_X) ? other.maxX : maxX,
                sides.contains(Side.MINUS_Y) ? other.minY : minY,
                sides.contains(Side.PLUS_Y) ? other.maxY : maxY);
    }

    /**
     * This rectangle about another one: sides that differ by rounding only are made equal.
     *
     * @throws IllegalArgumentException if a side lies within the other rectangle
     */
    Rect about(Rect inner) {
        return new Rect(
                -outside(-minX, -inner.minX),
                outside(maxX, inner.maxX),
                -outside(-minY, -inner.minY),
                outside(maxY, inner.maxY));
    }

    private static double outside(double value, double inner) {
        if (!(value - inner >= -ROUNDING)) {
            throw new IllegalArgumentException("the ledge, margins and pads of its dies do not fit into one another");
        }
        return value - inner <= ROUNDING ? inner : value;
    }

    /** Its corners at a height, counter-clockwise from the least x and y. */
    List<Vector3D> corners(double z) {
        return List.of(
                Vector3D.of(minX, minY, z),
                Vector3D.of(maxX, minY, z),
                Vector3D.of(maxX, maxY, z),
                Vector3D.of(minX, maxY, z));
    }
}
