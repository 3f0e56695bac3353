package darkrim.study.tolerance;

import darkrim.study.PointResult;
import darkrim.study.WorkersLost;
import darkrim.verdict.Verdict;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Looks for the loosest common factor by halving an interval. The builds are the same at every factor, with deviations that are as many
 * times as large, so that the answer does not jump about with the random numbers. It takes a build that fails to fail at every larger
 * factor, too, and one that passes to pass at every smaller: each is looked at only where that is open.
 */
final class LoosestFactorSearch {
    static final double MOST = 10;
    private static final double NEAR = 0.02;
    private static final double TIGHTEST = 1e-3;
    /** Looks after which it is seen whether too many fail already; never the number of threads, on which no result may hang. */
    private static final int SLICE = 64;

    private final List<Build> builds;
    private final Looks looks;
    private final double confidence;
    /** Of each build the greatest factor that passes, and the least that does not. */
    private final double[] passes;

    private final double[] fails;
    /** Whether it does not pass there since nothing is decided. */
    private final boolean[] undecided;

    private boolean stopped;

    /**
     * @param builds builds with the tolerances as they are
     * @param looks looks at them
     * @param confidence of what is said of all builds
     */
    LoosestFactorSearch(List<Build> builds, Looks looks, double confidence) {
        this.builds = builds;
        this.looks = looks;
        this.confidence = confidence;
        this.passes = new double[builds.size()];
        this.fails = new double[builds.size()];
        this.undecided = new boolean[builds.size()];
        Arrays.fill(fails, Double.POSITIVE_INFINITY);
        for (int i = 0; i < passes.length; i++) {
            learn(i, 1, builds.get(i).verdict());
        }
    }

    /**
     * The factors.
     *
     * @param wanted share of all builds that must pass
     * @param drawn verdict on the layout as drawn
     */
    LoosestFactors find(double wanted, Verdict drawn) throws WorkersLost, IOException {
        int some = (int) Math.floor((1 - wanted) * builds.size() + 1e-9);
        LoosestFactor estimate = find(wanted, some, drawn);
        int few = some;
        while (few >= 0 && interval(few, 0).lower() < wanted) {
            few--;
        }
        return new LoosestFactors(estimate, few < 0 ? Optional.empty() : Optional.of(find(wanted, few, drawn)));
    }

    private YieldInterval interval(int failed, int open) {
        return YieldInterval.of(builds.size(), builds.size() - failed, open, confidence);
    }

    private LoosestFactor find(double wanted, int allowed, Verdict drawn) throws WorkersLost, IOException {
        double low = 0;
        double high = Double.POSITIVE_INFINITY;
        double factor = 1;
        boolean going = drawn == Verdict.PASS && !builds.isEmpty();
        while (going) {
            boolean enough = enough(factor, allowed);
            if (!stopped) {
                low = enough ? factor : low;
                high = enough ? high : factor;
            }
            factor = Double.isInfinite(high) ? Math.min(MOST, 2 * low) : 0.5 * (low + high);
            going = !stopped && (Double.isInfinite(high) ? low < MOST : high - low > NEAR * high && high > TIGHTEST);
        }
        return new LoosestFactor(low, high, wanted, allowed, yieldWith(low, allowed), stopped);
    }

    /**
     * What is known of the yield with a factor that was chosen by these builds: the factor lies below that with which one more than allowed
     * fails. The share of all builds that fail below the k-th of n such factors has the distribution Beta(k, n - k + 1) (David, Nagaraja, Order
     * Statistics, 2003, section 2.3), of which the bound for k - 1 failures by Clopper and Pearson is the quantile: the choice costs nothing. At
     * the greatest factor looked at there was no choice. Of none that was found nothing is known.
     */
    private YieldInterval yieldWith(double factor, int allowed) {
        if (factor == 0) {
            return YieldInterval.of(0, 0, 0, confidence);
        }
        int failed = count(factor, false);
        int open = count(factor, true);
        YieldInterval found = interval(failed, open);
        double lower = factor < MOST ? interval(Math.max(failed, allowed), 0).lower() : found.lower();
        return new YieldInterval(
                found.builds(), found.passed(), found.undecided(), lower, found.upper(), found.confidence());
    }

    /** How many do not pass with a factor; or how many of those are undecided. */
    private int count(double factor, boolean open) {
        return Math.toIntExact(IntStream.range(0, fails.length)
                .filter(i -> fails[i] <= factor && (!open || undecided[i]))
                .count());
    }

    /** Whether enough builds pass; ends early once too many fail. After a stop the answer is of no use. */
    private boolean enough(double factor, int allowed) throws WorkersLost, IOException {
        int failed = count(factor, false);
        // Those that failed at the least factors so far are likely to fail first.
        List<Integer> open = IntStream.range(0, passes.length)
                .filter(i -> passes[i] < factor && factor < fails[i])
                .boxed()
                .sorted((a, b) -> Double.compare(fails[a], fails[b]))
                .toList();
        for (int from = 0; from < open.size() && failed <= allowed; from += SLICE) {
            List<Integer> some = open.subList(from, Math.min(open.size(), from + SLICE));
            List<PointResult> found = looks.all(
                    "looking for the loosest tolerances",
                    some.stream()
                            .map(i ->
                                    Look.all(LoosestFactor.scaled(builds.get(i).deviations(), factor)))
                            .toList());
            if (found.size() < some.size()) {
                stopped = true;
                return false;
            }
            for (int k = 0; k < found.size(); k++) {
                learn(some.get(k), factor, found.get(k).verdict().orElse(Verdict.FAIL));
            }
            failed = count(factor, false);
        }
        return failed <= allowed;
    }

    private void learn(int build, double factor, Verdict verdict) {
        if (verdict == Verdict.PASS) {
            passes[build] = factor;
        } else {
            fails[build] = factor;
            undecided[build] = verdict == Verdict.UNDECIDED;
        }
    }
}
