package darkrim.verdict;

import darkrim.scene.Surface;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

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
     * The same with proofs of darkness taken back that are in doubt: what they were given for is then undecided.
     *
     * @param doubtful whether an outcome that passes by such a proof is in doubt
     */
    public Judgement doubting(Predicate<Outcome> doubtful) {
        return new Judgement(
                requirements.stream().map(result -> result.doubting(doubtful)).toList(),
                surfaces,
                samples,
                risk,
                stopped,
                batches);
    }

    /** The verdict on all requirements together. */
    public Verdict verdict() {
        return requirements.stream()
                .map(RequirementResult::verdict)
                .reduce(Verdict::and)
                .orElse(Verdict.UNDECIDED);
    }
}
