package darkrim.trace;

/**
 * Boxes with faces square to the axes, six bounds each in flat arrays: low x, y, z, high x, y, z, mm. An object holds the boxes of facets;
 * the static methods work on arrays of others.
 */
final class Boxes {
    private final double[] bounds;

    /**
     * The boxes of facets.
     *
     * @param corners nine coordinates a facet, mm
     * @param widening how far each box reaches beyond its facet, mm
     */
    Boxes(double[] corners, double widening) {
        bounds = new double[corners.length / 9 * 6];
        for (int f = 0; f < corners.length / 9; f++) {
            for (int k = 0; k < 3; k++) {
                double a = corners[9 * f + k];
                double b = corners[9 * f + 3 + k];
                double c = corners[9 * f + 6 + k];
                bounds[6 * f + k] = Math.min(a, Math.min(b, c)) - widening;
                bounds[6 * f + 3 + k] = Math.max(a, Math.max(b, c)) + widening;
            }
        }
    }

    /** The middle of a facet's box along an axis, mm. */
    double centre(int facet, int axis) {
        return 0.5 * (bounds[6 * facet + axis] + bounds[6 * facet + 3 + axis]);
    }

    /** Lets box {@code at} of an array take in the box of a facet. */
    void growBy(int facet, double[] array, int at) {
        grow(array, at, bounds, facet);
    }

    /** Lets box {@code at} of an array take in box {@code byAt} of another. */
    static void grow(double[] array, int at, double[] by, int byAt) {
        for (int k = 0; k < 3; k++) {
            array[6 * at + k] = Math.min(array[6 * at + k], by[6 * byAt + k]);
            array[6 * at + 3 + k] = Math.max(array[6 * at + 3 + k], by[6 * byAt + 3 + k]);
        }
    }

    /** Makes box {@code at} of an array one that holds nothing. */
    static void empty(double[] array, int at) {
        for (int k = 0; k < 3; k++) {
            array[6 * at + k] = Double.POSITIVE_INFINITY;
            array[6 * at + 3 + k] = Double.NEGATIVE_INFINITY;
        }
    }

    /** Half the surface of box {@code at} of an array, mm2; 0 for one that holds nothing. */
    static double halfArea(double[] array, int at) {
        double x = array[6 * at + 3] - array[6 * at];
        double y = array[6 * at + 4] - array[6 * at + 1];
        double z = array[6 * at + 5] - array[6 * at + 2];
        return x < 0 ? 0 : x * y + y * z + z * x;
    }
}
