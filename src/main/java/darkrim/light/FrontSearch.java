package darkrim.light;

import java.util.stream.IntStream;

/**
 * Whether any of many points lies in front of a plane, or a point in front of any of many planes, without looking at all of them.
 *
 * <p>Both are one question: a point (x, y, z, 1) lies in front of a plane (normal, minus its distance from the origin) where the product of
 * the two is positive. The members are halved at the median of their widest component down to a few, and the box about each half bounds the
 * product from above (interval arithmetic; the tree is the k-d tree of Bentley 1975, in four dimensions). Immutable.
 */
final class FrontSearch {
    private static final int LEAF = 8;
    private static final int SIZE = 4;

    private final double[] members;
    private final int[] order;
    /** Eight bounds a node, least then greatest of each component; the halves of node i are nodes 2 i + 1 and 2 i + 2. */
    private final double[] boxes;

    private final double[] scale;
    private final double threshold;

    /**
     * @param members four components each, one after the other; at least one member
     * @param scale what each of the four components is multiplied by to be compared with the others: only for where to halve
     * @param threshold products up to this do not count, mm
     */
    FrontSearch(double[] members, double[] scale, double threshold) {
        this.members = members;
        this.scale = scale.clone();
        this.threshold = threshold;
        int count = members.length / SIZE;
        order = IntStream.range(0, count).toArray();
        int nodes = 1;
        for (int most = count; most > LEAF; most = (most + 1) / 2) {
            nodes = 2 * nodes + 1;
        }
        boxes = new double[2 * SIZE * nodes];
        build(0, 0, count);
    }

    /** Whether the product of (x, y, z, w) with any member exceeds the threshold. */
    boolean any(double x, double y, double z, double w) {
        return most(0, x, y, z, w) > threshold && any(0, 0, order.length, x, y, z, w);
    }

    private boolean any(int node, int from, int to, double x, double y, double z, double w) {
        if (to - from <= LEAF) {
            for (int i = from; i < to; i++) {
                int at = SIZE * order[i];
                if (members[at] * x + members[at + 1] * y + members[at + 2] * z + members[at + 3] * w > threshold) {
                    return true;
                }
            }
            return false;
        }
        int middle = (from + to + 1) >>> 1;
        double low = most(2 * node + 1, x, y, z, w);
        double high = most(2 * node + 2, x, y, z, w);
        boolean lowFirst = low >= high;
        if (Math.max(low, high) > threshold
                && (lowFirst
                        ? any(2 * node + 1, from, middle, x, y, z, w)
                        : any(2 * node + 2, middle, to, x, y, z, w))) {
            return true;
        }
        return Math.min(low, high) > threshold
                && (lowFirst ? any(2 * node + 2, middle, to, x, y, z, w) : any(2 * node + 1, from, middle, x, y, z, w));
    }

    /** No product with a member of a node is larger, but for rounding. */
    private double most(int node, double x, double y, double z, double w) {
        int at = 2 * SIZE * node;
        return boxes[x > 0 ? at + 4 : at] * x
                + boxes[y > 0 ? at + 5 : at + 1] * y
                + boxes[z > 0 ? at + 6 : at + 2] * z
                + boxes[w > 0 ? at + 7 : at + 3] * w;
    }

    private void build(int node, int from, int to) {
        int at = 2 * SIZE * node;
        int widest = 0;
        double width = -1;
        for (int k = 0; k < SIZE; k++) {
            double least = Double.POSITIVE_INFINITY;
            double greatest = Double.NEGATIVE_INFINITY;
            for (int i = from; i < to; i++) {
                double value = members[SIZE * order[i] + k];
                least = Math.min(least, value);
                greatest = Math.max(greatest, value);
            }
            boxes[at + k] = least;
            boxes[at + SIZE + k] = greatest;
            if ((greatest - least) * scale[k] > width) {
                width = (greatest - least) * scale[k];
                widest = k;
            }
        }
        if (to - from > LEAF) {
            int middle = (from + to + 1) >>> 1;
            select(widest, from, to - 1, middle);
            build(2 * node + 1, from, middle);
            build(2 * node + 2, middle, to);
        }
    }

    /** Puts the member that belongs at a place there, smaller ones before it (Hoare's selection, 1961). */
    private void select(int component, int first, int last, int place) {
        int low = first;
        int high = last;
        while (low < high) {
            double pivot = value((low + high) >>> 1, component);
            int i = low;
            int j = high;
            while (i <= j) {
                while (value(i, component) < pivot) {
                    i++;
                }
                while (value(j, component) > pivot) {
                    j--;
                }
                if (i <= j) {
                    int other = order[i];
                    order[i++] = order[j];
                    order[j--] = other;
                }
            }
            if (place <= j) {
                high = j;
            } else if (place >= i) {
                low = i;
            } else {
                return;
            }
        }
    }

    private double value(int i, int component) {
        return members[SIZE * order[i] + component];
    }
}
