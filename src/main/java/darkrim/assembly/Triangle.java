package darkrim.assembly;

import darkrim.geom.Placement;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A facet; corners counter-clockwise as seen from outside the solid, or from the front of a sheet.
 *
 * @param a first corner, mm
 * @param b second corner, mm
 * @param c third corner, mm
 */
public record Triangle(Vector3D a, Vector3D b, Vector3D c) {
    /** Twice the area times the unit normal, mm2. */
    public Vector3D doubledNormal() {
        return b.subtract(a).cross(c.subtract(a));
    }

    /** Area, mm2. */
    public double area() {
        return doubledNormal().norm() / 2;
    }

    /** The same facet in place; a mirrored one is wound the other way round, so that its normal still points out. */
    Triangle placed(Placement placement) {
        Vector3D first = placedCorner(placement, a);
        Vector3D second = placedCorner(placement, b);
        Vector3D third = placedCorner(placement, c);
        return placement.mirrors() ? new Triangle(first, third, second) : new Triangle(first, second, third);
    }

    /** Adding 0 turns -0 into 0: corners that coincide are then equal bit for bit. */
    static Vector3D placedCorner(Placement placement, Vector3D corner) {
        return placement.point(corner).add(Vector3D.ZERO);
    }
}
