package darkrim.study.tolerance;

import darkrim.study.CheckResult;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Optional;

/**
 * What tolerances do to a layout.
 *
 * @param drawn the layout as drawn, with its check
 * @param settings how it was gone about
 * @param contributors what deviates
 * @param requirements a line for each requirement, in the order of the layout
 * @param builds the sampled builds that were finished, in their order
 * @param yield what share of builds meets all requirements
 * @param loosest the loosest common factors on the tolerances; absent unless a yield is wanted
 * @param stopped whether it was stopped before it was done
 * @param seconds how long this run took, s; the only part that differs between runs
 */
public record ToleranceResult(
        CheckResult drawn,
        ToleranceSettings settings,
        List<Contributor> contributors,
        List<RequirementTolerance> requirements,
        List<Build> builds,
        YieldInterval yield,
        Optional<LoosestFactors> loosest,
        boolean stopped,
        double seconds) {
    /** Copies the lists. */
    public ToleranceResult {
        contributors = List.copyOf(contributors);
        requirements = List.copyOf(requirements);
        builds = List.copyOf(builds);
    }

    /** Builds with a warning that is not said of the layout as drawn, such as parts that run into one another. */
    public List<Build> warned() {
        return builds.stream()
                .filter(build -> !build.result().warnings().isEmpty())
                .toList();
    }

    /** Whether every requirement holds in the worst case that was found. */
    public Verdict worstVerdict() {
        return requirements.stream()
                .map(RequirementTolerance::worstVerdict)
                .reduce(Verdict::and)
                .orElse(Verdict.UNDECIDED);
    }

    /** What the study is judged by: the yield where one is wanted, otherwise the worst case. */
    public Verdict verdict() {
        Verdict all = settings.wantedYield().map(yield::against).orElseGet(this::worstVerdict);
        return stopped && all == Verdict.PASS ? Verdict.UNDECIDED : all;
    }
}
