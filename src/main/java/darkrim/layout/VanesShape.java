package darkrim.layout;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A set of vanes on the inside of a tube or cone about the z axis. Lengths in mm, angles in degrees.
 *
 * <p>The height of a vane is that of its edge, the circle at which it is narrowest; of an edge with a land it is the end of the land on the
 * side that the edge is on. The vane lies on the other side of this plane.
 *
 * @param wall the inner radius of the wall
 * @param edge the radius of the edges
 * @param base height of the base of the wall above the part's origin
 * @param height height of the wall
 * @param wallThickness thickness of the wall, measured level; absent where the vanes are rings of their own
 * @param heights heights of the edges above the part's origin, ascending
 * @param thickness thickness of a vane, measured along the axis
 * @param tilt lean of the vanes; positive if the edge lies nearer the light than the root
 * @param tip what the edge is like
 * @param chord allowed distance between circle and polygon
 */
public record VanesShape(
        Taper wall,
        Taper edge,
        double base,
        double height,
        OptionalDouble wallThickness,
        List<Double> heights,
        double thickness,
        double tilt,
        Tip tip,
        double chord)
        implements TurnedShape {

    /** Copies the list. */
    public VanesShape {
        heights = List.copyOf(heights);
    }

    /**
     * A radius that grows evenly from the base to the top.
     *
     * @param atBase at the base
     * @param atTop at the top
     */
    public record Taper(double atBase, double atTop) {}

    /**
     * The edge of a vane.
     *
     * @param land height of the straight land; without a bevel the whole thickness less the rounding
     * @param bevel angle between bevel and axis, 0 for none
     * @param radius radius of the rounding, 0 for a sharp edge; with a bevel there is a land or a rounding, not both
     * @param toward the side on which the edge is
     */
    public record Tip(double land, double bevel, double radius, Shape.Toward toward) {}

    /** Inner radius of the wall at a height above the part's origin. */
    public double wallAt(double z) {
        return at(wall, z);
    }

    /** Radius of an edge at a height above the part's origin. */
    public double edgeAt(double z) {
        return at(edge, z);
    }

    private double at(Taper taper, double z) {
        return taper.atBase() + (taper.atTop() - taper.atBase()) * (z - base) / height;
    }
}
