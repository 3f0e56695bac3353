package darkrim.study.distance;

import java.util.Arrays;

/**
 * Facets in a tree of boxes, each facet with the thickness of its coating. Boxes are halved at the median along their longest side. Immutable.
 */
public final class FacetBoxes {
    private static final int LEAF = 4;

    /** Nine coordinates a facet, in the order of the leaves. */
    final double[] corners;
    /** Thickness of the coating of each, in the same order. */
    final double[] coatings;
    /** Number of each as it was given. */
    final int[] order;
    /** Six bounds a facet, in the same order: least, greatest. */
    final double[] facetBounds;
    /** Six bounds a node: least, greatest. */
    final double[] bounds;
    /** Thickest coating of a node. */
    final double[] thickest;
    /** Second child of an inner node (the first follows the node); first facet of a leaf. */
    final int[] link;
    /** Facets of a leaf, 0 for an inner node. */
    final int[] count;

    private int nodes;

    /**
     * @param facets nine coordinates a facet, mm; at least one facet
     * @param coating thickness of the coating of each facet, mm
     * @throws IllegalArgumentException if there is no facet, or not a thickness for each
     */
    public FacetBoxes(double[] facets, double[] coating) {
        int size = coating.length;
        if (size == 0 || facets.length != 9 * size) {
            throw new IllegalArgumentException(
                    "expected nine coordinates for each of " + size + " facets, and one at least");
        }
        Integer[] numbers = new Integer[size];
        double[] middles = new double[3 * size];
        for (int f = 0; f < size; f++) {
            numbers[f] = f;
            for (int k = 0; k < 9; k++) {
                middles[3 * f + k % 3] += facets[9 * f + k] / 3;
            }
        }
        int most = 2 * size;
        bounds = new double[6 * most];
        thickest = new double[most];
        link = new int[most];
        count = new int[most];
        build(numbers, 0, size, facets, coating, middles);
        order = Arrays.stream(numbers).mapToInt(Integer::intValue).toArray();
        corners = new double[9 * size];
        coatings = new double[size];
        facetBounds = new double[6 * size];
        for (int f = 0; f < size; f++) {
            System.arraycopy(facets, 9 * order[f], corners, 9 * f, 9);
            coatings[f] = coating[order[f]];
            clear(facetBounds, 6 * f);
            widen(facetBounds, 6 * f, facets, 9 * order[f]);
        }
    }

    private void build(Integer[] numbers, int from, int to, double[] facets, double[] coating, double[] middles) {
        int node = nodes++;
        int at = 6 * node;
        clear(bounds, at);
        for (int n = from; n < to; n++) {
            int f = numbers[n];
            thickest[node] = Math.max(thickest[node], coating[f]);
            widen(bounds, at, facets, 9 * f);
        }
        if (to - from <= LEAF) {
            link[node] = from;
            count[node] = to - from;
            return;
        }
        int axis = 0;
        for (int k = 1; k < 3; k++) {
            axis = bounds[at + 3 + k] - bounds[at + k] > bounds[at + 3 + axis] - bounds[at + axis] ? k : axis;
        }
        int along = axis;
        // By the middle along the axis, then by number, so that the tree is the same every time.
        Arrays.sort(numbers, from, to, (f, g) -> {
            int byMiddle = Double.compare(middles[3 * f + along], middles[3 * g + along]);
            return byMiddle != 0 ? byMiddle : Integer.compare(f, g);
        });
        int middle = (from + to) >>> 1;
        build(numbers, from, middle, facets, coating, middles);
        link[node] = nodes;
        build(numbers, middle, to, facets, coating, middles);
    }

    private static void clear(double[] boxes, int at) {
        Arrays.fill(boxes, at, at + 3, Double.POSITIVE_INFINITY);
        Arrays.fill(boxes, at + 3, at + 6, Double.NEGATIVE_INFINITY);
    }

    private static void widen(double[] boxes, int at, double[] facets, int from) {
        for (int k = 0; k < 9; k++) {
            double coordinate = facets[from + k];
            boxes[at + k % 3] = Math.min(boxes[at + k % 3], coordinate);
            boxes[at + 3 + k % 3] = Math.max(boxes[at + 3 + k % 3], coordinate);
        }
    }

    /** Number of facets. */
    public int size() {
        return order.length;
    }

    /** Longest side of the box of a node, mm. */
    double extent(int node) {
        int at = 6 * node;
        return Math.max(
                bounds[at + 3] - bounds[at],
                Math.max(bounds[at + 4] - bounds[at + 1], bounds[at + 5] - bounds[at + 2]));
    }
}
