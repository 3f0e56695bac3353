package darkrim.trace;

/** Fits the boxes of a tree to facets that have moved, from the leaves up; what holds what stays. */
final class Refit {
    private Refit() {}

    /**
     * New borders for the children of all nodes.
     *
     * @param tree the tree of the facets as they were
     * @param moved the boxes of the facets, by their numbers
     */
    static float[] borders(FacetTree tree, References moved) {
        int nodes = tree.children.length / Nodes.WIDTH;
        float[] borders = tree.borders.clone();
        int[] about = new int[6 * nodes];
        int[] box = new int[6];
        // A child stands after its parent.
        for (int node = nodes - 1; node >= 0; node--) {
            Boxes.empty(about, 6 * node);
            for (int slot = 0; slot < Nodes.WIDTH; slot++) {
                int child = tree.children[Nodes.WIDTH * node + slot];
                if (child == 0) {
                    break;
                }
                Boxes.empty(box, 0);
                if (child > 0) {
                    Boxes.grow(box, 0, about, 6 * child);
                } else {
                    for (int i = Nodes.firstOfLeaf(child); i < Nodes.endOfLeaf(child); i++) {
                        Boxes.grow(box, 0, moved.boxes, 6 * tree.order[i]);
                    }
                }
                Boxes.grow(about, 6 * node, box, 0);
                for (int k = 0; k < 6; k++) {
                    borders[Nodes.BORDERS * node + Nodes.WIDTH * k + slot] = box[k];
                }
            }
        }
        return borders;
    }
}
