package darkrim.trace;

import java.util.Arrays;

/**
 * Nodes of a tree with up to {@link #WIDTH} children each, in flat arrays; the first is the root. The borders of a node's children stand
 * together, low x of all, then low y, z, high x, y, z, so that one instruction takes those of many.
 */
final class Nodes {
    /** Most children of a node. */
    static final int WIDTH = 8;
    /** Borders of a node: six for each child. */
    static final int BORDERS = 6 * WIDTH;
    /** Most facets in a leaf. */
    static final int LARGEST_LEAF = 8;

    /** Unused places at the end of arrays of corners, so that a kernel may read some facets more than a leaf has. */
    static final int SPARE = 8;

    private float[] borders;
    private int[] children;
    private int count;

    Nodes(int room) {
        borders = new float[BORDERS * room];
        children = new int[WIDTH * room];
    }

    /** A leaf as a child: a negative number. */
    static int leaf(int first, int facets) {
        return ~(LARGEST_LEAF * first + facets - 1);
    }

    static int firstOfLeaf(int leaf) {
        return ~leaf / LARGEST_LEAF;
    }

    static int facetsOfLeaf(int leaf) {
        return (~leaf & (LARGEST_LEAF - 1)) + 1;
    }

    static int endOfLeaf(int leaf) {
        return firstOfLeaf(leaf) + facetsOfLeaf(leaf);
    }

    int count() {
        return count;
    }

    /** Adds a node, all of whose children are boxes that no ray enters. */
    int add() {
        if (count == children.length / WIDTH) {
            makeRoom(2 * count);
        }
        int node = count++;
        Arrays.fill(borders, BORDERS * node, BORDERS * node + BORDERS / 2, Float.POSITIVE_INFINITY);
        Arrays.fill(borders, BORDERS * node + BORDERS / 2, BORDERS * node + BORDERS, Float.NEGATIVE_INFINITY);
        return node;
    }

    void setChild(int node, int slot, int[] box, int child) {
        children[WIDTH * node + slot] = child;
        for (int k = 0; k < 6; k++) {
            borders[BORDERS * node + WIDTH * k + slot] = box[k];
        }
    }

    /** Adds the nodes of another tree; returns where its root is now. */
    int append(Nodes other) {
        int at = count;
        makeRoom(count + other.count);
        System.arraycopy(other.borders, 0, borders, BORDERS * at, BORDERS * other.count);
        for (int i = 0; i < WIDTH * other.count; i++) {
            int child = other.children[i];
            children[WIDTH * at + i] = child > 0 ? child + at : child;
        }
        count += other.count;
        return at;
    }

    private void makeRoom(int room) {
        if (WIDTH * room > children.length) {
            int more = Math.max(room, 3 * count / 2);
            borders = Arrays.copyOf(borders, BORDERS * more);
            children = Arrays.copyOf(children, WIDTH * more);
        }
    }

    /** Six times {@link #WIDTH} borders a node. */
    float[] borders() {
        return Arrays.copyOf(borders, BORDERS * count);
    }

    /** {@link #WIDTH} children a node: another node, a leaf, or 0 for none. */
    int[] children() {
        return Arrays.copyOf(children, WIDTH * count);
    }
}
