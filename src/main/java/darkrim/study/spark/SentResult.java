package darkrim.study.spark;

import darkrim.study.MarginUnit;
import darkrim.study.PointResult;
import darkrim.study.RequirementFigure;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What comes back from an executor for a point: its result, or how the program broke there. A task that threw would end the whole study. */
record SentResult(
        Map<String, Double> chosen,
        Verdict verdict,
        List<RequirementFigure> figures,
        List<SentMargin> margins,
        String warnings,
        String impossible,
        RuntimeException broken)
        implements Serializable {
    /** A margin without what cannot travel. */
    private record SentMargin(
            String requirement,
            Verdict verdict,
            double margin,
            double standardError,
            MarginUnit unit,
            boolean capped,
            String where,
            String setBy,
            String impossible)
            implements Serializable {
        private static SentMargin of(RequirementMargin margin) {
            return new SentMargin(
                    margin.requirement(),
                    margin.verdict().orElse(null),
                    margin.margin(),
                    margin.standardError(),
                    margin.unit(),
                    margin.capped(),
                    margin.where(),
                    margin.setBy(),
                    margin.impossible());
        }

        private RequirementMargin unpacked() {
            return new RequirementMargin(
                    requirement,
                    Optional.ofNullable(verdict),
                    margin,
                    standardError,
                    unit,
                    capped,
                    where,
                    setBy,
                    impossible);
        }
    }

    /** Packs a result. */
    static SentResult of(PointResult result) {
        return new SentResult(
                new TreeMap<>(result.chosen()),
                result.verdict().orElse(null),
                result.figures(),
                result.margins().stream().map(SentMargin::of).toList(),
                result.warnings(),
                result.impossible(),
                null);
    }

    /** Packs a mistake of the program. */
    static SentResult broken(RuntimeException broken) {
        return new SentResult(Map.of(), null, List.of(), List.of(), "", "", broken);
    }

    /** The result; a mistake of the program is thrown on, as if it had happened here. */
    PointResult unpacked() {
        if (broken != null) {
            throw broken;
        }
        return new PointResult(
                chosen,
                Optional.ofNullable(verdict),
                figures,
                margins.stream().map(SentMargin::unpacked).toList(),
                warnings,
                impossible);
    }
}
