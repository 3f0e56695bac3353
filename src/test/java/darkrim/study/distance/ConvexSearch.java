package darkrim.study.distance;

import darkrim.geom.mesh.PointToTriangle;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The distance of two triangles by another way: how far a point of one is from the other is convex over the triangle, and its least value along
 * lines is convex again, so that searches by thirds, one within the other, find it.
 */
final class ConvexSearch {
    /** What is found is too large by less, for triangles of a few millimetres, mm. */
    static final double ERROR = 1e-7;

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final int STEPS = 44;

    private ConvexSearch() {}

    /** Nine coordinates as three corners. */
    static Vector3D[] corners(double[] t, int at) {
        return new Vector3D[] {
            Vector3D.of(t[at], t[at + 1], t[at + 2]),
            Vector3D.of(t[at + 3], t[at + 4], t[at + 5]),
            Vector3D.of(t[at + 6], t[at + 7], t[at + 8])
        };
    }

    static double distance(Vector3D[] a, Vector3D[] b) {
        return least(s -> least(r -> {
            Vector3D p = a[0].lerp(a[1], s).lerp(a[2], r);
            return PointToTriangle.distance(p, b[0], b[1], b[2]);
        }));
    }

    /** The least distance while the first is moved. */
    static double swept(Vector3D[] a, Vector3D way, Vector3D[] b) {
        return least(t -> {
            Vector3D by = way.multiply(t);
            return distance(new Vector3D[] {a[0].add(by), a[1].add(by), a[2].add(by)}, b);
        });
    }

    /** The least value from 0 to 1 of a function that is convex. */
    private static double least(DoubleUnaryOperator convex) {
        double low = 0;
        double high = 1;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        double atLeft = convex.applyAsDouble(left);
        double atRight = convex.applyAsDouble(right);
        double best = Math.min(Math.min(convex.applyAsDouble(0), convex.applyAsDouble(1)), Math.min(atLeft, atRight));
        for (int i = 0; i < STEPS && high - low > 1e-9; i++) {
            if (atLeft <= atRight) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN * (high - low);
                atLeft = convex.applyAsDouble(left);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN * (high - low);
                atRight = convex.applyAsDouble(right);
            }
            best = Math.min(best, Math.min(atLeft, atRight));
        }
        return best;
    }
}
