package darkrim.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Sums of what came by each path, as a tree that is walked from the receiver: a node stands for the surfaces met so far, with the parts of their
 * finishes. Grows when a path is met for the first time, and not for a ray. Mutable, one for each batch.
 */
final class PathSums {
    private static final int ROOT = 0;
    private static final long FREE = -1;

    private int count = 1;
    private int[] parent = new int[64];
    private int[] code = new int[64];
    private double[] sum = new double[64];
    private double[] squares = new double[64];
    /** What the sample in work has brought so far: a path may be found in two ways by one sample. */
    private double[] pending = new double[64];

    private long[] pendingOf = new long[64];
    private long sample;

    /** Open addressing: a node and a code, and the child of that node for that code. */
    private long[] keys = new long[256];

    private int[] children = new int[256];

    PathSums() {
        Arrays.fill(keys, FREE);
    }

    /** The node at the receiver. */
    int root() {
        return ROOT;
    }

    /** Begins another sample. */
    void next() {
        sample++;
    }

    /** The node one surface further from the receiver. */
    int child(int node, int surface, Reflector.Part part) {
        int own = Reflector.Part.SLOTS * surface + part.slot();
        long key = ((long) node << 32) | own;
        int at = slot(key);
        if (keys[at] == key) {
            return children[at];
        }
        if (count == parent.length) {
            grow();
        }
        if (3 * count > keys.length) {
            rehash();
            at = slot(key);
        }
        keys[at] = key;
        children[at] = count;
        parent[count] = node;
        code[count] = own;
        return count++;
    }

    /** Adds what came by the path of a node. */
    void add(int node, double value) {
        if (pendingOf[node] != sample) {
            pendingOf[node] = sample;
            pending[node] = 0;
        }
        sum[node] += value;
        squares[node] += value * (value + 2 * pending[node]);
        pending[node] += value;
    }

    /** Means over all samples, the zeros among them included. */
    SortedMap<ReflectionPath, Estimate> estimates() {
        SortedMap<ReflectionPath, Estimate> by = new TreeMap<>();
        for (int node = 1; node < count; node++) {
            if (sum[node] > 0) {
                by.put(path(node), Estimate.ofSums(sample, sum[node], squares[node], Double.POSITIVE_INFINITY));
            }
        }
        return by;
    }

    private ReflectionPath path(int node) {
        List<Reflector> reflectors = new ArrayList<>();
        for (int at = node; at != ROOT; at = parent[at]) {
            reflectors.add(
                    new Reflector(code[at] / Reflector.Part.SLOTS, Reflector.Part.at(code[at] % Reflector.Part.SLOTS)));
        }
        return new ReflectionPath(reflectors);
    }

    private int slot(long key) {
        long mixed = key * 0x9e3779b97f4a7c15L;
        int at = (int) (mixed >>> 32) & (keys.length - 1);
        while (keys[at] != FREE && keys[at] != key) {
            at = (at + 1) & (keys.length - 1);
        }
        return at;
    }

    private void grow() {
        int size = 2 * count;
        parent = Arrays.copyOf(parent, size);
        code = Arrays.copyOf(code, size);
        sum = Arrays.copyOf(sum, size);
        squares = Arrays.copyOf(squares, size);
        pending = Arrays.copyOf(pending, size);
        pendingOf = Arrays.copyOf(pendingOf, size);
    }

    private void rehash() {
        long[] oldKeys = keys;
        int[] oldChildren = children;
        keys = new long[2 * oldKeys.length];
        children = new int[keys.length];
        Arrays.fill(keys, FREE);
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldKeys[i] != FREE) {
                int at = slot(oldKeys[i]);
                keys[at] = oldKeys[i];
                children[at] = oldChildren[i];
            }
        }
    }
}
