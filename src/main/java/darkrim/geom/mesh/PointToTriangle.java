package darkrim.geom.mesh;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** How far a point is from a triangle: from its plane where the foot lies within, otherwise from the nearest side. */
public final class PointToTriangle {
    private PointToTriangle() {}

    /** The distance, mm; the triangle must have area. */
    public static double distance(Vector3D p, Vector3D a, Vector3D b, Vector3D c) {
        Vector3D normal = b.subtract(a).cross(c.subtract(a)).normalize();
        boolean within = isLeft(p, a, b, normal) && isLeft(p, b, c, normal) && isLeft(p, c, a, normal);
        if (within) {
            return Math.abs(normal.dot(p.subtract(a)));
        }
        return Math.min(toSide(p, a, b), Math.min(toSide(p, b, c), toSide(p, c, a)));
    }

    private static boolean isLeft(Vector3D p, Vector3D from, Vector3D to, Vector3D normal) {
        return to.subtract(from).cross(p.subtract(from)).dot(normal) >= 0;
    }

    private static double toSide(Vector3D p, Vector3D from, Vector3D to) {
        Vector3D along = to.subtract(from);
        double share = Math.min(1, Math.max(0, p.subtract(from).dot(along) / along.normSq()));
        return p.distance(from.lerp(to, share));
    }
}
