package darkrim.present.table;

import static darkrim.present.table.DataTable.column;
import static darkrim.present.table.DataTable.row;

import darkrim.layout.Dimension;
import darkrim.layout.Requirement;
import darkrim.light.Estimate;
import darkrim.present.ConditionWords;
import darkrim.present.EvidenceWords;
import darkrim.study.CheckResult;
import darkrim.study.RequirementMargin;
import darkrim.study.advice.Advice;
import darkrim.study.advice.FreeDimension;
import darkrim.study.advice.SmallestChange;
import darkrim.study.comparison.Changed;
import darkrim.study.comparison.Comparison;
import darkrim.study.comparison.RequirementChange;
import darkrim.verdict.Evidence;
import darkrim.verdict.Judgement;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Tables of verdicts: of a check, of what a revision did, of what to change. */
public final class CheckTables {
    private CheckTables() {}

    /** A row for each surface, or cell, of each requirement. */
    public static DataTable check(CheckResult result, String version) {
        List<List<Object>> rows = new ArrayList<>();
        double confidence = result.effort().confidence();
        for (RequirementResult requirement : result.judgement().requirements()) {
            for (Outcome outcome : requirement.outcomes()) {
                Optional<LightMargin> margin = outcome.evidence().margin();
                Evidence.Sampled sampled = outcome.evidence() instanceof Evidence.Sampled found ? found : null;
                rows.add(row(
                        requirement.requirement().name(),
                        ConditionWords.brief(requirement.requirement().condition()),
                        word(requirement.verdict()),
                        outcome.where(),
                        word(outcome.verdict()),
                        outcome.value(),
                        error(result.judgement(), requirement.requirement().condition(), outcome),
                        sampled == null ? null : (Object) sampled.lower(),
                        sampled == null ? null : (Object) sampled.upper(),
                        margin.map(LightMargin::millimetres).orElse(null),
                        margin.map(found -> found.atLeast() || found.isUnexplained())
                                .orElse(null),
                        margin.map(LightMargin::setBy).orElse(null),
                        EvidenceWords.of(outcome, confidence)));
            }
        }
        Map<String, Object> about = DataTable.about(result.layout(), version);
        about.put("seed", result.effort().seed());
        about.put("verdict", word(result.judgement().verdict()));
        return new DataTable(
                "requirements",
                about,
                List.of(
                        column("requirement"),
                        column("limit"),
                        column("verdict of requirement"),
                        column("surface"),
                        column("verdict"),
                        column("value"),
                        column("standard error"),
                        column("lower"),
                        column("upper"),
                        column("margin", "mm"),
                        column("margin is at least"),
                        column("margin set by"),
                        column("evidence")),
                rows);
    }

    /**
     * The standard error of the value: of the samples that decide, or of those that stand beside a ray or a proof. Empty where the value is exact, and
     * where no sample met light though it is there: that they are all 0 tells nothing of their error.
     */
    private static Double error(Judgement judgement, Requirement.Condition condition, Outcome outcome) {
        if (outcome.evidence() instanceof Evidence.Sampled sampled) {
            return sampled.estimate().standardError();
        }
        boolean exact = outcome.evidence() instanceof Evidence.ProvedDark
                || outcome.isDarknessInDoubt()
                || outcome.evidence() instanceof Evidence.ExactShare
                || outcome.evidence() instanceof Evidence.Distance;
        if (exact) {
            return null;
        }
        Estimate beside = judgement.sampled(condition, outcome);
        return beside.mean() > 0 ? beside.standardError() : null;
    }

    /** A row for each requirement of either layout, then one for each dimension that differs. */
    public static DataTable comparison(Comparison comparison, String version) {
        List<List<Object>> rows = new ArrayList<>();
        for (RequirementChange each : comparison.requirements()) {
            rows.add(row(
                    "requirement",
                    each.name(),
                    verdict(each.before()),
                    verdict(each.after()),
                    each.before().map(RequirementMargin::margin).orElse(null),
                    each.after().map(RequirementMargin::margin).orElse(null),
                    each.before().map(CheckTables::bound).orElse(null),
                    each.after().map(CheckTables::bound).orElse(null),
                    each.after()
                            .or(each::before)
                            .map(margin -> margin.unit().words())
                            .orElse(""),
                    each.judgement().name().toLowerCase(Locale.ROOT).replace('_', ' ')));
        }
        for (Changed<Dimension> each : comparison.dimensions()) {
            rows.add(row(
                    "dimension",
                    each.name(),
                    null,
                    null,
                    each.before().map(Dimension::value).orElse(null),
                    each.after().map(Dimension::value).orElse(null),
                    null,
                    null,
                    each.after().or(each::before).map(CheckTables::unit).orElse(""),
                    null));
        }
        Map<String, Object> about = DataTable.about(comparison.after().layout(), version);
        about.put("before", comparison.before().layout().source().name());
        about.put("before_sha256", comparison.before().layout().source().sha256());
        about.put("seed", comparison.before().effort().seed());
        return new DataTable(
                "comparison",
                about,
                List.of(
                        column("what"),
                        column("name"),
                        column("verdict before"),
                        column("verdict after"),
                        column("before"),
                        column("after"),
                        column("before is"),
                        column("after is"),
                        column("unit"),
                        column("judgement")),
                rows);
    }

    /** What a margin is where it is only a bound. */
    private static String bound(RequirementMargin margin) {
        return margin.isBound() ? margin.margin() < 0 ? "at most" : "at least" : null;
    }

    private static String unit(Dimension dimension) {
        return switch (dimension.kind()) {
            case LENGTH -> "mm";
            case ANGLE -> "deg";
            case NUMBER -> "";
        };
    }

    /** A row for each requirement that does not hold and each dimension that alone mends it. */
    public static DataTable advice(Advice advice, String version) {
        Map<String, FreeDimension> dimensions = new LinkedHashMap<>();
        advice.dimensions().forEach(each -> dimensions.put(each.name(), each));
        List<List<Object>> rows = new ArrayList<>();
        for (SmallestChange each : advice.changes()) {
            List<String> broken = each.effects().stream()
                    .filter(effect ->
                            effect.verdict().map(found -> found != Verdict.PASS).orElse(true))
                    .map(RequirementMargin::requirement)
                    .toList();
            rows.add(row(
                    each.requirement(),
                    each.dimension(),
                    Optional.ofNullable(dimensions.get(each.dimension()))
                            .map(FreeDimension::unit)
                            .orElse(""),
                    each.from(),
                    each.to(),
                    each.change(),
                    String.join(";", broken)));
        }
        Map<String, Object> about = DataTable.about(advice.before().layout(), version);
        about.put("seed", advice.before().effort().seed());
        about.put("verdict", word(advice.before().judgement().verdict()));
        return new DataTable(
                "smallest changes",
                about,
                List.of(
                        column("requirement"),
                        column("dimension"),
                        column("unit"),
                        column("from"),
                        column("to"),
                        column("change"),
                        column("requirements that do not hold then")),
                rows);
    }

    private static String verdict(Optional<RequirementMargin> margin) {
        return margin.flatMap(RequirementMargin::verdict).map(CheckTables::word).orElse(null);
    }

    private static String word(Verdict verdict) {
        return verdict.name().toLowerCase(Locale.ROOT);
    }
}
