package darkrim.trace;

/** Parts sets of facets in two, so that lines through them meet few. */
final class Splits {
    /**
     * From this depth on sets are halved by number, so that no input makes the tree too deep: nine coordinates a facet fit an array for
     * fewer than 2^28 facets, which 28 halvings part.
     */
    private static final int HEURISTIC_DEPTH = FacetTree.DEEPEST - 28;

    private Splits() {}

    /**
     * Sorts facets into two parts.
     *
     * @param first the first of them
     * @param end the place after the last
     * @param depth how often they have been parted before
     * @return where the second part begins; the first place where there is no way to part them and they fit a leaf
     */
    static int split(References references, Bins bins, int first, int end, int depth) {
        if (depth < HEURISTIC_DEPTH) {
            bins.fill(references, first, end);
            if (bins.cost() < Double.POSITIVE_INFINITY) {
                return partition(references, bins, first, end);
            }
        }
        return end - first <= Nodes.LARGEST_LEAF ? first : (first + end) >>> 1;
    }

    /** Moves the facets below the split that was weighed last before those above it. */
    private static int partition(References references, Bins bins, int first, int end) {
        int left = first;
        int right = end;
        while (left < right) {
            if (bins.below(references, left)) {
                left++;
            } else {
                right--;
                if (bins.below(references, right)) {
                    references.swap(left, right);
                    left++;
                }
            }
        }
        return left;
    }
}
