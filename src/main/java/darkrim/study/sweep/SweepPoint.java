package darkrim.study.sweep;

import darkrim.study.PointResult;
import darkrim.study.RequirementFigure;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One point of a sweep.
 *
 * @param number its number, from 1, in the order of the work
 * @param chosen values of the varied dimensions by name, in mm, degrees or plain
 * @param comparedWith number of the point that it is compared with; empty where there is none
 * @param verdict what can be said of all requirements together; empty where no such layout exists
 * @param lines a line for each requirement, in the order of the layout; empty where no such layout exists
 * @param warnings what deserves attention in this layout and is not said of the layout as written already; otherwise empty
 * @param impossible why no such layout exists; otherwise empty
 */
public record SweepPoint(
        int number,
        SortedMap<String, Double> chosen,
        Optional<Integer> comparedWith,
        Optional<Verdict> verdict,
        List<RequirementLine> lines,
        String warnings,
        String impossible) {
    /** Copies the collections. */
    public SweepPoint {
        chosen = Collections.unmodifiableSortedMap(new TreeMap<>(chosen));
        lines = List.copyOf(lines);
    }

    /** A point, compared with another where there is one that exists. */
    static SweepPoint of(int number, PointResult result, Optional<Numbered> other, double confidence) {
        Optional<Numbered> reference = other.filter(
                one -> one.result().verdict().isPresent() && result.verdict().isPresent());
        List<RequirementLine> lines = new ArrayList<>();
        for (RequirementFigure figure : result.figures()) {
            lines.add(reference
                    .flatMap(one -> one.result().figure(figure.requirement()))
                    .map(before -> RequirementLine.of(figure, figure.changeFrom(before), confidence))
                    .orElseGet(() -> RequirementLine.alone(figure)));
        }
        return new SweepPoint(
                number,
                new TreeMap<>(result.chosen()),
                reference.map(Numbered::number),
                result.verdict(),
                lines,
                result.warnings(),
                result.impossible());
    }

    /** A result with the number of its point. */
    record Numbered(int number, PointResult result) {}

    /** The line of a requirement. */
    public Optional<RequirementLine> line(String requirement) {
        return lines.stream()
                .filter(line -> line.figure().requirement().equals(requirement))
                .findFirst();
    }

    /** The verdict on a requirement; empty where no such layout exists. */
    public Optional<Verdict> verdict(String requirement) {
        return line(requirement).map(line -> line.figure().verdict());
    }
}
