package darkrim.study.advice;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What may be changed, and how hard to work.
 *
 * @param keep names of dimensions that stay
 * @param ranges ranges of dimensions instead of those that are tried otherwise
 * @param threads number of threads; never changes a result
 * @param seed seed instead of the layout's
 * @param mostSamples budget of each full check instead of the layout's
 */
public record AdviceSettings(
        Set<String> keep, Map<String, Bounds> ranges, int threads, Optional<Long> seed, Optional<Long> mostSamples) {
    /** Copies the collections, sorted by name: of several names that are wrong the same one is told every time. */
    public AdviceSettings {
        keep = Collections.unmodifiableSet(new TreeSet<>(keep));
        ranges = Collections.unmodifiableMap(new TreeMap<>(ranges));
    }

    /**
     * A range of values.
     *
     * @param least least value, in mm, degrees or plain
     * @param most greatest value
     */
    public record Bounds(double least, double most) {}
}
