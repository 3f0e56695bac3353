package darkrim.trace;

/**
 * Weighs the ways to split a set of facets: they are sorted into equal bins by the centres of their boxes, and the cost of a split between
 * two bins is facets times area on either side (MacDonald and Booth 1990; binning after Wald 2007, see {@link TreeBuilder}).
 */
final class Bins {
    private static final int MOST = 16;
    /** Six borders and the number of facets; one unused, so that a bin starts where a shift says. */
    private static final int STRIDE = 8;

    private final int[] bins = new int[3 * MOST * STRIDE];
    private final double[] costAbove = new double[MOST];
    private final int[] sweep = new int[6];
    /** Twice the least and the greatest centre along each axis. */
    private final int[] centres = new int[6];

    private final float[] binsPerStep = new float[3];
    private int count;
    private int axis;
    private int lastBelow;
    private double cost;

    /**
     * Sorts facets into bins and finds the cheapest split.
     *
     * @param references the facets
     * @param first the first of them
     * @param end the place after the last
     */
    void fill(References references, int first, int end) {
        cost = Double.POSITIVE_INFINITY;
        count = Math.min(MOST, 4 + (end - first) / 8);
        findCentres(references.boxes, first, end);
        for (int k = 0; k < 3; k++) {
            // A little less than the number of bins, so that the last centre falls into the last bin.
            binsPerStep[k] = 0.9999f * count / Math.max(1, centres[3 + k] - centres[k]);
        }
        for (int bin = 0; bin < 3 * MOST; bin += bin % MOST == count - 1 ? MOST - count + 1 : 1) {
            Boxes.empty(bins, bin * STRIDE);
            bins[bin * STRIDE + 6] = 0;
        }
        sort(references.boxes, first, end);
        for (int k = 0; k < 3; k++) {
            if (centres[k] < centres[3 + k]) {
                findCheapest(k, end - first);
            }
        }
    }

    private void findCentres(int[] boxes, int first, int end) {
        int lowX = Integer.MAX_VALUE;
        int lowY = Integer.MAX_VALUE;
        int lowZ = Integer.MAX_VALUE;
        int highX = Integer.MIN_VALUE;
        int highY = Integer.MIN_VALUE;
        int highZ = Integer.MIN_VALUE;
        for (int at = 6 * first; at < 6 * end; at += 6) {
            int x = boxes[at] + boxes[at + 3];
            int y = boxes[at + 1] + boxes[at + 4];
            int z = boxes[at + 2] + boxes[at + 5];
            lowX = Math.min(lowX, x);
            lowY = Math.min(lowY, y);
            lowZ = Math.min(lowZ, z);
            highX = Math.max(highX, x);
            highY = Math.max(highY, y);
            highZ = Math.max(highZ, z);
        }
        centres[0] = lowX;
        centres[1] = lowY;
        centres[2] = lowZ;
        centres[3] = highX;
        centres[4] = highY;
        centres[5] = highZ;
    }

    private void sort(int[] boxes, int first, int end) {
        for (int at = 6 * first; at < 6 * end; at += 6) {
            for (int k = 0; k < 3; k++) {
                int bin = (k * MOST + binOf(boxes, at, k)) * STRIDE;
                Boxes.grow(bins, bin, boxes, at);
                bins[bin + 6]++;
            }
        }
    }

    private int binOf(int[] boxes, int at, int k) {
        return (int) ((boxes[at + k] + boxes[at + 3 + k] - centres[k]) * binsPerStep[k]);
    }

    private void findCheapest(int k, int all) {
        int base = k * MOST * STRIDE;
        Boxes.empty(sweep, 0);
        int above = 0;
        for (int bin = count - 1; bin > 0; bin--) {
            Boxes.grow(sweep, 0, bins, base + bin * STRIDE);
            above += bins[base + bin * STRIDE + 6];
            costAbove[bin - 1] = above * Boxes.halfArea(sweep, 0);
        }
        Boxes.empty(sweep, 0);
        int below = 0;
        for (int bin = 0; bin < count - 1; bin++) {
            Boxes.grow(sweep, 0, bins, base + bin * STRIDE);
            below += bins[base + bin * STRIDE + 6];
            double here = below * Boxes.halfArea(sweep, 0) + costAbove[bin];
            if (below > 0 && below < all && here < cost) {
                cost = here;
                axis = k;
                lastBelow = bin;
            }
        }
    }

    /** Facets times half area, square steps, summed over both sides of the cheapest split; infinite where every split leaves a side empty. */
    double cost() {
        return cost;
    }

    /** Whether a facet lies below the cheapest split. */
    boolean below(References references, int i) {
        return binOf(references.boxes, 6 * i, axis) <= lastBelow;
    }
}
