package darkrim.light;

import darkrim.scene.Scene;
import java.util.Arrays;

/**
 * Facets that are halved where it is worth it: each piece is a triangle, and its halves meet at the middle of its longest edge. A piece is known
 * by a number. Grows while it is filled by one thread.
 */
final class TrianglePieces {
    /** Not halved yet. */
    private static final int NONE = -1;

    private int count;
    private int[] facet = new int[64];
    private int[] half = new int[64];
    private double[] corners = new double[9 * 64];
    private double[] weights = new double[6 * 64];
    private double[] area = new double[64];

    /** Adds a whole facet. */
    int add(Scene scene, int whole) {
        int piece = next(whole, scene.facetArea(whole));
        for (int k = 0; k < 9; k++) {
            corners[9 * piece + k] = scene.corner(whole, k / 3, k % 3);
        }
        weights[6 * piece] = 1;
        weights[6 * piece + 3] = 1;
        longestEdgeFirst(piece);
        return piece;
    }

    /** Adds a single point, mm: a triangle without extent or facet. */
    int add(double x, double y, double z) {
        int piece = next(-1, 1);
        for (int k = 0; k < 3; k++) {
            corners[9 * piece + 3 * k] = x;
            corners[9 * piece + 3 * k + 1] = y;
            corners[9 * piece + 3 * k + 2] = z;
        }
        return piece;
    }

    private int next(int whole, double size) {
        if (count == facet.length) {
            facet = Arrays.copyOf(facet, 2 * count);
            half = Arrays.copyOf(half, 2 * count);
            area = Arrays.copyOf(area, 2 * count);
            corners = Arrays.copyOf(corners, 18 * count);
            weights = Arrays.copyOf(weights, 12 * count);
        }
        facet[count] = whole;
        area[count] = size;
        half[count] = NONE;
        return count++;
    }

    /** The first of the two halves of a piece; the other has the next number. */
    int halves(int piece) {
        if (half[piece] == NONE) {
            int first = next(facet[piece], area[piece] / 2);
            int second = next(facet[piece], area[piece] / 2);
            half[piece] = first;
            copy(corners, 9 * piece, 9 * first, 3);
            copy(weights, 6 * piece, 6 * first, 2);
            longestEdgeFirst(first);
            longestEdgeFirst(second);
        }
        return half[piece];
    }

    /** The halves (v0, m, v2) and (m, v1, v2) of (v0, v1, v2), where m is the middle of v0 and v1; the two lie side by side. */
    private static void copy(double[] of, int from, int to, int width) {
        for (int k = 0; k < width; k++) {
            double middle = (of[from + k] + of[from + width + k]) / 2;
            of[to + k] = of[from + k];
            of[to + width + k] = middle;
            of[to + 2 * width + k] = of[from + 2 * width + k];
            of[to + 3 * width + k] = middle;
            of[to + 4 * width + k] = of[from + width + k];
            of[to + 5 * width + k] = of[from + 2 * width + k];
        }
    }

    private void longestEdgeFirst(int piece) {
        double first = edge(piece, 0);
        double second = edge(piece, 1);
        double third = edge(piece, 2);
        int turns = first >= second && first >= third ? 0 : second >= third ? 1 : 2;
        for (int i = 0; i < turns; i++) {
            turn(corners, 9 * piece, 3);
            turn(weights, 6 * piece, 2);
        }
    }

    private static void turn(double[] of, int at, int width) {
        for (int k = 0; k < width; k++) {
            double first = of[at + k];
            of[at + k] = of[at + width + k];
            of[at + width + k] = of[at + 2 * width + k];
            of[at + 2 * width + k] = first;
        }
    }

    /** Square of the length of an edge, mm2. */
    private double edge(int piece, int which) {
        double squared = 0;
        for (int axis = 0; axis < 3; axis++) {
            double apart = corner(piece, which, axis) - corner(piece, (which + 1) % 3, axis);
            squared += apart * apart;
        }
        return squared;
    }

    /** Square of the longest edge, mm2; 0 of a point. */
    double extent(int piece) {
        return edge(piece, 0);
    }

    /** The facet, or -1 of a point. */
    int facet(int piece) {
        return facet[piece];
    }

    /** Area, mm2; 1 of a point. */
    double area(int piece) {
        return area[piece];
    }

    /** A coordinate of a corner, mm. */
    double corner(int piece, int corner, int axis) {
        return corners[9 * piece + 3 * corner + axis];
    }

    /** Weight of the facet's first ({@code which} 0) or second (1) corner at a corner of a piece. */
    double weight(int piece, int corner, int which) {
        return weights[6 * piece + 2 * corner + which];
    }
}
