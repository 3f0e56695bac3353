package darkrim.trace;

import java.util.function.IntConsumer;

/** Walks down a tree into the boxes that pass a test, to the facets in the leaves. Mutable, one use. */
final class BoxWalk {
    private final FacetTree tree;
    private final BoxTest test;
    private final IntConsumer visitor;
    private final double[] box = new double[6];

    /**
     * @param test asked for the boxes on the way
     * @param visitor receives facet numbers
     */
    BoxWalk(FacetTree tree, BoxTest test, IntConsumer visitor) {
        this.tree = tree;
        this.test = test;
        this.visitor = visitor;
    }

    /** Visits each facet once whose leaf and all boxes about it pass. */
    void walk() {
        if (tree.order.length > 0) {
            walk(0);
        }
    }

    private void walk(int node) {
        for (int slot = 0; slot < Nodes.WIDTH; slot++) {
            int child = tree.children[Nodes.WIDTH * node + slot];
            if (child == 0) {
                return;
            }
            for (int k = 0; k < 6; k++) {
                box[k] = tree.grid.place(tree.borders[Nodes.BORDERS * node + Nodes.WIDTH * k + slot], k % 3);
            }
            if (!test.matters(box, 0)) {
                continue;
            }
            if (child > 0) {
                walk(child);
            } else {
                for (int i = Nodes.firstOfLeaf(child), end = Nodes.endOfLeaf(child); i < end; i++) {
                    visitor.accept(tree.order[i]);
                }
            }
        }
    }
}
