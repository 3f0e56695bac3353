package darkrim.study;

import darkrim.verdict.Verdict;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a layout is found to be when some of its dimensions take other values.
 *
 * @param chosen the values by name, in mm, degrees or plain
 * @param verdict what can be said of all requirements together, or of the one that was asked for; empty where no such layout exists
 * @param figures a line for each requirement, in the order of the layout; empty where no such layout exists or one margin was asked for
 * @param margins the margin of the one requirement that was asked for, or of all of them if margins were looked for
 * @param warnings what deserves attention in this layout and is not said of the layout as written already; otherwise empty
 * @param impossible why no such layout exists; otherwise empty
 */
public record PointResult(
        Map<String, Double> chosen,
        Optional<Verdict> verdict,
        List<RequirementFigure> figures,
        List<RequirementMargin> margins,
        String warnings,
        String impossible) {
    /** Copies the collections, sorted by name. */
    public PointResult {
        chosen = Collections.unmodifiableMap(new TreeMap<>(chosen));
        figures = List.copyOf(figures);
        margins = List.copyOf(margins);
    }

    /** The same without what is known of single surfaces. */
    public PointResult withoutSamples() {
        return new PointResult(
                chosen,
                verdict,
                figures.stream().map(RequirementFigure::withoutSamples).toList(),
                margins,
                warnings,
                impossible);
    }

    /** The figures of a requirement. */
    public Optional<RequirementFigure> figure(String requirement) {
        return figures.stream()
                .filter(figure -> figure.requirement().equals(requirement))
                .findFirst();
    }
}
