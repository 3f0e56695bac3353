package darkrim.study.section;

import darkrim.geom.Frame;
import darkrim.layout.form.Wording;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A plane at which a layout is cut. A section is seen against the normal: u to the right, v upward, the normal toward the eye.
 *
 * @param frame the plane; coordinates in a section are those of its u and v, mm
 * @param words how it is told to a reader, such as {@code x = 20 mm}
 * @param across what is measured along u, such as {@code y}
 * @param up what is measured along v, such as {@code z}
 */
public record SectionPlane(Frame frame, String words, String across, String up) {
    private static final Vector3D[] AXES = {Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y, Vector3D.Unit.PLUS_Z};

    /** Less of a normal than this, aside from z, is rounding. */
    private static final double LEVEL = 1e-9;

    /**
     * A plane square to an axis, in the coordinates of the layout: upright planes have z upward, a level one y.
     *
     * @param axis 0 for x, 1 for y, 2 for z
     * @param place where it crosses the axis, mm
     */
    public static SectionPlane square(int axis, double place) {
        Vector3D right = axis == 0 ? AXES[1] : AXES[0];
        Vector3D upward = axis == 2 ? AXES[1] : AXES[2];
        return new SectionPlane(
                Frame.of(AXES[axis].multiply(place), right, upward),
                "xyz".charAt(axis) + " = " + Wording.number(place) + " mm",
                axis == 0 ? "y" : "x",
                axis == 2 ? "y" : "z");
    }

    /**
     * Any plane: u is level, v as far upward as the plane allows. Coordinates are counted from the point.
     *
     * @param point a point of it, mm
     * @param normal its normal, toward the eye, any length but 0
     * @throws IllegalArgumentException if the normal has no direction
     */
    public static SectionPlane through(Vector3D point, Vector3D normal) {
        Vector3D toward = normal.normalize();
        Vector3D level = Vector3D.Unit.PLUS_Z.cross(toward);
        Vector3D right = level.norm() > LEVEL ? level.normalize() : Vector3D.Unit.PLUS_X;
        return new SectionPlane(
                Frame.of(point, right, toward.cross(right)),
                "through " + written(point) + " mm, seen against " + written(normal),
                "u",
                "v");
    }

    private static String written(Vector3D point) {
        return "(" + Wording.number(point.getX()) + ", " + Wording.number(point.getY()) + ", "
                + Wording.number(point.getZ()) + ")";
    }

    /** A point of space as it is seen in the section, mm. */
    public Vector2D seen(Vector3D point) {
        return Vector2D.of(frame.inU(point), frame.inV(point));
    }

    /** A point of the plane in space, mm. */
    public Vector3D at(Vector2D point) {
        return frame.at(point.getX(), point.getY());
    }

    /** Whether light that comes along a direction runs in the plane, so that rays can be drawn in it; a plane across it shows none. */
    boolean holds(Vector3D direction) {
        return Math.abs(frame.normal().dot(direction.normalize())) < 0.5;
    }
}
