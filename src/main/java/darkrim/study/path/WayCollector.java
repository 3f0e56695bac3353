package darkrim.study.path;

import darkrim.light.PathListener;
import darkrim.light.ReflectionPath;
import darkrim.light.TracedPath;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/** Collects the ways of some paths while a batch is measured again. Mutable, for one thread. */
final class WayCollector implements PathListener {
    private static final int UNKNOWN = 0;
    private static final int UNWANTED = -1;

    private final Map<ReflectionPath, WaySums> sums = new TreeMap<>();
    private final WaySums[] numbered;
    private final Map<ReflectionPath, Integer> numbers = new TreeMap<>();
    /** By the batch's number of a path: one more than the place among those wanted. */
    private int[] places = new int[64];

    /**
     * @param wanted the paths whose ways are wanted
     * @param empty makes sums for one
     */
    WayCollector(Iterable<ReflectionPath> wanted, Function<ReflectionPath, WaySums> empty) {
        for (ReflectionPath path : wanted) {
            numbers.put(path, numbers.size());
            sums.put(path, empty.apply(path));
        }
        numbered = new WaySums[numbers.size()];
        numbers.forEach((path, number) -> numbered[number] = sums.get(path));
    }

    @Override
    public void found(TracedPath way, int node, double value) {
        if (node >= places.length) {
            places = Arrays.copyOf(places, 2 * node);
        }
        if (places[node] == UNKNOWN) {
            Integer number = numbers.get(way.path());
            places[node] = number == null ? UNWANTED : number + 1;
        }
        if (places[node] != UNWANTED) {
            numbered[places[node] - 1].add(way, value);
        }
    }

    /** What was found of a path. */
    WaySums of(ReflectionPath path) {
        return sums.get(path);
    }

    /** Adds what another batch found of the same paths. */
    void add(WayCollector other) {
        sums.forEach((path, own) -> own.add(other.sums.get(path)));
    }

    /** Whether of every path so many ways were found. */
    boolean hasOfEach(long ways) {
        return sums.values().stream().allMatch(each -> each.ways() >= ways);
    }
}
