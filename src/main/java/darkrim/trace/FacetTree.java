package darkrim.trace;

import java.util.Arrays;
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
 *       {@link #contact()}, which is more, so that no shape of the tree changes an answer. Boxes are looked at in single precision, with a margin for that
 *       (docs/decisions/0034).
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

    /** Borders of children, {@link Nodes#BORDERS} a node, in steps of the grid. */
    final float[] borders;
    /** Children, {@link Nodes#WIDTH} a node. */
    final int[] children;
    /** Facet numbers in the order of the leaves. */
    final int[] order;
    /** Corners leaf by leaf: the nine coordinates one after the other, each of all facets of the leaf. */
    final double[] corners;
    /** Planes in the order of the leaves. */
    final int[] planes;

    final BoxGrid grid;
    /** The box about all facets, mm: low x, y, z, high x, y, z. */
    final double[] box;

    private final double contact;

    private FacetTree(
            float[] borders,
            int[] children,
            int[] order,
            double[] facetCorners,
            int[] facetPlanes,
            BoxGrid grid,
            double contact) {
        this.borders = borders;
        this.children = children;
        this.order = order;
        this.grid = grid;
        this.contact = contact;
        this.corners = new double[9 * order.length + Nodes.SPARE];
        this.planes = new int[order.length];
        for (int i = 0; i < order.length; i++) {
            planes[i] = facetPlanes[order[i]];
        }
        for (int child : children) {
            if (child < 0) {
                arrange(facetCorners, Nodes.firstOfLeaf(child), Nodes.endOfLeaf(child));
            }
        }
        this.box = new double[] {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE, 0, 0, 0};
        if (order.length > 0) {
            Arrays.fill(box, 3, 6, -Double.MAX_VALUE);
            for (int slot = 0; slot < Nodes.WIDTH; slot++) {
                for (int k = 0; k < 3 && children[slot] != 0; k++) {
                    box[k] = Math.min(box[k], grid.place(borders[Nodes.WIDTH * k + slot], k));
                    box[3 + k] = Math.max(box[3 + k], grid.place(borders[Nodes.WIDTH * (3 + k) + slot], k));
                }
            }
        }
    }

    private void arrange(double[] facetCorners, int first, int end) {
        int facets = end - first;
        for (int i = 0; i < facets; i++) {
            for (int k = 0; k < 9; k++) {
                corners[9 * first + k * facets + i] = facetCorners[9 * order[first + i] + k];
            }
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
        check(corners, planes, bound);
        double contact = 0x1p-44 * bound;
        if (planes.length == 0) {
            return new FacetTree(
                    new float[0], new int[0], new int[0], corners, planes, new BoxGrid(0, 0, 0, 1, 0), contact);
        }
        BoxGrid grid = BoxGrid.about(corners, contact);
        References references = new References(planes.length);
        references.box(corners, grid, 0, planes.length);
        Nodes nodes = TreeBuilder.build(references);
        return new FacetTree(nodes.borders(), nodes.children(), references.facets, corners, planes, grid, contact);
    }

    private static void check(double[] corners, int[] planes, double bound) {
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
    }

    /**
     * The distance, mm, below which places are not told apart: 2^-44 of the bound, 512 unit roundoffs of it. A hit is off by less than 38,
     * the walk through boxes by 12, a start that {@link StartPoints} places by 9; the rest is reserve.
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
        return Kernel.CHOSEN.nearest(this, ray);
    }

    /**
     * Whether any facet lies on the ray within its length.
     *
     * @param ray where to look, freshly set; what it says of facet, distance and weights afterwards means nothing
     */
    public boolean blocked(Ray ray) {
        return Kernel.CHOSEN.blocked(this, ray);
    }

    /**
     * Visits every facet whose box touches a box, each once, and some that lie near them; for finding what lies about a place.
     *
     * @param low three least coordinates, mm
     * @param high three greatest coordinates, mm
     * @param visitor receives facet numbers
     */
    public void touching(double[] low, double[] high, IntConsumer visitor) {
        passing(
                (box, at) -> box[at] <= high[0]
                        && box[at + 1] <= high[1]
                        && box[at + 2] <= high[2]
                        && box[at + 3] >= low[0]
                        && box[at + 4] >= low[1]
                        && box[at + 5] >= low[2],
                visitor);
    }

    /**
     * The facets in leaves whose boxes pass a test, each once.
     *
     * @param test asked for the boxes on the way; must not change them
     * @param visitor receives facet numbers
     */
    public void passing(BoxTest test, IntConsumer visitor) {
        new BoxWalk(this, test, visitor).walk();
    }

    /**
     * Tests a facet; keeps it if it is nearer than what the ray met before.
     *
     * @param first where its leaf begins
     * @param facets facets in the leaf
     * @param i its place in the leaf
     */
    boolean meet(Ray ray, int first, int facets, int i) {
        final double[] p = corners;
        int base = 9 * first + i;
        int x = base + facets * ray.axisX;
        int y = base + facets * ray.axisY;
        int z = base + facets * ray.axisZ;
        int b = 3 * facets;
        int c = 6 * facets;
        double az = p[z] - ray.startZ;
        double bz = p[z + b] - ray.startZ;
        double cz = p[z + c] - ray.startZ;
        double ax = p[x] - ray.startX - ray.shearX * az;
        double ay = p[y] - ray.startY - ray.shearY * az;
        double bx = p[x + b] - ray.startX - ray.shearX * bz;
        double by = p[y + b] - ray.startY - ray.shearY * bz;
        double cx = p[x + c] - ray.startX - ray.shearX * cz;
        double cy = p[y + c] - ray.startY - ray.shearY * cz;
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
        if (!nearer && (distance != ray.farthest || order[first + i] >= ray.facet)) {
            return false;
        }
        if (planes[first + i] == ray.skippedPlane) {
            return false;
        }
        ray.farthest = distance;
        ray.facet = order[first + i];
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
