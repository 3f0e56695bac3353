package darkrim.study.advice;

import darkrim.study.CheckResult;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * Values that fulfil all requirements, as a full check found.
 *
 * @param values the dimensions that change, with their values in mm, degrees or plain
 * @param scaledChange sum over the dimensions of change over scale, 1 mm or 1 deg
 * @param check the full check of the layout with these values
 */
public record Proposal(Map<String, Double> values, double scaledChange, CheckResult check) {
    /** Copies the map, sorted by name. */
    public Proposal {
        values = Collections.unmodifiableMap(new TreeMap<>(values));
    }
}
