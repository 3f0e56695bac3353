package darkrim.geom;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A polygon whose sides are moved outward by one distance and met anew at mitred corners: where sides of unit normals m and n meet at p,
 * the new corner is p + d (m + n) / (1 + m . n). Exact for convex polygons.
 */
public final class MitredOffset {
    private MitredOffset() {}

    /**
     * The moved polygon.
     *
     * @param corners a simple polygon, counter-clockwise, mm
     * @param distance outward distance, mm; negative moves inward
     * @throws IllegalArgumentException if a side would vanish or turn round, or the result would cross itself
     */
    public static List<Vector2D> outward(List<Vector2D> corners, double distance) {
        if (distance == 0) {
            return corners;
        }
        int count = corners.size();
        List<Vector2D> moved = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Vector2D before = normal(corners.get((i + count - 1) % count), corners.get(i));
            Vector2D after = normal(corners.get(i), corners.get((i + 1) % count));
            double stretch = distance / (1 + before.dot(after));
            moved.add(corners.get(i).add(before.add(after).multiply(stretch)));
        }
        for (int i = 0; i < count; i++) {
            Vector2D old = corners.get((i + 1) % count).subtract(corners.get(i));
            Vector2D now = moved.get((i + 1) % count).subtract(moved.get(i));
            if (!(old.dot(now) > 0)) {
                throw new IllegalArgumentException(
                        "its outline cannot be widened by %.6g mm: side %d would vanish".formatted(distance, i + 1));
            }
        }
        if (!(Polygon.signedArea(moved) > 0)) {
            throw new IllegalArgumentException("its outline cannot be moved by %.6g mm".formatted(distance));
        }
        Triangulation.requireSimple(moved);
        return moved;
    }

    /** The unit normal that points out of a counter-clockwise polygon. */
    private static Vector2D normal(Vector2D from, Vector2D to) {
        Vector2D along = to.subtract(from).normalize();
        return Vector2D.of(along.getY(), -along.getX());
    }
}
