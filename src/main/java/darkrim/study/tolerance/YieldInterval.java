package darkrim.study.tolerance;

import darkrim.verdict.Verdict;
import java.util.List;
import org.apache.commons.statistics.interval.BinomialConfidenceInterval;

/**
 * What share of all builds passes, from some builds: Clopper and Pearson, Biometrika 26, 1934. An undecided build counts as failed for the
 * lower bound and as passed for the upper.
 *
 * @param builds number of builds
 * @param passed how many pass
 * @param undecided how many are not decided
 * @param lower the share is at least this, at the confidence
 * @param upper the share is at most this
 * @param confidence the confidence of both bounds together
 */
public record YieldInterval(int builds, int passed, int undecided, double lower, double upper, double confidence) {
    /** Of some verdicts. */
    static YieldInterval of(List<Verdict> verdicts, double confidence) {
        int passed = count(verdicts, Verdict.PASS);
        int undecided = count(verdicts, Verdict.UNDECIDED);
        return of(verdicts.size(), passed, undecided, confidence);
    }

    static YieldInterval of(int builds, int passed, int undecided, double confidence) {
        if (builds == 0) {
            return new YieldInterval(0, 0, 0, 0, 1, confidence);
        }
        double error = 1 - confidence;
        BinomialConfidenceInterval interval = BinomialConfidenceInterval.CLOPPER_PEARSON;
        return new YieldInterval(
                builds,
                passed,
                undecided,
                interval.fromErrorRate(builds, passed, error).getLowerBound(),
                interval.fromErrorRate(builds, passed + undecided, error).getUpperBound(),
                confidence);
    }

    /** Share of these builds that pass; NaN without builds. */
    public double share() {
        return (double) passed / builds;
    }

    /** How many failed. */
    public int failed() {
        return builds - passed - undecided;
    }

    /** Whether the share of all builds that pass is at least a wanted one. */
    public Verdict against(double wanted) {
        return lower >= wanted ? Verdict.PASS : upper < wanted ? Verdict.FAIL : Verdict.UNDECIDED;
    }

    /** How many builds, all passing, show a yield at a confidence. */
    public static long buildsToShow(double wanted, double confidence) {
        // All of n pass: the lower bound is (error / 2)^(1 / n).
        return (long) Math.ceil(StrictMath.log((1 - confidence) / 2) / StrictMath.log(wanted));
    }

    private static int count(List<Verdict> verdicts, Verdict wanted) {
        return Math.toIntExact(verdicts.stream().filter(wanted::equals).count());
    }
}
