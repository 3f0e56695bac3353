package darkrim.light;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A facet, or a piece of one.
 *
 * @param a a corner, mm
 * @param b another
 * @param c another
 */
record FacetPiece(Vector3D a, Vector3D b, Vector3D c) {
    /** The mean of its corners. */
    Vector3D middle() {
        return a.add(b).add(c).multiply(1.0 / 3);
    }

    /** Height of its highest corner, mm. */
    double highest() {
        return Math.max(a.getZ(), Math.max(b.getZ(), c.getZ()));
    }

    /** Height of its lowest corner, mm. */
    double lowest() {
        return Math.min(a.getZ(), Math.min(b.getZ(), c.getZ()));
    }

    /**
     * Cuts it in halves across its longest edge, and the halves again, until no edge is longer than a step. A sliver falls into about three times as many pieces for each
     * halving of the step, a triangle that is about as wide as long into four times as many.
     *
     * @param step mm, positive
     * @param image where corners count as lying when edges are measured: a map that takes straight lines to straight lines
     * @param wanted pieces are left out for which this does not hold; it holds for whatever a piece is cut from for which it holds
     */
    List<FacetPiece> pieces(double step, UnaryOperator<Vector3D> image, Predicate<FacetPiece> wanted) {
        List<FacetPiece> done = new ArrayList<>();
        Deque<FacetPiece> left = new ArrayDeque<>(List.of(this));
        while (!left.isEmpty()) {
            FacetPiece each = left.pop();
            if (!wanted.test(each)) {
                continue;
            }
            Vector3D p = image.apply(each.a);
            Vector3D q = image.apply(each.b);
            Vector3D r = image.apply(each.c);
            double ab = p.distance(q);
            double bc = q.distance(r);
            double ca = r.distance(p);
            if (Math.max(ab, Math.max(bc, ca)) <= step) {
                done.add(each);
            } else if (ab >= bc && ab >= ca) {
                each.halve(left);
            } else if (bc >= ca) {
                new FacetPiece(each.b, each.c, each.a).halve(left);
            } else {
                new FacetPiece(each.c, each.a, each.b).halve(left);
            }
        }
        return done;
    }

    /** Cuts it across the edge from a to b. */
    private void halve(Deque<FacetPiece> into) {
        Vector3D half = a.add(b).multiply(0.5);
        into.push(new FacetPiece(half, b, c));
        into.push(new FacetPiece(a, half, c));
    }
}
