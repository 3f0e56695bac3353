package darkrim.geom;

import java.util.Arrays;

/** Sets of numbers that are joined step by step; finding halves the path, so that both are as good as constant. */
public final class UnionFind {
    private final int[] parent;

    /**
     * Every number by itself.
     *
     * @param count how many numbers there are
     */
    public UnionFind(int count) {
        parent = new int[count];
        for (int i = 0; i < count; i++) {
            parent[i] = i;
        }
    }

    /** The representative of the set of a number. */
    public int find(int number) {
        int at = number;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }

    /** Joins the sets of two numbers. */
    public void join(int a, int b) {
        int rootA = find(a);
        int rootB = find(b);
        parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
    }

    /** The set of each number, counted from 0. */
    public int[] numbered() {
        int[] number = new int[parent.length];
        Arrays.fill(number, -1);
        int next = 0;
        for (int i = 0; i < parent.length; i++) {
            int root = find(i);
            if (number[root] < 0) {
                number[root] = next++;
            }
            number[i] = number[root];
        }
        return number;
    }
}
