package darkrim.trace;

import java.util.Arrays;

/**
 * Builds the tree from the top by a binned surface-area heuristic (MacDonald and Booth, "Heuristics for ray tracing using space
 * subdivision", The Visual Computer 6, 1990; binning after Wald, "On fast construction of SAH-based bounding volume hierarchies", 2007).
 */
final class TreeBuilder {
    private static final int BINS = 16;
    private static final int SMALLEST = 2;
    private static final int LARGEST_LEAF = 8;
    /** Below this depth a node is halved by number, so that no input makes the tree too deep: 2^40 facets do not exist. */
    private static final int HEURISTIC_DEPTH = FacetTree.DEEPEST - 32;

    private final double[] boxes;
    private final int[] order;
    private double[] bounds = new double[6 * 64];
    private int[] link = new int[64];
    private int[] count = new int[64];
    private byte[] axis = new byte[64];
    private int nodes;

    private final double[] binBox = new double[6 * BINS];
    private final int[] binCount = new int[BINS];
    private final double[] rightArea = new double[BINS];

    private TreeBuilder(double[] corners, double widening) {
        int facets = corners.length / 9;
        boxes = new double[6 * facets];
        order = new int[facets];
        for (int f = 0; f < facets; f++) {
            order[f] = f;
            for (int k = 0; k < 3; k++) {
                double a = corners[9 * f + k];
                double b = corners[9 * f + 3 + k];
                double c = corners[9 * f + 6 + k];
                boxes[6 * f + k] = Math.min(a, Math.min(b, c)) - widening;
                boxes[6 * f + 3 + k] = Math.max(a, Math.max(b, c)) + widening;
            }
        }
    }

    static TreeBuilder build(double[] corners, double widening) {
        TreeBuilder builder = new TreeBuilder(corners, widening);
        if (builder.order.length > 0) {
            builder.node(0, builder.order.length, 0);
        }
        return builder;
    }

    double[] bounds() {
        return Arrays.copyOf(bounds, 6 * nodes);
    }

    int[] link() {
        return Arrays.copyOf(link, nodes);
    }

    int[] count() {
        return Arrays.copyOf(count, nodes);
    }

    byte[] axis() {
        return Arrays.copyOf(axis, nodes);
    }

    int[] order() {
        return order;
    }

    private void node(int first, int end, int depth) {
        int node = claim();
        for (int k = 0; k < 3; k++) {
            bounds[6 * node + k] = Double.POSITIVE_INFINITY;
            bounds[6 * node + 3 + k] = Double.NEGATIVE_INFINITY;
        }
        for (int i = first; i < end; i++) {
            grow(bounds, 6 * node, boxes, 6 * order[i]);
        }
        int middle = end - first <= SMALLEST ? -1 : split(node, first, end, depth);
        if (middle < 0) {
            link[node] = first;
            count[node] = end - first;
            return;
        }
        node(first, middle, depth + 1);
        link[node] = nodes;
        node(middle, end, depth + 1);
    }

    /** Partitions the facets of a node; returns where the second part begins, or -1 to leave a leaf. */
    private int split(int node, int first, int end, int depth) {
        int facets = end - first;
        double[] low = new double[3];
        double[] high = new double[3];
        centreBounds(first, end, low, high);
        double best = Double.POSITIVE_INFINITY;
        int bestAxis = -1;
        int bestBin = -1;
        if (depth < HEURISTIC_DEPTH) {
            for (int k = 0; k < 3; k++) {
                if (high[k] > low[k]) {
                    fillBins(first, end, k, low[k], high[k]);
                    int bin = cheapest();
                    if (bin >= 0) {
                        double cost = cost(bin);
                        if (cost < best) {
                            best = cost;
                            bestAxis = k;
                            bestBin = bin;
                        }
                    }
                }
            }
        }
        double own = halfArea(bounds, 6 * node);
        if (facets <= LARGEST_LEAF && !(1 + best / own < facets)) {
            return -1;
        }
        if (bestAxis < 0) {
            axis[node] = 0;
            return facets <= LARGEST_LEAF ? -1 : first + facets / 2;
        }
        axis[node] = (byte) bestAxis;
        int middle = partition(first, end, bestAxis, low[bestAxis], high[bestAxis], bestBin);
        return middle > first && middle < end ? middle : first + facets / 2;
    }

    private void centreBounds(int first, int end, double[] low, double[] high) {
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (int i = first; i < end; i++) {
            for (int k = 0; k < 3; k++) {
                double centre = centre(order[i], k);
                low[k] = Math.min(low[k], centre);
                high[k] = Math.max(high[k], centre);
            }
        }
    }

    private void fillBins(int first, int end, int k, double low, double high) {
        Arrays.fill(binCount, 0);
        for (int b = 0; b < BINS; b++) {
            Arrays.fill(binBox, 6 * b, 6 * b + 3, Double.POSITIVE_INFINITY);
            Arrays.fill(binBox, 6 * b + 3, 6 * b + 6, Double.NEGATIVE_INFINITY);
        }
        for (int i = first; i < end; i++) {
            int bin = bin(centre(order[i], k), low, high);
            binCount[bin]++;
            grow(binBox, 6 * bin, boxes, 6 * order[i]);
        }
    }

    /** The split after which facets x area is least, or -1; leaves the areas to its right in {@link #rightArea}. */
    private int cheapest() {
        double[] box = emptyBox();
        int facets = 0;
        for (int b = BINS - 1; b > 0; b--) {
            grow(box, 0, binBox, 6 * b);
            facets += binCount[b];
            rightArea[b - 1] = facets == 0 ? 0 : facets * halfArea(box, 0);
        }
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int b = 0; b < BINS - 1; b++) {
            double cost = cost(b);
            if (cost < least) {
                least = cost;
                best = b;
            }
        }
        return best;
    }

    private double cost(int bin) {
        double[] box = emptyBox();
        int facets = 0;
        for (int b = 0; b <= bin; b++) {
            grow(box, 0, binBox, 6 * b);
            facets += binCount[b];
        }
        if (facets == 0 || rightArea[bin] == 0) {
            return Double.POSITIVE_INFINITY;
        }
        return facets * halfArea(box, 0) + rightArea[bin];
    }

    private int partition(int first, int end, int k, double low, double high, int lastLeftBin) {
        int left = first;
        int right = end - 1;
        while (left <= right) {
            if (bin(centre(order[left], k), low, high) <= lastLeftBin) {
                left++;
            } else {
                int swapped = order[left];
                order[left] = order[right];
                order[right] = swapped;
                right--;
            }
        }
        return left;
    }

    private double centre(int facet, int k) {
        return 0.5 * (boxes[6 * facet + k] + boxes[6 * facet + 3 + k]);
    }

    private static int bin(double centre, double low, double high) {
        return Math.min(BINS - 1, (int) (BINS * ((centre - low) / (high - low))));
    }

    private static double[] emptyBox() {
        double infinite = Double.POSITIVE_INFINITY;
        return new double[] {infinite, infinite, infinite, -infinite, -infinite, -infinite};
    }

    private static void grow(double[] box, int at, double[] by, int byAt) {
        for (int k = 0; k < 3; k++) {
            box[at + k] = Math.min(box[at + k], by[byAt + k]);
            box[at + 3 + k] = Math.max(box[at + 3 + k], by[byAt + 3 + k]);
        }
    }

    private static double halfArea(double[] box, int at) {
        double x = box[at + 3] - box[at];
        double y = box[at + 4] - box[at + 1];
        double z = box[at + 5] - box[at + 2];
        return x < 0 ? 0 : x * y + y * z + z * x;
    }

    private int claim() {
        if (nodes == link.length) {
            bounds = Arrays.copyOf(bounds, 2 * bounds.length);
            link = Arrays.copyOf(link, 2 * link.length);
            count = Arrays.copyOf(count, 2 * count.length);
            axis = Arrays.copyOf(axis, 2 * axis.length);
        }
        return nodes++;
    }
}
