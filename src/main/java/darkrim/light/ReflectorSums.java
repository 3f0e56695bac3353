package darkrim.light;

import java.util.Arrays;
import java.util.SortedMap;
import java.util.TreeMap;

/** Sums of what came by each reflector, in flat arrays. Mutable, one for each batch. */
final class ReflectorSums {
    private final double[] sum;
    private final double[] squares;
    private int[] touched = new int[16];
    private int touchedCount;

    ReflectorSums(int surfaces) {
        sum = new double[2 * surfaces];
        squares = new double[2 * surfaces];
    }

    /** Adds what one sample got by a reflector; nothing for a value of 0. */
    void add(int surface, boolean mirror, double value) {
        if (!(value > 0)) {
            return;
        }
        int at = 2 * surface + (mirror ? 1 : 0);
        if (sum[at] == 0) {
            if (touchedCount == touched.length) {
                touched = Arrays.copyOf(touched, 2 * touchedCount);
            }
            touched[touchedCount++] = at;
        }
        sum[at] += value;
        squares[at] += value * value;
    }

    /** Means over all samples, the zeros among them included. */
    SortedMap<Reflector, Estimate> estimates(long samples, double largest) {
        SortedMap<Reflector, Estimate> by = new TreeMap<>();
        for (int i = 0; i < touchedCount; i++) {
            int at = touched[i];
            double mean = sum[at] / samples;
            double variance = samples < 2 ? 0 : Math.max(0, squares[at] - samples * mean * mean) / (samples - 1);
            by.put(new Reflector(at / 2, at % 2 == 1), new Estimate(samples, mean, variance, largest));
        }
        return by;
    }
}
