package darkrim.study;

import java.io.Serializable;
import java.util.List;

/**
 * A value of one surface.
 *
 * @param value the value
 * @param batchMeans means of single batches of samples; empty where the value is exact
 */
public record SurfaceValue(double value, List<Double> batchMeans) implements Serializable {
    /** Copies the list. */
    public SurfaceValue {
        batchMeans = List.copyOf(batchMeans);
    }

    /** The mean of batches. */
    public static SurfaceValue mean(List<Double> batchMeans) {
        double sum = 0;
        for (double each : batchMeans) {
            sum += each;
        }
        return new SurfaceValue(sum / batchMeans.size(), batchMeans);
    }

    /** An exact value. */
    public static SurfaceValue exact(double value) {
        return new SurfaceValue(value, List.of());
    }

    /**
     * How much larger this value is than that of the same surface in another layout. Where both were sampled with the same random numbers, the
     * standard error is that of the mean of the differences batch by batch.
     */
    public Change changeFrom(SurfaceValue other) {
        double change = value - other.value;
        int mine = batchMeans.size();
        int theirs = other.batchMeans.size();
        if (mine == 0 && theirs == 0) {
            return new Change(change, 0, 0);
        }
        int count = Math.max(mine, theirs);
        if (count < 2 || (mine != 0 && theirs != 0 && mine != theirs)) {
            return new Change(change, Double.NaN, 0);
        }
        double squares = 0;
        for (int i = 0; i < count; i++) {
            double difference = at(i) - other.at(i) - change;
            squares += difference * difference;
        }
        return new Change(change, Math.sqrt(squares / ((double) count * (count - 1))), count - 1);
    }

    private double at(int batch) {
        return batchMeans.isEmpty() ? value : batchMeans.get(batch);
    }
}
