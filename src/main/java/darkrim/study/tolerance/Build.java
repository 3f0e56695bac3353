package darkrim.study.tolerance;

import darkrim.study.PointResult;
import darkrim.study.RequirementFigure;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.List;

/**
 * One sampled build.
 *
 * @param number from 1
 * @param deviations of the contributors, in their order
 * @param result verdicts; without a verdict where it cannot be built
 * @param margins margins of the requirements, in the order of the layout; empty unless asked for
 */
public record Build(int number, List<Double> deviations, PointResult result, List<RequirementMargin> margins) {
    /** Copies the lists. */
    public Build {
        deviations = List.copyOf(deviations);
        margins = List.copyOf(margins);
    }

    /**
     * Whether no deviation is beyond its tolerance, as one of a normal distribution may be.
     *
     * @param contributors what deviates
     */
    public boolean isWithin(List<Contributor> contributors) {
        for (int i = 0; i < deviations.size(); i++) {
            if (!contributors.get(i).allows(deviations.get(i))) {
                return false;
            }
        }
        return true;
    }

    /** What can be said of all requirements together; what cannot be built fails. */
    public Verdict verdict() {
        return result.verdict().orElse(Verdict.FAIL);
    }

    /** What can be said of a requirement; what cannot be built fails. */
    public Verdict verdict(String requirement) {
        return result.figure(requirement).map(RequirementFigure::verdict).orElse(Verdict.FAIL);
    }
}
