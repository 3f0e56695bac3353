package darkrim.light;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Where the light of one star goes, as shares of the flux that comes through the pupil. Immutable.
 *
 * @param direct share that arrives straight on each receiver, in their order
 * @param once share that arrives on each receiver after one reflection
 * @param total share that arrives on all of them together after one reflection
 * @param by the same by what reflected it, of all samples
 */
public record StarTally(List<Estimate> direct, List<Estimate> once, Estimate total, SortedMap<Reflector, Estimate> by) {
    /** Copies the collections. */
    public StarTally {
        direct = List.copyOf(direct);
        once = List.copyOf(once);
        by = Collections.unmodifiableSortedMap(new TreeMap<>(by));
    }

    /** Nothing measured yet on a number of receivers. */
    public static StarTally none(int receivers) {
        List<Estimate> each = Collections.nCopies(receivers, Estimate.none(1));
        return new StarTally(each, each, Estimate.none(1), new TreeMap<>());
    }

    /** Number of samples. */
    public long samples() {
        return total.samples();
    }

    /** Both together; independent samples of the same star and receivers. */
    public StarTally and(StarTally other) {
        TreeMap<Reflector, Estimate> both = new TreeMap<>();
        List<Reflector> keys = new ArrayList<>(by.keySet());
        keys.addAll(other.by.keySet());
        for (Reflector key : keys) {
            both.computeIfAbsent(key, any -> share(any).and(other.share(any)));
        }
        return new StarTally(and(direct, other.direct), and(once, other.once), total.and(other.total), both);
    }

    /** What came by a reflector; as many zeros as there are samples where nothing did. */
    private Estimate share(Reflector key) {
        return by.getOrDefault(key, new Estimate(samples(), 0, 0, total.largest()));
    }

    private static List<Estimate> and(List<Estimate> one, List<Estimate> two) {
        return IntStream.range(0, one.size())
                .mapToObj(i -> one.get(i).and(two.get(i)))
                .toList();
    }
}
