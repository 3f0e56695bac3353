package darkrim.verdict;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Tally;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Map;
import java.util.function.BiPredicate;

/**
 * All that was found.
 *
 * @param requirements every requirement with its verdict, in the order of the layout
 * @param surfaces every surface with what it gets, in the order of the scene
 * @param samples number of samples taken
 * @param risk probability that any of the sampled verdicts is wrong
 * @param stopped whether the work was stopped before it was done
 * @param batches means of single batches, where the plan has them kept
 */
public record Judgement(
        List<RequirementResult> requirements,
        List<SurfaceResult> surfaces,
        long samples,
        double risk,
        boolean stopped,
        BatchMeans batches) {
    /** Copies the lists. */
    public Judgement {
        requirements = List.copyOf(requirements);
        surfaces = List.copyOf(surfaces);
    }

    /** The same with margins put into the evidence of direct light. */
    public Judgement with(Map<Surface, LightMargin> margins) {
        return new Judgement(
                requirements.stream().map(result -> result.with(margins)).toList(),
                surfaces.stream().map(result -> result.with(margins)).toList(),
                samples,
                risk,
                stopped,
                batches);
    }

    /**
     * The same with proofs of darkness taken back that are in doubt: what they were given for is then undecided, and their surfaces are dark behind the
     * facets only.
     *
     * @param doubtful whether such a proof of a surface is in doubt
     */
    public Judgement doubting(BiPredicate<Surface, Evidence.ProvedDark> doubtful) {
        return new Judgement(
                requirements.stream().map(result -> result.doubting(doubtful)).toList(),
                surfaces.stream().map(result -> result.doubting(doubtful)).toList(),
                samples,
                risk,
                stopped,
                batches);
    }

    /**
     * What was sampled of the light that a condition is about, where an outcome is; it may decide nothing, beside a ray or a proof.
     *
     * @param condition the condition of the outcome's requirement
     * @param outcome an outcome of light
     */
    public Estimate sampled(Requirement.Condition condition, Outcome outcome) {
        SurfaceResult surface = surfaces.get(outcome.surface().index());
        Tally tally = condition instanceof Requirement.AtMost most && most.light() == LightClass.ONCE_REFLECTED
                ? surface.onceReflected()
                : surface.direct();
        return outcome.cell() == Outcome.WHOLE
                ? tally.irradiance()
                : tally.cells().get(outcome.cell());
    }

    /** The verdict on all requirements together. */
    public Verdict verdict() {
        return requirements.stream()
                .map(RequirementResult::verdict)
                .reduce(Verdict::and)
                .orElse(Verdict.UNDECIDED);
    }
}
