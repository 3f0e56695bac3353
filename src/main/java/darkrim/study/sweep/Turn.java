package darkrim.study.sweep;

import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Where a requirement changes sides between two neighbouring points along the last dimension.
 *
 * @param requirement name of the requirement; empty where a layout becomes possible or impossible
 * @param others values of the other dimensions
 * @param from value of the last dimension at the lower point
 * @param to value at the upper point
 * @param before verdict at the lower point; empty where no such layout exists
 * @param after verdict at the upper point; empty where no such layout exists
 */
public record Turn(
        String requirement,
        SortedMap<String, Double> others,
        double from,
        double to,
        Optional<Verdict> before,
        Optional<Verdict> after) {

    /** All turns between neighbours in a row of points, ascending along a dimension. */
    static List<Turn> in(List<SweepPoint> row, String dimension, List<String> requirements) {
        List<Turn> turns = new ArrayList<>();
        for (int i = 1; i < row.size(); i++) {
            SweepPoint lower = row.get(i - 1);
            SweepPoint upper = row.get(i);
            if (lower.verdict().isEmpty() != upper.verdict().isEmpty()) {
                turns.add(of("", lower, upper, dimension, lower.verdict(), upper.verdict()));
            }
            for (String requirement : requirements) {
                Optional<Verdict> before = lower.verdict(requirement);
                Optional<Verdict> after = upper.verdict(requirement);
                if (before.isPresent() && after.isPresent() && !before.equals(after)) {
                    turns.add(of(requirement, lower, upper, dimension, before, after));
                }
            }
        }
        return turns;
    }

    private static Turn of(
            String requirement,
            SweepPoint lower,
            SweepPoint upper,
            String dimension,
            Optional<Verdict> before,
            Optional<Verdict> after) {
        SortedMap<String, Double> others = new TreeMap<>(lower.chosen());
        others.remove(dimension);
        return new Turn(
                requirement,
                others,
                lower.chosen().get(dimension),
                upper.chosen().get(dimension),
                before,
                after);
    }
}
