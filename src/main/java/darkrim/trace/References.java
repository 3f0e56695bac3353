package darkrim.trace;

/**
 * The facets from which a tree is built, each with its box; sorted while the tree is built. Boxes move with their facets, so that memory is
 * read from one end to the other.
 */
final class References {
    /** Six borders a facet, in steps of the grid. */
    final int[] boxes;

    /** Facet numbers. */
    final int[] facets;

    References(int count) {
        boxes = new int[6 * count];
        facets = new int[count];
    }

    /** The boxes of facets {@code first} to {@code end}. */
    void box(double[] corners, BoxGrid grid, int first, int end) {
        for (int f = first; f < end; f++) {
            facets[f] = f;
            for (int k = 0; k < 3; k++) {
                double a = corners[9 * f + k];
                double b = corners[9 * f + 3 + k];
                double c = corners[9 * f + 6 + k];
                double least = a < b ? a : b;
                double most = a < b ? b : a;
                boxes[6 * f + k] = grid.below(c < least ? c : least, k);
                boxes[6 * f + 3 + k] = grid.above(c > most ? c : most, k);
            }
        }
    }

    void swap(int i, int j) {
        int facet = facets[i];
        facets[i] = facets[j];
        facets[j] = facet;
        for (int k = 0; k < 6; k++) {
            int border = boxes[6 * i + k];
            boxes[6 * i + k] = boxes[6 * j + k];
            boxes[6 * j + k] = border;
        }
    }
}
