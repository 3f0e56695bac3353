package darkrim.verdict;

import darkrim.layout.Requirement;
import darkrim.scene.Surface;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;

/**
 * A requirement with its verdict.
 *
 * @param requirement what was asked
 * @param verdict what can be said of all its surfaces together
 * @param outcomes what was found for each surface or cell, in the order of the scene
 */
public record RequirementResult(Requirement requirement, Verdict verdict, List<Outcome> outcomes) {
    /** Copies the list. */
    public RequirementResult {
        outcomes = List.copyOf(outcomes);
    }

    /** A result whose verdict follows from its outcomes; no outcome is no evidence, so it is undecided. */
    public static RequirementResult of(Requirement requirement, List<Outcome> outcomes) {
        Verdict verdict =
                outcomes.stream().map(Outcome::verdict).reduce(Verdict::and).orElse(Verdict.UNDECIDED);
        return new RequirementResult(requirement, verdict, outcomes);
    }

    /** The same with margins put into the evidence. */
    RequirementResult with(Map<Surface, LightMargin> margins) {
        return new RequirementResult(
                requirement,
                verdict,
                outcomes.stream().map(outcome -> outcome.with(margins)).toList());
    }

    /** The same with passes by proof of darkness taken back where they are in doubt, whether no direct light is asked for or little. */
    RequirementResult doubting(BiPredicate<Surface, Evidence.ProvedDark> doubtful) {
        List<Outcome> doubted =
                outcomes.stream().map(outcome -> outcome.doubting(doubtful)).toList();
        return doubted.equals(outcomes) ? this : of(requirement, doubted);
    }

    /** Whether it is undecided and a proof of darkness is in doubt: nothing is then known of how far it is from its limit. */
    public boolean isDarknessInDoubt() {
        return verdict == Verdict.UNDECIDED && outcomes.stream().anyMatch(Outcome::isDarknessInDoubt);
    }

    /** The outcome with the least margin of direct light; empty if none was looked for. */
    public Optional<Outcome> leastMargin() {
        return outcomes.stream()
                .filter(outcome -> outcome.evidence().margin().isPresent())
                .min(Comparator.<Outcome>comparingDouble(
                                outcome -> outcome.evidence().margin().get().millimetres())
                        .thenComparing(
                                outcome -> outcome.evidence().margin().get().atLeast()));
    }

    /** The outcome that matters most: a failure before a doubt before a pass, then the value farthest to the wrong side. */
    public Outcome worst() {
        return worstFirst().get(0);
    }

    /** The outcomes, the one that matters most first; what matters alike stays in order. */
    public List<Outcome> worstFirst() {
        boolean highIsGood = requirement.condition() instanceof Requirement.PupilSeen
                || requirement.condition() instanceof Requirement.Clearance;
        Comparator<Outcome> byVerdict = Comparator.comparing(outcome -> switch (outcome.verdict()) {
            case FAIL -> 2;
            case UNDECIDED -> 1;
            case PASS -> 0;
        });
        Comparator<Outcome> byValue = Comparator.comparingDouble(
                outcome -> Double.isNaN(outcome.value()) ? 0 : highIsGood ? -outcome.value() : outcome.value());
        return outcomes.stream()
                .sorted(byVerdict.thenComparing(byValue).reversed())
                .toList();
    }
}
