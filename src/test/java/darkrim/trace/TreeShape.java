package darkrim.trace;

/** What a built tree looks like: depth, cost, and whether its boxes hold what they should. */
final class TreeShape {
    private final double[] corners;
    private final TreeBuilder built;
    private final double[] bounds;
    private final int[] link;
    private final int[] count;
    private final boolean[] seen;
    private final double widening;
    private int depth;
    private double cost;

    TreeShape(double[] corners, double widening) {
        this.corners = corners;
        this.widening = widening;
        built = TreeBuilder.build(corners, widening);
        bounds = built.bounds();
        link = built.link();
        count = built.count();
        seen = new boolean[corners.length / 9];
        walk(0, 1);
        for (boolean each : seen) {
            require(each, "every facet is in a leaf");
        }
    }

    /** Nodes on the longest way from the root to a leaf, both counted. */
    int depth() {
        return depth;
    }

    /** Nodes entered and facets tested by a ray that is sure to enter the root, on average over all lines: half areas over the root's. */
    double cost() {
        return cost;
    }

    private void walk(int node, int level) {
        depth = Math.max(depth, level);
        double share = Boxes.halfArea(bounds, node) / Boxes.halfArea(bounds, 0);
        cost += share * Math.max(1, count[node]);
        if (count[node] > 0) {
            for (int i = link[node]; i < link[node] + count[node]; i++) {
                int facet = built.order()[i];
                require(!seen[facet], "no facet is in two leaves");
                seen[facet] = true;
                for (int k = 0; k < 9; k++) {
                    double at = corners[9 * facet + k];
                    require(bounds[6 * node + k % 3] <= at - 0.99 * widening, "a leaf holds its facets, widened");
                    require(bounds[6 * node + 3 + k % 3] >= at + 0.99 * widening, "a leaf holds its facets, widened");
                }
            }
            return;
        }
        for (int child : new int[] {node + 1, link[node]}) {
            for (int k = 0; k < 3; k++) {
                require(bounds[6 * node + k] <= bounds[6 * child + k], "a node holds its children");
                require(bounds[6 * node + 3 + k] >= bounds[6 * child + 3 + k], "a node holds its children");
            }
            walk(child, level + 1);
        }
    }

    private static void require(boolean held, String what) {
        if (!held) {
            throw new AssertionError(what);
        }
    }
}
