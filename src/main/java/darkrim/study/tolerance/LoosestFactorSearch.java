package darkrim.study.tolerance;

import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
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

    private final DeviatingLayout layout;
    private final List<Build> builds;
    private final double wanted;
    private final int allowed;
    private final Slices slices;
    /** Of each build the greatest factor that passes, and the least that does not. */
    private final double[] passes;

    private final double[] fails;
    private double low;
    private double high = Double.POSITIVE_INFINITY;
    private boolean stopped;

    /**
     * @param layout what is built
     * @param builds builds with the tolerances as they are
     * @param wanted share of builds that must pass
     * @param slices does the work
     */
    LoosestFactorSearch(DeviatingLayout layout, List<Build> builds, double wanted, Slices slices) {
        this.layout = layout;
        this.builds = builds;
        this.wanted = wanted;
        this.allowed = (int) Math.floor((1 - wanted) * builds.size() + 1e-9);
        this.slices = slices;
        this.passes = new double[builds.size()];
        this.fails = new double[builds.size()];
        for (int i = 0; i < passes.length; i++) {
            boolean pass = builds.get(i).verdict() == Verdict.PASS;
            passes[i] = pass ? 1 : 0;
            fails[i] = pass ? Double.POSITIVE_INFINITY : 1;
        }
    }

    /** The factor. */
    LoosestFactor find(Verdict drawn) {
        if (drawn == Verdict.PASS && !builds.isEmpty()) {
            narrow(1);
            while (Double.isInfinite(high) && low > 0 && low < MOST && !stopped) {
                narrow(Math.min(MOST, 2 * low));
            }
            while (Double.isFinite(high) && high - low > NEAR * high && high > TIGHTEST && !stopped) {
                narrow(0.5 * (low + high));
            }
        }
        return new LoosestFactor(low, high, wanted, builds.size(), allowed, stopped);
    }

    private void narrow(double factor) {
        boolean enough = enough(factor);
        if (!stopped) {
            low = enough ? factor : low;
            high = enough ? high : factor;
        }
    }

    /** Whether enough builds pass; ends early once too many fail. After a stop the answer is of no use. */
    private boolean enough(double factor) {
        long failed =
                IntStream.range(0, fails.length).filter(i -> fails[i] <= factor).count();
        // Those that failed at the least factors so far are likely to fail first.
        List<Integer> open = IntStream.range(0, passes.length)
                .filter(i -> passes[i] < factor && factor < fails[i])
                .boxed()
                .sorted((a, b) -> Double.compare(fails[a], fails[b]))
                .toList();
        int slice = 2 * slices.threads();
        for (int from = 0; from < open.size() && failed <= allowed; from += slice) {
            List<Integer> some = open.subList(from, Math.min(open.size(), from + slice));
            List<Callable<Boolean>> tasks = new ArrayList<>();
            some.forEach(i -> tasks.add(
                    () -> layout.check(LoosestFactor.scaled(builds.get(i).deviations(), factor))
                            .verdict()
                            .filter(Verdict.PASS::equals)
                            .isPresent()));
            slices.watch().progress("looking for the loosest tolerances", from, open.size());
            if (slices.watch().stop()) {
                stopped = true;
                return false;
            }
            List<Boolean> found = slices.workers().all(tasks.stream());
            for (int k = 0; k < found.size(); k++) {
                int i = some.get(k);
                if (found.get(k)) {
                    passes[i] = factor;
                } else {
                    fails[i] = factor;
                    failed++;
                }
            }
        }
        return failed <= allowed;
    }
}
