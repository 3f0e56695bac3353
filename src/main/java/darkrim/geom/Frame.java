package darkrim.geom;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A right-handed orthonormal frame: a plane with an origin and two in-plane directions.
 *
 * @param origin origin, mm
 * @param u first in-plane direction, unit length
 * @param v second in-plane direction, unit length, square to u
 * @param normal u x v, unit length
 */
public record Frame(Vector3D origin, Vector3D u, Vector3D v, Vector3D normal) {
    /** The frame of the layout: origin at 0, u along x, v along y, normal along z. */
    public static final Frame LAYOUT =
            new Frame(Vector3D.ZERO, Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y, Vector3D.Unit.PLUS_Z);

    private static final double SQUARE_TO = 1e-9;

    /**
     * @throws IllegalArgumentException if the origin is not finite or the directions are not a right-handed set of unit length, to 1e-9
     */
    public Frame {
        boolean unit = Math.abs(u.norm() - 1) < SQUARE_TO && Math.abs(v.norm() - 1) < SQUARE_TO;
        if (!(origin.isFinite() && unit && u.cross(v).distance(normal) < SQUARE_TO)) {
            throw new IllegalArgumentException(
                    "no right-handed frame: " + u + ", " + v + ", " + normal + " at " + origin);
        }
    }

    /**
     * A frame from an origin and two directions that need not be square to each other.
     *
     * @param origin origin, mm
     * @param along the direction of u, any length but 0
     * @param towards a direction in the plane on the side of v, not parallel to {@code along}
     * @throws IllegalArgumentException if the directions are zero or parallel
     */
    public static Frame of(Vector3D origin, Vector3D along, Vector3D towards) {
        Vector3D unitU = along.normalize();
        Vector3D unitNormal = unitU.cross(towards).normalize();
        return new Frame(origin, unitU, unitNormal.cross(unitU), unitNormal);
    }

    /**
     * A frame about a normal, with u chosen from the layout axis least along the normal.
     *
     * @param origin origin, mm
     * @param normal the normal, any length but 0
     * @throws IllegalArgumentException if the normal is zero
     */
    public static Frame about(Vector3D origin, Vector3D normal) {
        Vector3D unit = normal.normalize();
        Vector3D helper = Math.abs(unit.getX()) < 0.9 ? Vector3D.Unit.PLUS_X : Vector3D.Unit.PLUS_Y;
        Vector3D unitV = unit.cross(helper).normalize();
        return new Frame(origin, unitV.cross(unit), unitV, unit);
    }

    /** The point at in-plane coordinates, mm. */
    public Vector3D at(double inU, double inV) {
        return Vector3D.Sum.create()
                .add(origin)
                .addScaled(inU, u)
                .addScaled(inV, v)
                .get();
    }

    /** The coordinate along u of a point, mm. */
    public double inU(Vector3D point) {
        return point.subtract(origin).dot(u);
    }

    /** The coordinate along v of a point, mm. */
    public double inV(Vector3D point) {
        return point.subtract(origin).dot(v);
    }

    /** The signed distance of a point from the plane, mm; positive on the side of the normal. */
    public double height(Vector3D point) {
        return point.subtract(origin).dot(normal);
    }
}
