package darkrim.view.parts;

import java.util.Arrays;

/** Numbers corners so that corners with the same coordinates get the same number. */
final class CornerNumbers {
    private static final int EMPTY = -1;

    private final double[] corners;
    private final int[] slots;
    private final int[] numberOf;
    private int count;

    /**
     * @param corners three coordinates a corner, mm
     */
    CornerNumbers(double[] corners) {
        this.corners = corners;
        int total = corners.length / 3;
        slots = new int[Math.max(16, Integer.highestOneBit(Math.max(1, total)) * 4)];
        Arrays.fill(slots, EMPTY);
        numberOf = new int[total];
        for (int corner = 0; corner < total; corner++) {
            numberOf[corner] = number(corner);
        }
    }

    /** The number of a corner. */
    int of(int corner) {
        return numberOf[corner];
    }

    private int number(int corner) {
        int mask = slots.length - 1;
        int slot = hash(corner) & mask;
        while (slots[slot] != EMPTY) {
            if (same(slots[slot], corner)) {
                return numberOf[slots[slot]];
            }
            slot = (slot + 1) & mask;
        }
        slots[slot] = corner;
        return count++;
    }

    private boolean same(int a, int b) {
        return corners[3 * a] == corners[3 * b]
                && corners[3 * a + 1] == corners[3 * b + 1]
                && corners[3 * a + 2] == corners[3 * b + 2];
    }

    private int hash(int corner) {
        long bits = 0;
        for (int axis = 0; axis < 3; axis++) {
            // Adding 0 makes -0.0 the same as 0.0.
            bits = bits * 0x9E3779B97F4A7C15L + Double.doubleToLongBits(corners[3 * corner + axis] + 0.0);
            bits ^= bits >>> 29;
        }
        bits *= 0xBF58476D1CE4E5B9L;
        return (int) (bits >>> 32);
    }
}
