package darkrim.layout.mesh;

import darkrim.geom.Triangulation;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Splits a polygon in space into triangles that use its corners and no others. */
final class FlatPolygon {
    /** How far corners may leave the plane, as a share of the size of the polygon. */
    private static final double FLATNESS = 1e-3;

    private FlatPolygon() {}

    /**
     * Triangles as numbers of corners, in the sense of the polygon. A bent quadrilateral is folded along its shorter diagonal.
     *
     * @throws IllegalArgumentException if another polygon is bent, or it crosses or touches itself
     */
    static List<int[]> triangles(List<Vector3D> corners) {
        int count = corners.size();
        if (count == 3) {
            return List.of(new int[] {0, 1, 2});
        }
        Vector3D normal = doubledNormal(corners);
        if (normal.norm() == 0) {
            return fan(count, 0);
        }
        Vector3D up = normal.normalize();
        boolean flat = isFlat(corners, up);
        if (count == 4 && (!flat || isConvex(corners, up))) {
            double first = corners.get(0).distance(corners.get(2));
            double second = corners.get(1).distance(corners.get(3));
            return fan(4, first <= second ? 0 : 1);
        }
        if (!flat) {
            throw new IllegalArgumentException("a face of " + count + " corners is not flat");
        }
        if (isConvex(corners, up)) {
            return fan(count, 0);
        }
        Vector3D u = up.orthogonal();
        Vector3D v = up.cross(u);
        List<Vector2D> outline =
                corners.stream().map(p -> Vector2D.of(u.dot(p), v.dot(p))).toList();
        return Triangulation.of(outline, List.of());
    }

    private static List<int[]> fan(int count, int from) {
        List<int[]> triangles = new ArrayList<>();
        for (int i = 1; i + 1 < count; i++) {
            triangles.add(new int[] {from, (from + i) % count, (from + i + 1) % count});
        }
        return triangles;
    }

    /** Newell's normal: twice the area of the polygon as seen along each axis. */
    private static Vector3D doubledNormal(List<Vector3D> corners) {
        Vector3D sum = Vector3D.ZERO;
        Vector3D start = corners.get(0);
        for (int i = 1; i + 1 < corners.size(); i++) {
            sum = sum.add(
                    corners.get(i).subtract(start).cross(corners.get(i + 1).subtract(start)));
        }
        return sum;
    }

    private static boolean isFlat(List<Vector3D> corners, Vector3D up) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double size = 0;
        for (Vector3D corner : corners) {
            double height = up.dot(corner.subtract(corners.get(0)));
            low = Math.min(low, height);
            high = Math.max(high, height);
            size = Math.max(size, corner.distance(corners.get(0)));
        }
        return high - low <= FLATNESS * size;
    }

    /** Whether every corner turns left by more than rounding, and the polygon goes around once. */
    private static boolean isConvex(List<Vector3D> corners, Vector3D up) {
        int count = corners.size();
        Vector3D start = corners.get(0);
        for (int i = 0; i < count; i++) {
            Vector3D along = corners.get((i + 1) % count).subtract(corners.get(i));
            Vector3D next = corners.get((i + 2) % count).subtract(corners.get((i + 1) % count));
            if (!(along.cross(next).dot(up) > 1e-9 * along.norm() * next.norm())) {
                return false;
            }
            Vector3D here = corners.get(i).subtract(start);
            Vector3D there = corners.get((i + 1) % count).subtract(start);
            if (here.cross(there).dot(up) < 0) {
                return false;
            }
        }
        return true;
    }
}
