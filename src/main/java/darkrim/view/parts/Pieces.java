package darkrim.view.parts;

import java.util.Arrays;

/** Triangles, each with the number of what it is a piece of, such as a facet. */
public final class Pieces {
    private double[] corners = new double[90];
    private int[] tags = new int[10];
    private int count;

    void add(int tag, double[] a, double[] b, double[] c) {
        if (count == tags.length) {
            tags = Arrays.copyOf(tags, 2 * count);
            corners = Arrays.copyOf(corners, 18 * count);
        }
        tags[count] = tag;
        System.arraycopy(a, 0, corners, 9 * count, 3);
        System.arraycopy(b, 0, corners, 9 * count + 3, 3);
        System.arraycopy(c, 0, corners, 9 * count + 6, 3);
        count++;
    }

    /** How many there are. */
    public int count() {
        return count;
    }

    /** The number of what a piece comes from. */
    public int tag(int piece) {
        return tags[piece];
    }

    /** Nine coordinates a piece, mm. */
    public double[] corners() {
        return Arrays.copyOf(corners, 9 * count);
    }
}
