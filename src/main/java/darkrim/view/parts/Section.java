package darkrim.view.parts;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A plane square to an axis; what lies beyond it is cut away.
 *
 * @param axis 0 for x, 1 for y, 2 for z
 * @param offset where the plane meets the axis, mm
 * @param flipped whether the side of lower coordinates is cut away; otherwise that of higher ones
 */
public record Section(int axis, double offset, boolean flipped) {
    /** How far a point lies on the side that is cut away, mm; negative where it is kept. */
    public double beyond(double x, double y, double z) {
        double along = (axis == 0 ? x : axis == 1 ? y : z) - offset;
        return flipped ? -along : along;
    }

    /** How far a point lies on the side that is cut away, mm; negative where it is kept. */
    public double beyond(Vector3D point) {
        return beyond(point.getX(), point.getY(), point.getZ());
    }

    /** The direction to the side that is cut away, unit length. */
    public Vector3D outward() {
        double size = flipped ? -1 : 1;
        return Vector3D.of(axis == 0 ? size : 0, axis == 1 ? size : 0, axis == 2 ? size : 0);
    }

    /** The same plane elsewhere on its axis, mm. */
    public Section at(double otherOffset) {
        return new Section(axis, otherOffset, flipped);
    }

    /** The same plane with the other side cut away. */
    public Section turned() {
        return new Section(axis, offset, !flipped);
    }

    /** Name of the axis: x, y or z. */
    public String axisName() {
        return "xyz".substring(axis, axis + 1);
    }
}
