package darkrim.trace;

/** What a built tree looks like: depth, cost, and whether its boxes hold what they should. */
final class TreeShape {
    private final double[] corners;
    private final FacetTree tree;
    private final boolean[] seen;
    private int depth;
    private double cost;

    TreeShape(double[] corners, FacetTree tree) {
        this.corners = corners;
        this.tree = tree;
        seen = new boolean[corners.length / 9];
        walk(0, 1, 1, tree.box);
        for (boolean each : seen) {
            require(each, "every facet is in a leaf");
        }
    }

    /** Nodes on the longest way from the root to a leaf. */
    int depth() {
        return depth;
    }

    /** Boxes looked at and facets tested by a ray that is sure to enter the root, on average over all lines: half areas over the root's. */
    double cost() {
        return cost;
    }

    private void walk(int node, int level, double share, double[] around) {
        depth = Math.max(depth, level);
        for (int slot = 0; slot < Nodes.WIDTH; slot++) {
            int child = tree.children[Nodes.WIDTH * node + slot];
            if (child == 0) {
                require(
                        tree.borders[Nodes.BORDERS * node + slot] == Float.POSITIVE_INFINITY,
                        "no ray enters a child that is not there");
                continue;
            }
            double[] box = box(node, slot);
            for (int k = 0; k < 3; k++) {
                require(around[k] <= box[k], "a node holds its children");
                require(around[3 + k] >= box[3 + k], "a node holds its children");
            }
            double childShare = halfArea(box) / halfArea(tree.box);
            cost += share;
            if (child > 0) {
                walk(child, level + 1, childShare, box);
            } else {
                cost += childShare * (Nodes.endOfLeaf(child) - Nodes.firstOfLeaf(child));
                leaf(child, box);
            }
        }
    }

    private void leaf(int child, double[] box) {
        for (int i = Nodes.firstOfLeaf(child); i < Nodes.endOfLeaf(child); i++) {
            int facet = tree.order[i];
            require(!seen[facet], "no facet is in two leaves");
            seen[facet] = true;
            for (int k = 0; k < 9; k++) {
                double at = corners[9 * facet + k];
                require(box[k % 3] <= at - 0.99 * tree.contact(), "a leaf holds its facets, widened");
                require(box[3 + k % 3] >= at + 0.99 * tree.contact(), "a leaf holds its facets, widened");
            }
        }
    }

    private double[] box(int node, int slot) {
        double[] box = new double[6];
        for (int k = 0; k < 6; k++) {
            box[k] = tree.grid.place(tree.borders[Nodes.BORDERS * node + Nodes.WIDTH * k + slot], k % 3);
        }
        return box;
    }

    static double halfArea(double[] box) {
        double x = box[3] - box[0];
        double y = box[4] - box[1];
        double z = box[5] - box[2];
        return x * y + y * z + z * x;
    }

    private static void require(boolean held, String what) {
        if (!held) {
            throw new AssertionError(what);
        }
    }
}
