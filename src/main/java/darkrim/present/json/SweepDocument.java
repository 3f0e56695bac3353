package darkrim.present.json;

import darkrim.layout.Requirement;
import darkrim.study.RequirementFigure;
import darkrim.study.sweep.RequirementLine;
import darkrim.study.sweep.SweepPoint;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.SweepTable;
import darkrim.study.sweep.Turn;
import darkrim.study.sweep.Variation;
import darkrim.verdict.Plan;
import darkrim.verdict.Verdict;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The whole of a sweep. The same study gives the same document, whenever and wherever it runs. */
record SweepDocument(
        int formatVersion,
        String study,
        ProgramDocument program,
        ResultDocument.LayoutDocument layout,
        long seed,
        double confidence,
        long samplesPerNumber,
        List<VariationDocument> varied,
        Integer spread,
        Double refinedTo,
        boolean stopped,
        int plannedPoints,
        List<RequirementHead> requirements,
        List<PointDocument> points,
        List<TurnDocument> turns,
        List<String> idleDimensions,
        List<ResultDocument.Warning> warnings) {
    private static final int FORMAT_VERSION = 1;

    static SweepDocument of(SweepResult result, String version) {
        return new SweepDocument(
                FORMAT_VERSION,
                "sweep",
                ProgramDocument.of(version),
                ResultDocument.LayoutDocument.of(result.layout()),
                result.seed(),
                result.layout().sampling().confidence(),
                Plan.samplesOf(result.settings().points().batches()),
                result.variations().stream().map(VariationDocument::of).toList(),
                result.settings().design().spread().orElse(null),
                result.settings().design().refine().orElse(null),
                result.stopped(),
                result.planned(),
                result.layout().requirements().stream().map(RequirementHead::of).toList(),
                result.points().stream().map(PointDocument::of).toList(),
                result.turns().stream().map(TurnDocument::of).toList(),
                result.idle(),
                result.warnings().stream().map(ResultDocument.Warning::of).toList());
    }

    private static String word(Optional<Verdict> verdict) {
        return verdict.map(RequirementDocument::word).orElse(null);
    }

    /** What a dimension was to be: the values of a list, or a range with or without a step; mm, degrees or plain. */
    record VariationDocument(
            String dimension, String unit, List<BigDecimal> values, BigDecimal from, BigDecimal to, BigDecimal step) {
        private static VariationDocument of(Variation variation) {
            boolean list = variation.isList();
            return new VariationDocument(
                    variation.dimension(),
                    variation.unit().isEmpty() ? "1" : variation.unit(),
                    list ? variation.listed() : null,
                    list ? null : variation.from(),
                    list ? null : variation.to(),
                    list || variation.isOpen() ? null : variation.step());
        }
    }

    /** What a requirement asks, and what its value and margin are measured in. */
    record RequirementHead(String name, RequirementDocument.Condition condition, String unit, String marginUnit) {
        private static RequirementHead of(Requirement requirement) {
            return new RequirementHead(
                    requirement.name(),
                    RequirementDocument.Condition.of(requirement.condition()),
                    SweepTable.unit(requirement),
                    SweepTable.marginUnit(requirement));
        }
    }

    /** One point. */
    record PointDocument(
            int number,
            Map<String, Double> chosen,
            String verdict,
            String impossibleBecause,
            String warnings,
            Integer comparedWith,
            List<LineDocument> requirements) {
        private static PointDocument of(SweepPoint point) {
            return new PointDocument(
                    point.number(),
                    point.chosen(),
                    word(point.verdict()),
                    point.impossible().isEmpty() ? null : point.impossible(),
                    point.warnings().isEmpty() ? null : point.warnings(),
                    point.comparedWith().orElse(null),
                    point.lines().stream().map(LineDocument::of).toList());
        }
    }

    /** One requirement at one point; what is not known is null. */
    record LineDocument(
            String name,
            String verdict,
            Double value,
            Double standardError,
            Double atLeast,
            Double atMost,
            double limit,
            Double margin,
            boolean marginIsAtLeast,
            String worstSurface,
            Double change,
            Double changeStandardError,
            boolean changeIsSignificant) {
        private static LineDocument of(RequirementLine line) {
            RequirementFigure figure = line.figure();
            return new LineDocument(
                    figure.requirement(),
                    RequirementDocument.word(figure.verdict()),
                    EstimateDocument.finite(figure.value()),
                    EstimateDocument.finite(figure.standardError()),
                    EstimateDocument.finite(figure.lower()),
                    EstimateDocument.finite(figure.upper()),
                    figure.limit(),
                    EstimateDocument.finite(figure.margin()),
                    figure.marginAtLeast(),
                    figure.worst(),
                    EstimateDocument.finite(line.change()),
                    EstimateDocument.finite(line.changeError()),
                    line.significant());
        }
    }

    /** Where a requirement, or with no name the layout itself, changes sides along the last dimension. */
    record TurnDocument(
            String requirement, Map<String, Double> others, double from, double to, String before, String after) {
        private static TurnDocument of(Turn turn) {
            return new TurnDocument(
                    turn.requirement().isEmpty() ? null : turn.requirement(),
                    turn.others(),
                    turn.from(),
                    turn.to(),
                    word(turn.before()),
                    word(turn.after()));
        }
    }
}
