package darkrim.shadow;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Where a plane through the point that looks meets the pupil's plane: a u + b v + c {@literal >=} 0 is the inner side. */
final class ViewLine {
    private final double a;
    private final double b;
    private final double c;

    /** The side of a plane through a point to which a normal points. */
    ViewLine(Frame frame, Vector3D normal, Vector3D point) {
        a = normal.dot(frame.u());
        b = normal.dot(frame.v());
        c = normal.dot(frame.origin().subtract(point));
    }

    /**
     * The plane through the point and a side of a facet; its inner side is that of the facet.
     *
     * @param part three coordinates a corner
     * @param from where the start of the side begins
     * @param to where its end begins
     * @param front whether the facet turns its front to the point
     */
    static ViewLine through(Frame frame, Vector3D point, double[] part, int from, int to, boolean front) {
        Vector3D start =
                Vector3D.of(part[from] - point.getX(), part[from + 1] - point.getY(), part[from + 2] - point.getZ());
        Vector3D end = Vector3D.of(part[to] - point.getX(), part[to + 1] - point.getY(), part[to + 2] - point.getZ());
        // Seen from behind, corners in the sense of the facet's normal run so that start x end points to the inside.
        Vector3D normal = start.cross(end);
        return new ViewLine(frame, front ? normal.negate() : normal, point);
    }

    /** 1 if a polygon lies on the inner side or on the line, -1 if on the outer side, 0 if on both. */
    int sideOf(double[] polygon) {
        boolean inner = false;
        boolean outer = false;
        for (int i = 0; i < polygon.length; i += 2) {
            double height = a * polygon[i] + b * polygon[i + 1] + c;
            inner |= height > 0;
            outer |= height < 0;
            if (inner && outer) {
                return 0;
            }
        }
        return outer ? -1 : 1;
    }

    /** The part of a convex polygon on the inner side. */
    double[] insideOf(double[] polygon) {
        return PlanarPolygons.clip(polygon, -a, -b, c);
    }

    /** The part of a convex polygon on the outer side. */
    double[] outsideOf(double[] polygon) {
        return PlanarPolygons.clip(polygon, a, b, -c);
    }
}
