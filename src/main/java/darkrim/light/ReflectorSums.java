package darkrim.light;

import java.util.Arrays;
import java.util.SortedMap;
import java.util.TreeMap;

/** Sums of what came by each reflector, in flat arrays. Mutable, one for each batch. */
final class ReflectorSums {
    private final double[] sum;
    private final double[] squares;
    private final double[] cosines;
    private int[] touched = new int[16];
    private int touchedCount;

    ReflectorSums(int surfaces) {
        sum = new double[Reflector.Part.SLOTS * surfaces];
        squares = new double[Reflector.Part.SLOTS * surfaces];
        cosines = new double[Reflector.Part.SLOTS * surfaces];
    }

    /**
     * Adds what one sample got by a reflector; nothing for a value of 0.
     *
     * @param cosine cosine of the angle of incidence
     */
    void add(int surface, Reflector.Part part, double value, double cosine) {
        if (!(value > 0)) {
            return;
        }
        int at = Reflector.Part.SLOTS * surface + part.slot();
        if (sum[at] == 0) {
            if (touchedCount == touched.length) {
                touched = Arrays.copyOf(touched, 2 * touchedCount);
            }
            touched[touchedCount++] = at;
        }
        sum[at] += value;
        squares[at] += value * value;
        cosines[at] += value * cosine;
    }

    /** Means over all samples, the zeros among them included. */
    SortedMap<Reflector, Estimate> estimates(long samples, double largest) {
        SortedMap<Reflector, Estimate> by = new TreeMap<>();
        for (int i = 0; i < touchedCount; i++) {
            int at = touched[i];
            by.put(reflector(at), Estimate.ofSums(samples, sum[at], squares[at], largest));
        }
        return by;
    }

    /** Mean cosines of the angle of incidence, weighted by what came. */
    SortedMap<Reflector, Double> incidences() {
        SortedMap<Reflector, Double> by = new TreeMap<>();
        for (int i = 0; i < touchedCount; i++) {
            int at = touched[i];
            by.put(reflector(at), cosines[at] / sum[at]);
        }
        return by;
    }

    private static Reflector reflector(int at) {
        return new Reflector(at / Reflector.Part.SLOTS, Reflector.Part.at(at % Reflector.Part.SLOTS));
    }
}
