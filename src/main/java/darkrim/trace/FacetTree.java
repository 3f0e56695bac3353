package darkrim.trace;

import java.util.function.IntConsumer;

/**
 * A bounding-volume tree over triangles with two questions: which is the nearest facet on a ray, and is a ray blocked.
 *
 * <p>Promises, for facets and starts of rays within the bound given at building (derived in docs/decisions/0001):
 * <ul>
 *   <li>Watertight: a ray that no gap lets through is stopped, also where it runs through an edge or a corner. The ray is sheared onto an
 *       axis (Woop, Benthin, Wald 2013), which moves each corner by a rounding that is the same for every facet that shares it; on the
 *       moved corners the edge functions have their exact signs, so the facets about an edge leave nothing between them.
 *   <li>The hit lies on the ray and within 38 unit roundoffs of the bound of the facet, along each axis. Boxes are widened by
 *       {@link #contact()}, which is more, so that no shape of the tree changes an answer.
 *   <li>Of several facets at the same distance the one with the lowest number is met.
 *   <li>A ray that starts on a facet names that facet's plane and never meets a facet in it. No distance is used to tell a ray from its own
 *       start. {@link StartPoints} keeps the start on its side of the facet and clear of those next to it.
 *   <li>Facets are met from both sides. A facet seen exactly edge-on is not met; those that share its edges are.
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
     * @param corners nine coordinates a facet, mm
     * @param planes the plane of each facet, as used by {@link Ray#set}
     * @param bound no coordinate of a facet or of the start of a ray is larger than this in size, mm
     * @throws IllegalArgumentException if there are not nine coordinates for each plane, or one is not a number within the bound
     */
    public static FacetTree build(double[] corners, int[] planes, double bound) {
        if (corners.length != 9 * planes.length) {
            throw new IllegalArgumentException(
                    "expected 9 coordinates for each of " + planes.length + " facets, got " + corners.length);
        }
        for (int i = 0; i < corners.length; i++) {
            if (!(Math.abs(corners[i]) <= bound)) {
                throw new IllegalArgumentException("facet " + i / 9 + " has the coordinate " + corners[i]
                        + ", expected at most " + bound + " mm in size");
            }
        }
        double contact = 0x1p-44 * bound;
        return new FacetTree(TreeBuilder.build(corners, contact), corners, planes, contact);
    }

    /**
     * The distance, mm, below which places are not told apart: 2^-44 of the bound, 512 unit roundoffs of it. A hit is off by less than 38,
     * the walk through boxes by 7, a start that {@link StartPoints} places by 9; the rest is reserve.
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
                    int entered = axis[node] == 0 ? ray.nearX : axis[node] == 1 ? ray.nearY : ray.nearZ;
                    boolean turned = entered > 0;
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
     * Visits every facet whose box touches a box, each once, and some that lie near them; for finding what lies about a place.
     *
     * @param low three least coordinates, mm
     * @param high three greatest coordinates, mm
     * @param visitor receives facet numbers
     */
    public void touching(double[] low, double[] high, IntConsumer visitor) {
        if (order.length > 0) {
            touching(0, low, high, visitor);
        }
    }

    private void touching(int node, double[] low, double[] high, IntConsumer visitor) {
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
     * Where the ray enters a box, or infinity if it misses it. Inverses are finite, so that no product is NaN; a ray that runs along the
     * border of a widened box may be taken for a miss, which no facet in it can notice.
     */
    private double enter(Ray ray, int node) {
        final double[] b = bounds;
        int at = 6 * node;
        double inX = (b[at + ray.nearX] - ray.originX) * ray.inverseX;
        double outX = (b[at + 3 - ray.nearX] - ray.originX) * ray.inverseX;
        double inY = (b[at + 1 + ray.nearY] - ray.originY) * ray.inverseY;
        double outY = (b[at + 4 - ray.nearY] - ray.originY) * ray.inverseY;
        double inZ = (b[at + 2 + ray.nearZ] - ray.originZ) * ray.inverseZ;
        double outZ = (b[at + 5 - ray.nearZ] - ray.originZ) * ray.inverseZ;
        double in = Math.max(Math.max(inX, inY), Math.max(inZ, 0));
        double out = Math.min(Math.min(outX, outY), outZ);
        // Ize, "Robust BVH Ray Traversal", JCGT 2(2), 2013: three roundings on either side never lose a box when the
        // far one is put off.
        return in <= out * (1 + 0x1p-50) ? in : Double.POSITIVE_INFINITY;
    }

    /** Tests facet {@code i} of the leaf order; keeps it if it is nearer than what the ray met before. */
    private boolean meet(Ray ray, int i) {
        final double[] p = corners;
        int x = 9 * i + ray.axisX;
        int y = 9 * i + ray.axisY;
        int z = 9 * i + ray.axisZ;
        double az = p[z] - ray.startZ;
        double bz = p[z + 3] - ray.startZ;
        double cz = p[z + 6] - ray.startZ;
        double ax = p[x] - ray.startX - ray.shearX * az;
        double ay = p[y] - ray.startY - ray.shearY * az;
        double bx = p[x + 3] - ray.startX - ray.shearX * bz;
        double by = p[y + 3] - ray.startY - ray.shearY * bz;
        double cx = p[x + 6] - ray.startX - ray.shearX * cz;
        double cy = p[y + 6] - ray.startY - ray.shearY * cz;
        double u = cross(cx, cy, bx, by);
        double v = cross(ax, ay, cx, cy);
        double w = cross(bx, by, ax, ay);
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

    /**
     * The cross product of two plane vectors to within 2 unit roundoffs of itself, and so with its exact sign: Kahan's algorithm. Error
     * bound: Jeannerod, Louvet, Muller, "Further analysis of Kahan's algorithm for the accurate computation of 2 x 2 determinants",
     * Mathematics of Computation 82, 2013. A fused product is one instruction on processors made since 2013.
     */
    static double cross(double ax, double ay, double bx, double by) {
        double product = ay * bx;
        double lost = Math.fma(-ay, bx, product);
        return Math.fma(ax, by, -product) + lost;
    }
}
