package darkrim.view.parts;

import java.util.Arrays;

/** Triangles, each with the facet that it is a piece of. */
public final class Pieces {
    private double[] corners = new double[90];
    private int[] facets = new int[10];
    private int count;

    void add(int facet, double[] a, double[] b, double[] c) {
        if (count == facets.length) {
            facets = Arrays.copyOf(facets, 2 * count);
            corners = Arrays.copyOf(corners, 18 * count);
        }
        facets[count] = facet;
        System.arraycopy(a, 0, corners, 9 * count, 3);
        System.arraycopy(b, 0, corners, 9 * count + 3, 3);
        System.arraycopy(c, 0, corners, 9 * count + 6, 3);
        count++;
    }

    /** How many there are. */
    public int count() {
        return count;
    }

    /** The facet that a piece comes from. */
    public int facet(int piece) {
        return facets[piece];
    }

    /** Nine coordinates a piece, mm. */
    public double[] corners() {
        return Arrays.copyOf(corners, 9 * count);
    }
}
