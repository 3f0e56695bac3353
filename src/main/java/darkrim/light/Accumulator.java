package darkrim.light;

import darkrim.sampling.SamplePoints;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Gathers the samples of one number. Mutable, one for each thread and number.
 *
 * <p>Independent samples: Welford's update. Samples that depend on each other in groups: the same of the means of the groups. Samples that come in pairs
 * of equal law: the variance is that of the pairs, sum (a - b)^2 / (n - 1), for the pairs may have means of their own.
 */
final class Accumulator {
    private final int together;
    private final boolean paired;
    private long samples;
    private double mean;
    private double squares;
    private double before;
    private double group;
    private double apart;

    Accumulator() {
        this(1, false);
    }

    private Accumulator(int together, boolean paired) {
        this.together = together;
        this.paired = paired;
    }

    /** For samples drawn from some points, in turn. */
    static Accumulator of(SamplePoints points) {
        return new Accumulator(points.together(), points.isPaired());
    }

    /** So many, each for independent samples. */
    static Accumulator[] many(int count) {
        return IntStream.range(0, count).mapToObj(i -> new Accumulator()).toArray(Accumulator[]::new);
    }

    /** What several gathered, of which no sample can be larger than this. */
    static List<Estimate> estimates(Accumulator[] sums, double largest) {
        return Arrays.stream(sums).map(each -> each.estimate(largest)).toList();
    }

    void add(double value) {
        samples++;
        if (together == 1) {
            update(value, samples);
            if (paired && samples % 2 == 0) {
                apart += (value - before) * (value - before);
            }
            before = value;
            return;
        }
        group += value;
        if (samples % together == 0) {
            update(group / together, samples / together);
            group = 0;
        }
    }

    private void update(double value, long count) {
        double off = value - mean;
        mean += off / count;
        squares += off * (value - mean);
    }

    Estimate estimate(double largest) {
        long groups = samples / together;
        double variance = groups < 2 ? 0 : together * (paired ? apart : squares) / (groups - 1);
        return new Estimate(groups * together, mean, variance, largest, together);
    }
}
