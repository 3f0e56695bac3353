package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementFigure;
import darkrim.study.sweep.RequirementLine;
import darkrim.study.sweep.SweepPoint;
import darkrim.verdict.Verdict;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Which requirement of a layout is nearest to failing, in words: of those that fail, where any does; else of those that are undecided; else of all.
 *
 * @param requirements what the layout asks
 * @param named whether a requirement is told by its name, or by its number in brackets
 */
record NearestToFailing(List<Requirement> requirements, boolean named) {
    /** Where there is no such layout, or nothing is known. */
    static final String NONE = "-";

    /** The least margin in mm; where there is none, the limit that is nearest. */
    String of(SweepPoint point) {
        List<RequirementLine> failing = with(Verdict.FAIL, point);
        if (!failing.isEmpty()) {
            return leastDistance(failing)
                    .filter(line -> line.figure().margin() < 0)
                    .map(this::distance)
                    .orElseGet(() -> "fails: " + places(failing));
        }
        List<RequirementLine> open = with(Verdict.UNDECIDED, point);
        List<RequirementLine> unknown = open.stream()
                .filter(line -> Double.isNaN(line.figure().margin()))
                .toList();
        if (!unknown.isEmpty()) {
            // The margin of what passes is not how near the layout is to failing.
            return "undecided: " + places(unknown);
        }
        if (!open.isEmpty()) {
            return leastShare(open)
                    .or(() -> leastDistance(open).map(this::distance))
                    .orElse(NONE);
        }
        // Of a pupil of which less than the whole is asked for a margin says nothing of how near it is to failing.
        return leastDistance(point.lines().stream()
                        .filter(line -> line.figure().margin() >= 0)
                        .toList())
                .map(this::distance)
                .or(() -> leastShare(point.lines()))
                .or(() -> leastDistance(point.lines()).map(this::allowed))
                .orElse(NONE);
    }

    private static List<RequirementLine> with(Verdict verdict, SweepPoint point) {
        return point.lines().stream()
                .filter(line -> line.figure().verdict() == verdict)
                .toList();
    }

    private Optional<RequirementLine> leastDistance(List<RequirementLine> lines) {
        return lines.stream()
                .filter(line ->
                        isInMillimetres(line) && !Double.isNaN(line.figure().margin()))
                .min(Comparator.comparingDouble(line -> line.figure().margin()));
    }

    private Optional<String> leastShare(List<RequirementLine> lines) {
        return lines.stream()
                .filter(line -> !isInMillimetres(line)
                        && line.figure().limit() > 0
                        && !Double.isNaN(line.figure().margin()))
                .min(Comparator.comparingDouble(NearestToFailing::share))
                .map(line -> String.format(Locale.ROOT, "%.1f %% of the limit left ", 100 * share(line)) + place(line));
    }

    private String distance(RequirementLine line) {
        RequirementFigure figure = line.figure();
        boolean fromAbove = figure.marginAtLeast() && figure.margin() < 0;
        String number = fromAbove ? Figures.marginAtMost(figure.margin()) : Figures.margin(figure.margin());
        return (fromAbove ? "<= " : figure.marginAtLeast() ? ">= " : "") + number + " mm " + place(line);
    }

    private String allowed(RequirementLine line) {
        String margin = Figures.margin(line.figure().margin());
        return margin.substring(1) + " mm short of the whole pupil, allowed " + place(line);
    }

    private static double share(RequirementLine line) {
        return line.figure().margin() / line.figure().limit();
    }

    private boolean isInMillimetres(RequirementLine line) {
        return requirements.stream()
                .anyMatch(each -> each.name().equals(line.figure().requirement())
                        && MarginUnit.of(each) == MarginUnit.MILLIMETRES);
    }

    private String places(List<RequirementLine> lines) {
        return lines.stream().map(this::place).collect(Collectors.joining(", "));
    }

    private String place(RequirementLine line) {
        String name = line.figure().requirement();
        if (named) {
            return Printable.of(name);
        }
        List<String> names = requirements.stream().map(Requirement::name).toList();
        return "[" + (names.indexOf(name) + 1) + "]";
    }
}
