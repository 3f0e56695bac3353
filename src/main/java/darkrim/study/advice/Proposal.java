package darkrim.study.advice;

import darkrim.study.CheckResult;
import darkrim.study.RequirementMargin;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Values with which all requirements hold in the short look of the search, and what a full check says of them.
 *
 * @param values the dimensions that change, with their values in mm, degrees or plain
 * @param scaledChange sum over the dimensions of change over scale
 * @param check the full check of the layout with these values
 * @param margins the margin of each requirement with these values, in the order of the layout
 */
public record Proposal(
        Map<String, Double> values, double scaledChange, CheckResult check, List<RequirementMargin> margins) {
    /** Copies the collections, the map sorted by name. */
    public Proposal {
        values = Collections.unmodifiableMap(new TreeMap<>(values));
        margins = List.copyOf(margins);
    }
}
