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
 * @param upTo reflected light of the orders from 1 to each, from 0 (none); their errors are not those of a sum of independent numbers
 * @param by reflected light by path; as many samples as the orders have
 */
public record PathTally(List<Estimate> orders, List<Estimate> upTo, SortedMap<ReflectionPath, Estimate> by) {
    /** Copies the collections. */
    public PathTally {
        orders = List.copyOf(orders);
        upTo = List.copyOf(upTo);
        by = Collections.unmodifiableSortedMap(new TreeMap<>(by));
    }

    /** Nothing measured yet, up to a number of reflections. */
    public static PathTally none(int most) {
        List<Estimate> none = Collections.nCopies(most + 1, Estimate.none(Double.POSITIVE_INFINITY));
        return new PathTally(none, none, new TreeMap<>());
    }

    /** Number of samples. */
    public long samples() {
        return orders.get(0).samples();
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
        return new PathTally(both(orders, other.orders), both(upTo, other.upTo), both);
    }

    private static List<Estimate> both(List<Estimate> mine, List<Estimate> theirs) {
        return IntStream.range(0, mine.size())
                .mapToObj(i -> mine.get(i).and(theirs.get(i)))
                .toList();
    }

    /** Reflected light of all orders that were measured. */
    public Estimate reflected() {
        return upTo.get(upTo.size() - 1);
    }

    /** What came by a path: of one that was never met, as many zeros as there are samples. */
    public Estimate of(ReflectionPath path) {
        Estimate known = by.get(path);
        return known != null ? known : new Estimate(samples(), 0, 0, Double.POSITIVE_INFINITY);
    }
}
