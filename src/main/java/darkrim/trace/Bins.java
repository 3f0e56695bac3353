package darkrim.trace;

import java.util.Arrays;

/**
 * Weighs the ways to split a node along one axis: facets are sorted into equal bins by their centres, and the cost of a split between two
 * bins is facets times area on either side (MacDonald and Booth 1990; binning after Wald 2007, see {@link TreeBuilder}).
 */
final class Bins {
    private static final int COUNT = 16;

    private final Boxes boxes;
    private final double[] bounds = new double[6 * COUNT];
    private final int[] facets = new int[COUNT];
    private final double[] costAbove = new double[COUNT];
    private final double[] sweep = new double[6];

    private int axis;
    private double low;
    private double width;
    private int lastBelow;
    private double cost;

    Bins(Boxes boxes) {
        this.boxes = boxes;
    }

    /**
     * Sorts facets into bins and finds the cheapest split.
     *
     * @param order facet numbers
     * @param first the first place in {@code order}
     * @param end the place after the last
     * @param along the axis, 0 to 2
     * @param lowest least centre along the axis, mm
     * @param highest greatest centre, more than the least, mm
     */
    void fill(int[] order, int first, int end, int along, double lowest, double highest) {
        axis = along;
        low = lowest;
        width = highest - lowest;
        Arrays.fill(facets, 0);
        for (int bin = 0; bin < COUNT; bin++) {
            Boxes.empty(bounds, bin);
        }
        for (int i = first; i < end; i++) {
            int bin = binOf(order[i]);
            facets[bin]++;
            boxes.growBy(order[i], bounds, bin);
        }
        findCheapest(end - first);
    }

    private void findCheapest(int all) {
        Boxes.empty(sweep, 0);
        int above = 0;
        for (int bin = COUNT - 1; bin > 0; bin--) {
            Boxes.grow(sweep, 0, bounds, bin);
            above += facets[bin];
            costAbove[bin - 1] = above * Boxes.halfArea(sweep, 0);
        }
        Boxes.empty(sweep, 0);
        int below = 0;
        cost = Double.POSITIVE_INFINITY;
        for (int bin = 0; bin < COUNT - 1; bin++) {
            Boxes.grow(sweep, 0, bounds, bin);
            below += facets[bin];
            double here = below * Boxes.halfArea(sweep, 0) + costAbove[bin];
            if (below > 0 && below < all && here < cost) {
                cost = here;
                lastBelow = bin;
            }
        }
    }

    /** Facets times half area, mm2, summed over both sides of the cheapest split; infinite where every split leaves a side empty. */
    double cost() {
        return cost;
    }

    /** The last bin below the cheapest split. */
    int lastBelow() {
        return lastBelow;
    }

    /** The bin of a facet, from 0. */
    int binOf(int facet) {
        return Math.min(COUNT - 1, (int) (COUNT * ((boxes.centre(facet, axis) - low) / width)));
    }
}
