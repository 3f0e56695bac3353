package darkrim.light;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * What was measured at a receiver, apart by the number of reflections and by path. Relative irradiance throughout; no largest sample is
 * stated. Immutable.
 *
 * @param orders light by the number of reflections, from 0 (direct light)
 * @param reflected light of all orders from 1 on, those not measured left out
 * @param by reflected light by path; as many samples as the orders have
 */
public record PathTally(List<Estimate> orders, Estimate reflected, SortedMap<ReflectionPath, Estimate> by) {
    /** Copies the collections. */
    public PathTally {
        orders = List.copyOf(orders);
        by = Collections.unmodifiableSortedMap(new TreeMap<>(by));
    }

    /** Nothing measured yet, up to a number of reflections. */
    public static PathTally none(int most) {
        Estimate none = Estimate.none(Double.POSITIVE_INFINITY);
        return new PathTally(Collections.nCopies(most + 1, none), none, new TreeMap<>());
    }

    /** Number of samples. */
    public long samples() {
        return reflected.samples();
    }

    /** Both together; independent samples of the same receiver and as many orders. */
    public PathTally and(PathTally other) {
        if (other.samples() == 0) {
            return this;
        }
        if (samples() == 0) {
            return other;
        }
        SortedMap<ReflectionPath, Estimate> both = new TreeMap<>();
        for (Map.Entry<ReflectionPath, Estimate> mine : by.entrySet()) {
            both.put(mine.getKey(), mine.getValue().and(other.of(mine.getKey())));
        }
        for (Map.Entry<ReflectionPath, Estimate> theirs : other.by.entrySet()) {
            both.computeIfAbsent(theirs.getKey(), key -> of(key).and(theirs.getValue()));
        }
        return new PathTally(
                IntStream.range(0, orders.size())
                        .mapToObj(i -> orders.get(i).and(other.orders.get(i)))
                        .toList(),
                reflected.and(other.reflected),
                both);
    }

    /** What came by a path: of one that was never met, as many zeros as there are samples. */
    public Estimate of(ReflectionPath path) {
        Estimate known = by.get(path);
        return known != null ? known : new Estimate(samples(), 0, 0, Double.POSITIVE_INFINITY);
    }
}
