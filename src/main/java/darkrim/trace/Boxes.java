package darkrim.trace;

/**
 * Boxes with faces square to the axes, six borders each in flat arrays: low x, y, z, high x, y, z, in steps of a {@link BoxGrid}.
 */
final class Boxes {
    private static final int NOTHING = 1 << 28;

    private Boxes() {}

    /** Lets box {@code at} of an array take in box {@code byAt} of another; both count in borders. */
    static void grow(int[] array, int at, int[] by, int byAt) {
        array[at] = Math.min(array[at], by[byAt]);
        array[at + 1] = Math.min(array[at + 1], by[byAt + 1]);
        array[at + 2] = Math.min(array[at + 2], by[byAt + 2]);
        array[at + 3] = Math.max(array[at + 3], by[byAt + 3]);
        array[at + 4] = Math.max(array[at + 4], by[byAt + 4]);
        array[at + 5] = Math.max(array[at + 5], by[byAt + 5]);
    }

    /** Makes the box at a place of an array one that holds nothing. */
    static void empty(int[] array, int at) {
        for (int k = 0; k < 3; k++) {
            array[at + k] = NOTHING;
            array[at + 3 + k] = -NOTHING;
        }
    }

    /** Half the surface of the box at a place of an array, square steps; 0 for one that holds nothing. */
    static double halfArea(int[] array, int at) {
        double x = array[at + 3] - array[at];
        double y = array[at + 4] - array[at + 1];
        double z = array[at + 5] - array[at + 2];
        return x < 0 ? 0 : x * y + y * z + z * x;
    }
}
