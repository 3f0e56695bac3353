package darkrim.study.advice;

import darkrim.layout.Requirement;
import darkrim.study.CheckResult;
import darkrim.study.MarginScope;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Slopes of margins by central differences. Exact margins: from two layouts. Sampled ones: from pairs of layouts, each pair with random numbers of
 * its own, both layouts of a pair with the same (common random numbers: Law, Simulation Modeling and Analysis, ch. 11); the spread of the
 * pairs' slopes gives the error.
 */
final class SlopeSearch {
    /** Step for exact margins, a share of the scale. */
    private static final double EXACT_STEP = 0.05;
    /** Step for sampled ones. */
    private static final double SAMPLED_STEP = 1;

    private static final int PAIRS = 6;
    private static final int BATCHES = 8;

    private final Trials trials;
    private final CheckResult before;
    private final Set<String> exact = new HashSet<>();
    private final Set<String> sampled = new HashSet<>();

    /**
     * @param trials looks at layouts
     * @param before the check of the layout as written
     * @param wanted the requirements whose slopes are wanted
     */
    SlopeSearch(Trials trials, CheckResult before, Set<String> wanted) {
        this.trials = trials;
        this.before = before;
        for (RequirementResult each : before.judgement().requirements()) {
            Requirement requirement = each.requirement();
            if (wanted.contains(requirement.name())) {
                (requirement.condition() instanceof Requirement.AtMost ? sampled : exact).add(requirement.name());
            }
        }
    }

    /** The slopes along a dimension, NaN where they are not known; none if the work is stopped. */
    List<Slope> along(FreeDimension dimension) {
        List<Slope> slopes = new ArrayList<>();
        if (!exact.isEmpty()) {
            exact(dimension, slopes);
        }
        for (String requirement : sampled) {
            slopes.add(sampled(dimension, requirement));
        }
        return trials.stopped() ? List.of() : slopes;
    }

    private void exact(FreeDimension dimension, List<Slope> slopes) {
        double step = EXACT_STEP * dimension.scale();
        double low = Math.max(dimension.least(), dimension.value() - step);
        double high = Math.min(dimension.most(), dimension.value() + step);
        Map<String, RequirementMargin> below = margins(dimension, low);
        Map<String, RequirementMargin> above = margins(dimension, high);
        for (String requirement : exact) {
            RequirementMargin one = below.get(requirement);
            RequirementMargin two = above.get(requirement);
            double slope = tells(one) && tells(two) ? (two.margin() - one.margin()) / (high - low) : Double.NaN;
            slopes.add(new Slope(requirement, dimension.name(), slope, 0, MarginUnit.MILLIMETRES));
        }
    }

    /** Whether there is a margin that can be compared: one that holds and is only a bound cannot. What is lit all over stands still. */
    private static boolean tells(RequirementMargin margin) {
        return margin != null && Double.isFinite(margin.margin()) && !(margin.margin() >= 0 && margin.isBound());
    }

    private Map<String, RequirementMargin> margins(FreeDimension dimension, double value) {
        Map<String, RequirementMargin> found = new TreeMap<>();
        trials.check(Map.of(dimension.name(), value), exact, MarginScope.REQUIREMENTS, Optional.empty(), 1)
                .filter(result -> !result.judgement().stopped())
                .ifPresent(result ->
                        RequirementMargin.of(result).forEach(figure -> found.put(figure.requirement(), figure)));
        return found;
    }

    private Slope sampled(FreeDimension dimension, String requirement) {
        double step = SAMPLED_STEP * dimension.scale();
        double low = Math.max(dimension.least(), dimension.value() - step);
        double high = Math.min(dimension.most(), dimension.value() + step);
        String where = before.judgement().requirements().stream()
                .filter(each -> each.requirement().name().equals(requirement))
                .map(each -> each.worst().where())
                .findFirst()
                .orElseThrow();
        double[] slopes = new double[PAIRS];
        for (int i = 0; i < PAIRS; i++) {
            double one = value(dimension, low, requirement, where, i);
            double two = value(dimension, high, requirement, where, i);
            slopes[i] = (one - two) / (high - low);
        }
        double mean = Arrays.stream(slopes).average().orElseThrow();
        double squares = Arrays.stream(slopes)
                .map(slope -> (slope - mean) * (slope - mean))
                .sum();
        double error = Math.sqrt(squares / (PAIRS - 1) / PAIRS);
        return new Slope(
                requirement, dimension.name(), mean, Double.isNaN(mean) ? 0 : error, MarginUnit.RELATIVE_IRRADIANCE);
    }

    private double value(FreeDimension dimension, double value, String requirement, String where, int pair) {
        long seed = (before.effort().seed() + 1 + pair) % (1L << 53);
        return trials.check(
                        Map.of(dimension.name(), value),
                        Set.of(requirement),
                        MarginScope.NONE,
                        Optional.of(seed),
                        BATCHES)
                .filter(result -> !result.judgement().stopped())
                .flatMap(result -> result.judgement().requirements().get(0).outcomes().stream()
                        .filter(outcome -> outcome.where().equals(where))
                        .findFirst())
                .map(Outcome::value)
                .orElse(Double.NaN);
    }
}
