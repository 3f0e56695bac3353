package darkrim.trace;

import java.util.Arrays;

/**
 * Builds the tree over some thousand facets: first one of two children a node, then, from the bottom, the cheapest way to make nodes of up to
 * {@link Nodes#WIDTH} children of it (Wald, Benthin, Boulos, "Getting rid of packets", 2008; the search from the bottom after Ylitie, Karras,
 * Laine, "Efficient incoherent ray traversal on GPUs through compressed wide BVHs", 2017, section 3.1).
 */
final class Part {
    /** What it costs to test up to four facets of a leaf, over what it costs to look at a node. */
    private static final float LEAF_COST = 1;
    /** What each facet costs besides. */
    private static final float FACET_COST = 0.3f;

    private static final int WIDTH = Nodes.WIDTH;

    private static final byte LEAF = 0;

    private static final int NODE_BYTES = (Nodes.BORDERS + WIDTH) * Float.BYTES;
    /** So many for each facet, beside the 80 of its own, leave a tree of any size within 120 bytes a facet. */
    private static final int BYTES_FOR_NODES = 39;
    /** First price of a node, over the mean half area of one. */
    private static final float PRICE = 0x1p-6f;
    /** A price beyond the area of every box. */
    private static final float DEAREST = 0x1p60f;

    private final References references;
    private final Bins bins;
    private Nodes nodes = new Nodes(64);
    /** Half areas of the nodes made, square steps. */
    private double area;

    /** Of a node of the first tree the second child; the first follows the node; 0 for a leaf. */
    private final int[] second;

    private final int[] first;
    private final int[] end;
    private final int[] boxes;
    /** Cost of a subtree that may have 1 to {@link Nodes#WIDTH} roots. */
    private final float[] cost;
    /** How many of the roots the first child gets; 0 if there is one root. */
    private final byte[] share;
    /** Of how many roots the best use is made; for one root {@link #LEAF} if it is a leaf. */
    private final byte[] used;

    private int count;

    Part(References references, Bins bins, Subset set) {
        this.references = references;
        this.bins = bins;
        int room = 2 * set.size();
        second = new int[room];
        first = new int[room];
        end = new int[room];
        boxes = new int[6 * room];
        cost = new float[(WIDTH + 1) * room];
        share = new byte[(WIDTH + 1) * room];
        used = new byte[(WIDTH + 1) * room];
        halve(set.first(), set.end(), set.depth());
    }

    /**
     * The nodes over the facets: those that cost rays least, unless there are too many of them, as over small facets far apart. Then each gets
     * a price, until there are few enough. A node with the highest price has 7 facets or more below it, since that many fit a leaf.
     */
    Nodes nodes() {
        emit(0);
        float price = PRICE * (float) area / nodes.count();
        for (int most = 1 + (int) ((long) BYTES_FOR_NODES * (end[0] - first[0]) / NODE_BYTES);
                nodes.count() > most && price < DEAREST;
                price *= 1.25f) {
            for (int node = count - 1; node >= 0; node--) {
                weigh(node, price);
            }
            nodes = new Nodes(64);
            emit(0);
        }
        return nodes;
    }

    private int halve(int from, int to, int depth) {
        int node = count++;
        first[node] = from;
        end[node] = to;
        int middle = to - from == 1 ? from : Splits.split(references, bins, from, to, depth);
        if (middle == from) {
            Boxes.empty(boxes, 6 * node);
            for (int i = from; i < to; i++) {
                Boxes.grow(boxes, 6 * node, references.boxes, 6 * i);
            }
        } else {
            int left = halve(from, middle, depth + 1);
            int right = halve(middle, to, depth + 1);
            second[node] = right;
            System.arraycopy(boxes, 6 * left, boxes, 6 * node, 6);
            Boxes.grow(boxes, 6 * node, boxes, 6 * right);
        }
        weigh(node, 0);
        return node;
    }

    private float leafCost(int node) {
        int facets = end[node] - first[node];
        int fours = (facets + 3) / 4;
        return (LEAF_COST * fours + FACET_COST * facets) * (float) Boxes.halfArea(boxes, 6 * node);
    }

    private void weigh(int node, float nodeCost) {
        int at = (WIDTH + 1) * node;
        if (second[node] == 0) {
            Arrays.fill(cost, at, at + WIDTH + 1, leafCost(node));
            return;
        }
        int atLeft = (WIDTH + 1) * (node + 1);
        int atRight = (WIDTH + 1) * second[node];
        for (int roots = 2; roots <= WIDTH; roots++) {
            float best = Float.POSITIVE_INFINITY;
            for (int k = 1; k < roots; k++) {
                float here = cost[atLeft + k] + cost[atRight + roots - k];
                if (here < best) {
                    best = here;
                    share[at + roots] = (byte) k;
                }
            }
            cost[at + roots] = best;
            used[at + roots] = (byte) roots;
        }
        float alone = cost[at + WIDTH] + (float) Boxes.halfArea(boxes, 6 * node) + nodeCost;
        used[at + 1] = 1;
        if (end[node] - first[node] <= Nodes.LARGEST_LEAF && leafCost(node) <= alone) {
            alone = leafCost(node);
            used[at + 1] = LEAF;
        }
        cost[at + 1] = alone;
        for (int roots = 2; roots < WIDTH; roots++) {
            if (cost[at + roots - 1] <= cost[at + roots]) {
                cost[at + roots] = cost[at + roots - 1];
                used[at + roots] = roots == 2 ? 1 : used[at + roots - 1];
            }
        }
    }

    private boolean isLeaf(int node) {
        return second[node] == 0 || used[(WIDTH + 1) * node + 1] == LEAF;
    }

    private int emit(int node) {
        int made = nodes.add();
        area += Boxes.halfArea(boxes, 6 * node);
        int[] chosen = new int[WIDTH];
        int children = isLeaf(node) ? choose(chosen, 0, node) : collect(chosen, 0, node, WIDTH);
        sort(chosen, children);
        int[] box = new int[6];
        for (int slot = 0; slot < children; slot++) {
            int child = chosen[slot];
            int link = isLeaf(child) ? Nodes.leaf(first[child], end[child] - first[child]) : emit(child);
            System.arraycopy(boxes, 6 * child, box, 0, 6);
            nodes.setChild(made, slot, box, link);
        }
        return made;
    }

    /**
     * Largest box last: that one is looked at first where any facet will do, and of all children it is the likeliest to hold one on the ray.
     * Nothing else depends on the order.
     */
    private void sort(int[] chosen, int children) {
        for (int i = 1; i < children; i++) {
            int moved = chosen[i];
            double halfArea = Boxes.halfArea(boxes, 6 * moved);
            int j = i;
            while (j > 0 && Boxes.halfArea(boxes, 6 * chosen[j - 1]) > halfArea) {
                chosen[j] = chosen[j - 1];
                j--;
            }
            chosen[j] = moved;
        }
    }

    private static int choose(int[] chosen, int at, int node) {
        chosen[at] = node;
        return at + 1;
    }

    /** Puts the roots into which a subtree is parted in their places; returns the next free one. */
    private int collect(int[] chosen, int at, int node, int roots) {
        int left = node + 1;
        int k = share[(WIDTH + 1) * node + roots];
        return root(chosen, root(chosen, at, left, k), second[node], roots - k);
    }

    private int root(int[] chosen, int at, int node, int roots) {
        int best = second[node] == 0 ? 1 : used[(WIDTH + 1) * node + roots];
        return best <= 1 ? choose(chosen, at, node) : collect(chosen, at, node, best);
    }
}
