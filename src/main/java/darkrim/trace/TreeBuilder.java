package darkrim.trace;

import java.util.Arrays;

/**
 * Builds the tree from the top by a binned surface-area heuristic (MacDonald and Booth, "Heuristics for ray tracing using space
 * subdivision", The Visual Computer 6, 1990; binning after Wald, "On fast construction of SAH-based bounding volume hierarchies", 2007).
 */
final class TreeBuilder {
    /** A node of so few facets is a leaf. */
    private static final int SMALLEST = 2;
    /** A node of more facets is split even if that seems to cost more. */
    private static final int LARGEST_LEAF = 8;
    /**
     * From this depth on nodes are halved by number, so that no input makes the tree too deep: nine coordinates a facet fit an array for
     * fewer than 2^28 facets, which 28 halvings part.
     */
    private static final int HEURISTIC_DEPTH = FacetTree.DEEPEST - 28;

    private final Boxes boxes;
    private final Bins bins;
    private final int[] order;
    private double[] bounds = new double[6 * 64];
    private int[] link = new int[64];
    private int[] count = new int[64];
    private byte[] axis = new byte[64];
    private int nodes;

    private final double[] centres = new double[6];

    private TreeBuilder(double[] corners, double widening) {
        boxes = new Boxes(corners, widening);
        bins = new Bins(boxes);
        order = new int[corners.length / 9];
        Arrays.setAll(order, facet -> facet);
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

    /** Makes the node of facets {@code first} to {@code end} of the order, and all below it. */
    private void node(int first, int end, int depth) {
        int node = claim();
        Boxes.empty(bounds, node);
        for (int i = first; i < end; i++) {
            boxes.growBy(order[i], bounds, node);
        }
        int middle = end - first <= SMALLEST ? first : split(node, first, end, depth);
        if (middle == first) {
            link[node] = first;
            count[node] = end - first;
            return;
        }
        node(first, middle, depth + 1);
        link[node] = nodes;
        node(middle, end, depth + 1);
    }

    /** Partitions the facets of a node; returns where the second part begins, or {@code first} to leave a leaf. */
    private int split(int node, int first, int end, int depth) {
        int facets = end - first;
        findCentres(first, end);
        double best = Double.POSITIVE_INFINITY;
        int bestAxis = -1;
        if (depth < HEURISTIC_DEPTH) {
            for (int k = 0; k < 3; k++) {
                double cost = weigh(first, end, k);
                if (cost < best) {
                    best = cost;
                    bestAxis = k;
                }
            }
        }
        // To walk into a node is taken to cost as much as to test a facet.
        boolean pays = 1 + best / Boxes.halfArea(bounds, node) < facets;
        if (!pays && facets <= LARGEST_LEAF) {
            return first;
        }
        if (bestAxis < 0) {
            return first + facets / 2;
        }
        axis[node] = (byte) bestAxis;
        weigh(first, end, bestAxis);
        return partition(first, end);
    }

    private void findCentres(int first, int end) {
        Boxes.empty(centres, 0);
        for (int i = first; i < end; i++) {
            for (int k = 0; k < 3; k++) {
                double centre = boxes.centre(order[i], k);
                centres[k] = Math.min(centres[k], centre);
                centres[3 + k] = Math.max(centres[3 + k], centre);
            }
        }
    }

    /** Least cost of a split along an axis; infinite where all centres are equal. */
    private double weigh(int first, int end, int k) {
        if (centres[k] == centres[3 + k]) {
            return Double.POSITIVE_INFINITY;
        }
        bins.fill(order, first, end, k, centres[k], centres[3 + k]);
        return bins.cost();
    }

    /** Moves the facets below the split that was weighed last before those above it. */
    private int partition(int first, int end) {
        int left = first;
        int right = end;
        while (left < right) {
            if (bins.binOf(order[left]) <= bins.lastBelow()) {
                left++;
            } else {
                right--;
                int swapped = order[left];
                order[left] = order[right];
                order[right] = swapped;
            }
        }
        return left;
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
