package darkrim.study.tolerance;

import darkrim.layout.Requirement;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the tolerances do to one requirement.
 *
 * @param requirement the requirement
 * @param drawn its margin as drawn
 * @param slopes how the margin follows each contributor; empty if the study was stopped before
 * @param worst the least margin within the tolerances; absent if the study was stopped before
 * @param rootSumSquare what the slopes say of many builds; absent where a margin is not known
 * @param yield what share of builds meets it
 * @param brokenBy number of a build within the tolerances that breaks it although the worst case does not
 * @param sampled the margins of the builds; absent unless asked for
 */
public record RequirementTolerance(
        Requirement requirement,
        RequirementMargin drawn,
        List<Slope> slopes,
        Optional<WorstCase> worst,
        Optional<RootSumSquare> rootSumSquare,
        YieldInterval yield,
        OptionalInt brokenBy,
        Optional<SampledMargins> sampled) {
    /** Copies the list. */
    public RequirementTolerance {
        slopes = List.copyOf(slopes);
    }

    /** Whether it holds in the worst case that was found. */
    public Verdict worstVerdict() {
        if (brokenBy.isPresent()) {
            return Verdict.FAIL;
        }
        return worst.map(found -> found.margin().verdict().orElse(Verdict.FAIL)).orElse(Verdict.UNDECIDED);
    }
}
