package darkrim.study.live;

import darkrim.shadow.MarginGuess;
import darkrim.shadow.Margins;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Remembers the least margins of the last two positions and guesses that of the next: on the line through both where one dimension is
 * dragged on, else what it was. Safe for use by many threads.
 */
final class MarginMemory {
    private final Map<String, Known> last = new HashMap<>();
    private final Map<String, Known> before = new HashMap<>();

    private record Known(Map<String, Double> chosen, String surface, double millimetres) {}

    /**
     * Where to begin.
     *
     * @param margin which margin
     * @param chosen the values of all dimensions
     */
    synchronized Optional<MarginGuess> guess(String margin, Map<String, Double> chosen) {
        return Optional.ofNullable(last.get(margin)).map(known -> new MarginGuess(known.surface, at(margin, chosen)));
    }

    /** What a margin is likely to be, mm. */
    synchronized OptionalDouble expected(String margin, Map<String, Double> chosen) {
        return last.containsKey(margin) ? OptionalDouble.of(at(margin, chosen)) : OptionalDouble.empty();
    }

    /** Remembers a margin; nothing if none was found. */
    synchronized void put(String margin, Map<String, Double> chosen, Optional<Margins.Least> least) {
        Known old = last.remove(margin);
        before.remove(margin);
        if (least.isPresent()) {
            if (old != null) {
                before.put(margin, old);
            }
            last.put(
                    margin,
                    new Known(
                            Map.copyOf(chosen),
                            least.get().surface().name(),
                            least.get().margin().millimetres()));
        }
    }

    private double at(String margin, Map<String, Double> chosen) {
        Known one = last.get(margin);
        Known other = before.get(margin);
        if (other == null || !other.surface.equals(one.surface)) {
            return one.millimetres;
        }
        Set<String> moved = differences(one.chosen, chosen);
        if (moved.size() != 1 || !differences(other.chosen, one.chosen).equals(moved)) {
            return one.millimetres;
        }
        String name = moved.iterator().next();
        double slope = (one.millimetres - other.millimetres) / (one.chosen.get(name) - other.chosen.get(name));
        return one.millimetres + slope * (chosen.get(name) - one.chosen.get(name));
    }

    private static Set<String> differences(Map<String, Double> one, Map<String, Double> other) {
        Set<String> names = new HashSet<>();
        one.forEach((name, value) -> {
            if (!value.equals(other.get(name))) {
                names.add(name);
            }
        });
        return names;
    }
}
