package darkrim.trace;

/**
 * A bounding-volume tree over triangles with two questions: which is the nearest facet on a ray, and is a ray blocked.
 *
 * <p>Promises, for rays that start within the bound given at building:
 * <ul>
 *   <li>Watertight: a ray through an edge or corner that facets share meets at least one of them. The edge functions of the two facets are
 *       the same products with opposite sign (Woop, Benthin, Wald 2013), and boxes are widened by {@link #contact()}, more than the
 *       rounding of the facet test can move a facet.
 *   <li>Of several facets at the same distance the one with the lowest number is met, whatever the shape of the tree.
 *   <li>A ray that starts on a facet names that facet's plane and never meets a facet in it. No distance is used to tell a ray from its own
 *       start.
 *   <li>Facets are met from both sides.
 * </ul>
 *
 * <p>Immutable; safe for use by many threads, each with its own {@link Ray}.
 */
public final class FacetTree {
    /** Greatest depth of a tree. */
    static final int DEEPEST = 64;

    /** Six bounds a node: low x, y, z, high x, y, z. */
    private final double[] bounds;
    /** Of an inner node the second child (the first follows the node); of a leaf the first facet in {@link #order}. */
    private final int[] link;
    /** Facets of a leaf; 0 for an inner node. */
    private final int[] count;
    /** The axis along which an inner node is split. */
    private final byte[] axis;
    /** Facet numbers in the order of the leaves. */
    private final int[] order;
    /** Corners in the order of the leaves, nine coordinates a facet. */
    private final double[] corners;
    /** Planes in the order of the leaves. */
    private final int[] planes;

    private final double contact;

    FacetTree(TreeBuilder built, double[] facetCorners, int[] facetPlanes, double contact) {
        this.bounds = built.bounds();
        this.link = built.link();
        this.count = built.count();
        this.axis = built.axis();
        this.order = built.order();
        this.contact = contact;
        this.corners = new double[9 * order.length];
        this.planes = new int[order.length];
        for (int i = 0; i < order.length; i++) {
            System.arraycopy(facetCorners, 9 * order[i], corners, 9 * i, 9);
            planes[i] = facetPlanes[order[i]];
        }
    }

    /**
     * Builds the tree by a binned surface-area heuristic.
     *
     * @param corners nine finite coordinates a facet, mm
     * @param planes the plane of each facet, as used by {@link Ray#set}
     * @param bound no coordinate of a facet or of the start of a ray is larger than this in size, mm
     */
    public static FacetTree build(double[] corners, int[] planes, double bound) {
        double contact = 0x1p-44 * bound;
        return new FacetTree(TreeBuilder.build(corners, contact), corners, planes, contact);
    }

    /**
     * The distance, mm, below which places are not told apart: 2^-44 of the bound, 512 times the unit roundoff. The facet test moves a
     * facet by less than 64 unit roundoffs of the bound.
     */
    public double contact() {
        return contact;
    }

    /**
     * Finds the nearest facet.
     *
     * @param ray where to look; receives facet, distance and weights
     * @return the facet, or -1 if none is met
     */
    public int nearest(Ray ray) {
        if (order.length == 0) {
            return -1;
        }
        final int[] stack = ray.stack;
        final double[] stackEntry = ray.stackEntry;
        int depth = 0;
        int node = 0;
        double entry = enter(ray, 0);
        while (true) {
            if (entry <= ray.farthest) {
                if (count[node] > 0) {
                    int first = link[node];
                    for (int i = first, end = first + count[node]; i < end; i++) {
                        meet(ray, i);
                    }
                } else {
                    int near = node + 1;
                    int far = link[node];
                    double nearEntry = enter(ray, near);
                    double farEntry = enter(ray, far);
                    if (farEntry < nearEntry) {
                        int swapped = near;
                        near = far;
                        far = swapped;
                        double swappedEntry = nearEntry;
                        nearEntry = farEntry;
                        farEntry = swappedEntry;
                    }
                    if (farEntry <= ray.farthest) {
                        stack[depth] = far;
                        stackEntry[depth] = farEntry;
                        depth++;
                    }
                    node = near;
                    entry = nearEntry;
                    continue;
                }
            }
            if (depth == 0) {
                return ray.facet;
            }
            depth--;
            node = stack[depth];
            entry = stackEntry[depth];
        }
    }

    /**
     * Whether any facet lies on the ray within its length.
     *
     * @param ray where to look
     */
    public boolean blocked(Ray ray) {
        if (order.length == 0) {
            return false;
        }
        final int[] stack = ray.stack;
        int depth = 0;
        int node = 0;
        while (true) {
            if (enter(ray, node) <= ray.farthest) {
                if (count[node] > 0) {
                    int first = link[node];
                    for (int i = first, end = first + count[node]; i < end; i++) {
                        if (meet(ray, i)) {
                            return true;
                        }
                    }
                } else {
                    boolean turned = axis[node] == 0
                            ? ray.directionX < 0
                            : axis[node] == 1 ? ray.directionY < 0 : ray.directionZ < 0;
                    int near = node + 1;
                    int far = link[node];
                    stack[depth] = turned ? near : far;
                    depth++;
                    node = turned ? far : near;
                    continue;
                }
            }
            if (depth == 0) {
                return false;
            }
            depth--;
            node = stack[depth];
        }
    }

    /**
     * The facets whose boxes touch a box, each once or more; for finding what lies about a place.
     *
     * @param low three least coordinates, mm
     * @param high three greatest coordinates, mm
     * @param visitor receives facet numbers
     */
    public void touching(double[] low, double[] high, java.util.function.IntConsumer visitor) {
        if (order.length > 0) {
            touching(0, low, high, visitor);
        }
    }

    private void touching(int node, double[] low, double[] high, java.util.function.IntConsumer visitor) {
        int at = 6 * node;
        for (int k = 0; k < 3; k++) {
            if (bounds[at + k] > high[k] || bounds[at + 3 + k] < low[k]) {
                return;
            }
        }
        if (count[node] > 0) {
            for (int i = link[node], end = link[node] + count[node]; i < end; i++) {
                visitor.accept(order[i]);
            }
        } else {
            touching(node + 1, low, high, visitor);
            touching(link[node], low, high, visitor);
        }
    }

    /** Decides whether facets in a box can matter. */
    @FunctionalInterface
    public interface BoxTest {
        /**
         * Whether a box must be looked into.
         *
         * @param box holds the box
         * @param at where its six bounds begin: least x, y, z, greatest x, y, z, mm
         */
        boolean matters(double[] box, int at);
    }

    /**
     * The facets in leaves whose boxes pass a test, each once.
     *
     * @param test asked for the boxes on the way; must not change them
     * @param visitor receives facet numbers
     */
    public void passing(BoxTest test, java.util.function.IntConsumer visitor) {
        if (order.length > 0) {
            passing(0, test, visitor);
        }
    }

    private void passing(int node, BoxTest test, java.util.function.IntConsumer visitor) {
        if (!test.matters(bounds, 6 * node)) {
            return;
        }
        if (count[node] > 0) {
            for (int i = link[node], end = link[node] + count[node]; i < end; i++) {
                visitor.accept(order[i]);
            }
        } else {
            passing(node + 1, test, visitor);
            passing(link[node], test, visitor);
        }
    }

    /**
     * Where the ray enters a box, or infinity if it misses it. A product 0 x infinity is NaN and must not hide a box: Math.min and Math.max
     * hand it on, and the last comparison takes NaN for a hit.
     */
    private double enter(Ray ray, int node) {
        final double[] b = bounds;
        int at = 6 * node;
        double x0 = (b[at] - ray.originX) * ray.inverseX;
        double x1 = (b[at + 3] - ray.originX) * ray.inverseX;
        double y0 = (b[at + 1] - ray.originY) * ray.inverseY;
        double y1 = (b[at + 4] - ray.originY) * ray.inverseY;
        double z0 = (b[at + 2] - ray.originZ) * ray.inverseZ;
        double z1 = (b[at + 5] - ray.originZ) * ray.inverseZ;
        double in = Math.max(Math.max(Math.min(x0, x1), Math.min(y0, y1)), Math.max(Math.min(z0, z1), 0));
        double out = Math.min(Math.min(Math.max(x0, x1), Math.max(y0, y1)), Math.max(z0, z1));
        // Ize, "Robust BVH Ray Traversal", JCGT 2(2), 2013: two roundings more on the far side never lose a box.
        if (in > out * 1.0000000000000009) {
            return Double.POSITIVE_INFINITY;
        }
        return Double.isNaN(in) ? 0 : in;
    }

    /** Tests facet {@code i} of the leaf order; keeps it if it is nearer than what the ray met before. */
    private boolean meet(Ray ray, int i) {
        final double[] p = corners;
        int at = 9 * i;
        double ox = ray.axisX == 0 ? ray.originX : ray.axisX == 1 ? ray.originY : ray.originZ;
        double oy = ray.axisY == 0 ? ray.originX : ray.axisY == 1 ? ray.originY : ray.originZ;
        double oz = ray.axisZ == 0 ? ray.originX : ray.axisZ == 1 ? ray.originY : ray.originZ;
        double az = p[at + ray.axisZ] - oz;
        double bz = p[at + 3 + ray.axisZ] - oz;
        double cz = p[at + 6 + ray.axisZ] - oz;
        double ax = p[at + ray.axisX] - ox - ray.shearX * az;
        double ay = p[at + ray.axisY] - oy - ray.shearY * az;
        double bx = p[at + 3 + ray.axisX] - ox - ray.shearX * bz;
        double by = p[at + 3 + ray.axisY] - oy - ray.shearY * bz;
        double cx = p[at + 6 + ray.axisX] - ox - ray.shearX * cz;
        double cy = p[at + 6 + ray.axisY] - oy - ray.shearY * cz;
        double u = cx * by - cy * bx;
        double v = ax * cy - ay * cx;
        double w = bx * ay - by * ax;
        if ((u < 0 || v < 0 || w < 0) && (u > 0 || v > 0 || w > 0)) {
            return false;
        }
        double sum = u + v + w;
        if (sum == 0) {
            return false;
        }
        double distance = ray.shearZ * (u * az + v * bz + w * cz) / sum;
        boolean nearer = distance > 0 && distance < ray.farthest;
        if (!nearer && (distance != ray.farthest || order[i] >= ray.facet)) {
            return false;
        }
        if (planes[i] == ray.skippedPlane) {
            return false;
        }
        ray.farthest = distance;
        ray.facet = order[i];
        ray.weightA = u / sum;
        ray.weightB = v / sum;
        ray.weightC = w / sum;
        return true;
    }
}
