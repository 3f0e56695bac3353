package darkrim.study.advice;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Values that come nearest to fulfilling all requirements, where none that do were found.
 *
 * @param values the dimensions that change, with their values in mm, degrees or plain
 * @param failing the requirements that do not hold there
 */
public record Nearest(Map<String, Double> values, List<String> failing) {
    /** Copies the collections, the map sorted by name. */
    public Nearest {
        values = Collections.unmodifiableMap(new TreeMap<>(values));
        failing = List.copyOf(failing);
    }
}
