package darkrim.study.distance;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The least distance between two surfaces, exact but for rounding: pairs of boxes are taken apart, the nearer first, until no pair left can hold
 * anything nearer (Larsen, Gottschalk, Lin, Manocha, Fast Distance Queries with Rectangular Swept Sphere Volumes, 2000, with boxes along the
 * axes). A coating grows outward, around corners as an arc: it takes its thickness off the distance. For use by one thread.
 */
public final class LeastDistance {
    private final FacetBoxes first;
    private final FacetBoxes second;
    private final double[] way;
    private final boolean moves;
    private final TrianglePair pair = new TrianglePair();
    private final SweptPair swept;

    private double least = Double.POSITIVE_INFINITY;
    private int facetOfFirst;
    private int facetOfSecond;
    private final double[] points = new double[6];
    private double travel;

    private LeastDistance(FacetBoxes first, Vector3D way, FacetBoxes second) {
        this.first = first;
        this.second = second;
        this.way = new double[] {way.getX(), way.getY(), way.getZ()};
        this.moves = !way.equals(Vector3D.ZERO);
        this.swept = new SweptPair(this.way);
    }

    /** The least distance where both stand. */
    public static Least between(FacetBoxes first, FacetBoxes second) {
        return between(first, Vector3D.ZERO, second);
    }

    /**
     * The least distance while the first is moved along a straight line, over the whole way.
     *
     * @param first the surface that is moved, where it starts
     * @param way how far it is moved, mm
     * @param second the surface that stands
     */
    public static Least between(FacetBoxes first, Vector3D way, FacetBoxes second) {
        LeastDistance search = new LeastDistance(first, way, second);
        search.look(0, 0, search.bound(0, 0));
        double[] p = search.points;
        return new Least(
                Math.max(0, search.least),
                first.order[search.facetOfFirst],
                second.order[search.facetOfSecond],
                Vector3D.of(p[0], p[1], p[2]),
                Vector3D.of(p[3], p[4], p[5]),
                search.travel);
    }

    /** Nothing in two nodes is nearer than this, mm. */
    private double bound(int a, int b) {
        return apart(first.bounds, 6 * a, second.bounds, 6 * b) - first.thickest[a] - second.thickest[b];
    }

    /** How far two boxes are apart, the first swept along the way, mm. */
    private double apart(double[] a, int i, double[] b, int j) {
        double squared = 0;
        for (int k = 0; k < 3; k++) {
            double low = a[i + k] + Math.min(0, way[k]);
            double high = a[i + 3 + k] + Math.max(0, way[k]);
            double gap = Math.max(low - b[j + 3 + k], b[j + k] - high);
            squared += gap > 0 ? gap * gap : 0;
        }
        return Math.sqrt(squared);
    }

    private void look(int a, int b, double bound) {
        if (!(bound < least) || least <= 0) {
            return;
        }
        boolean leafA = first.count[a] > 0;
        boolean leafB = second.count[b] > 0;
        if (leafA && leafB) {
            facets(a, b);
            return;
        }
        boolean splitA = !leafA && (leafB || first.extent(a) >= second.extent(b));
        int oneA = splitA ? a + 1 : a;
        int oneB = splitA ? b : b + 1;
        int otherA = splitA ? first.link[a] : a;
        int otherB = splitA ? b : second.link[b];
        double one = bound(oneA, oneB);
        double other = bound(otherA, otherB);
        if (one <= other) {
            look(oneA, oneB, one);
            look(otherA, otherB, other);
        } else {
            look(otherA, otherB, other);
            look(oneA, oneB, one);
        }
    }

    private void facets(int a, int b) {
        for (int f = first.link[a]; f < first.link[a] + first.count[a]; f++) {
            for (int g = second.link[b]; g < second.link[b] + second.count[b]; g++) {
                double coatings = first.coatings[f] + second.coatings[g];
                if (apart(first.facetBounds, 6 * f, second.facetBounds, 6 * g) - coatings >= least) {
                    continue;
                }
                double squared = moves
                        ? swept.squared(first.corners, 9 * f, second.corners, 9 * g)
                        : pair.squared(first.corners, 9 * f, second.corners, 9 * g);
                double distance = Math.sqrt(squared) - coatings;
                if (distance < least) {
                    least = distance;
                    facetOfFirst = f;
                    facetOfSecond = g;
                    System.arraycopy(moves ? swept.points : pair.points, 0, points, 0, 6);
                    travel = moves ? swept.travel : 0;
                }
            }
        }
    }
}
