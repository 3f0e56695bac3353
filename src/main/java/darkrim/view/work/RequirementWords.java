package darkrim.view.work;

import darkrim.layout.Requirement;
import darkrim.present.ConditionWords;
import darkrim.present.EvidenceWords;
import darkrim.present.Figures;
import darkrim.present.MarginWords;
import darkrim.scene.Scene;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Puts what was found of requirements into the words of the window, whether it was checked here or read back. */
final class RequirementWords {
    private RequirementWords() {}

    /**
     * What a requirement says.
     *
     * @param result what was found
     * @param value value and error of an outcome in words
     * @param margin the least margin in words
     */
    static Facts.RequirementFact fact(RequirementResult result, Function<Outcome, String> value, String margin) {
        Optional<Outcome> shown = shown(result);
        return new Facts.RequirementFact(
                result.requirement().name(),
                result.verdict(),
                shown.map(outcome -> outcome.surface().name()).orElse(""),
                ConditionWords.brief(result.requirement().condition()),
                shown.map(value).orElse(""),
                margin);
    }

    /** What matters most; where all are dark, so that it is the margin that tells them apart, what has the least. */
    private static Optional<Outcome> shown(RequirementResult result) {
        if (result.outcomes().isEmpty()) {
            return Optional.empty();
        }
        Optional<Outcome> least =
                result.requirement().condition() instanceof Requirement.NoDirect && result.verdict() == Verdict.PASS
                        ? result.leastMargin()
                        : Optional.empty();
        return least.or(() -> Optional.of(result.worst()));
    }

    /** Where the least margin is, unless that is named anyway. */
    private static String elsewhere(RequirementResult result, Outcome least) {
        String surface = least.surface().name();
        return result.verdict() == Verdict.PASS
                        || least.evidence().margin().orElseThrow().atLeast()
                        || surface.equals(result.worst().surface().name())
                ? ""
                : " at " + surface;
    }

    /**
     * The least margin in words; empty where there is none: of a limit on light what is left of it, with its error.
     *
     * @param result what was found
     * @param scene the scene
     * @param searched whether margins were searched for: if so, that of the pupil is, too
     */
    static String margin(RequirementResult result, Scene scene, boolean searched) {
        Requirement.Condition condition = result.requirement().condition();
        if (condition instanceof Requirement.AtMost
                || condition instanceof Requirement.Clearance
                || (condition instanceof Requirement.PupilSeen && searched)) {
            return isMeasured(result) ? words(RequirementMargin.of(result, scene)) : "";
        }
        return result.leastMargin()
                .map(outcome -> direct(outcome.evidence()) + elsewhere(result, outcome))
                .orElse("");
    }

    /** The same from the margins that are known while a dimension is dragged, by name of the requirement. */
    static String margin(RequirementResult result, Map<String, RequirementMargin> known) {
        RequirementMargin margin = known.get(result.requirement().name());
        return margin == null || !isMeasured(result) ? "" : words(margin);
    }

    private static String words(RequirementMargin margin) {
        return Double.isNaN(margin.margin()) ? "" : MarginWords.withUnit(margin);
    }

    /** Of light that no sample met nothing is known but a bound: its mean of 0 has no error to go with it. */
    private static boolean isMeasured(RequirementResult result) {
        return result.outcomes().stream()
                .noneMatch(outcome -> outcome.evidence() instanceof Evidence.Sampled sampled
                        && sampled.estimate().largest() > 0
                        && (sampled.estimate().samples() < 2
                                || sampled.estimate().mean() == 0));
    }

    /** What the requirements say of each surface, by its name. */
    static Map<String, List<Judged>> judged(List<RequirementResult> results, double confidence) {
        Map<String, List<Judged>> judged = new HashMap<>();
        for (RequirementResult result : results) {
            for (Outcome outcome : result.outcomes()) {
                judged.computeIfAbsent(outcome.surface().name(), surface -> new ArrayList<>())
                        .add(judged(result.requirement(), outcome, confidence));
            }
        }
        return judged;
    }

    private static Judged judged(Requirement requirement, Outcome outcome, double confidence) {
        String cell = outcome.cell() == Outcome.WHOLE
                ? ""
                : outcome.where().substring(outcome.surface().name().length()).strip() + ": ";
        Optional<Judged.Line> ray = outcome.evidence() instanceof Evidence.WitnessRay witness
                ? Optional.of(new Judged.Line(witness.onPupil(), witness.onSurface()))
                : Optional.empty();
        return new Judged(
                requirement.name(),
                !(requirement.condition() instanceof Requirement.PupilSeen
                        || requirement.condition() instanceof Requirement.Clearance),
                outcome.verdict(),
                cell + EvidenceWords.of(outcome, confidence),
                direct(outcome.evidence()),
                ray);
    }

    /** A margin of direct light in words; empty where there is none. */
    private static String direct(Evidence evidence) {
        return evidence.margin()
                .map(margin -> (margin.atLeast() || margin.isUnexplained()
                                ? (margin.millimetres() < 0 ? "at worst " : "at least ")
                                : "")
                        + Figures.margin(margin.millimetres()) + " mm")
                .orElse("");
    }
}
