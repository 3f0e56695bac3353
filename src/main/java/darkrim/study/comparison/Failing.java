package darkrim.study.comparison;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What fails in a requirement, and how badly.
 *
 * @param verdicts what is said of each surface, or cell of its map, by its name; of a clearance by its shape
 * @param amounts by how much each of those that fail does, by its name; the larger, the worse
 */
public record Failing(Map<String, Verdict> verdicts, Map<String, Amount> amounts) {
    /** Amounts differ when chance makes any of all that are compared as different with no more than this probability. */
    private static final double CHANCE = 0.001;

    /** Copies the maps. */
    public Failing {
        verdicts = Map.copyOf(verdicts);
        amounts = Map.copyOf(amounts);
    }

    /**
     * How badly one fails.
     *
     * @param value relative irradiance, the share of the pupil that is hidden, or the mm that a distance falls short; NaN where it is not known
     * @param standardError its standard error; 0 where it is exact
     */
    public record Amount(double value, double standardError) {
        private static final Amount UNKNOWN = new Amount(Double.NaN, 0);

        private static Amount sampled(Estimate estimate) {
            return estimate.samples() < 2 ? UNKNOWN : new Amount(estimate.mean(), estimate.standardError());
        }

        private boolean isKnown() {
            return Double.isFinite(value);
        }

        private boolean exceeds(Amount other, double errors) {
            return value - other.value > errors * StrictMath.hypot(standardError, other.standardError);
        }
    }

    static Failing of(CheckResult result, RequirementResult asked) {
        Map<String, Verdict> verdicts = new HashMap<>();
        Map<String, Amount> amounts = new LinkedHashMap<>();
        for (Outcome each : asked.outcomes()) {
            verdicts.merge(name(each), each.verdict(), Verdict::and);
            if (each.verdict() == Verdict.FAIL) {
                amounts.put(name(each), amount(result, asked.requirement().condition(), each));
            }
        }
        return new Failing(verdicts, amounts);
    }

    /** A clearance is one of all its surfaces in a shape: which of them come nearest may change with the layout. */
    private static String name(Outcome outcome) {
        return outcome.evidence() instanceof Evidence.Distance distance
                ? distance.shape() + (distance.raised().isPresent() ? " on the way in" : "")
                : outcome.where();
    }

    private static Amount amount(CheckResult result, Requirement.Condition condition, Outcome outcome) {
        if (outcome.evidence() instanceof Evidence.Sampled sampled) {
            return Amount.sampled(sampled.estimate());
        }
        if (outcome.evidence() instanceof Evidence.ExactShare share) {
            return share.isNear() ? new Amount(1 - share.atMost(), 0) : Amount.UNKNOWN;
        }
        if (condition instanceof Requirement.Clearance asked) {
            return new Amount(asked.atLeast() - outcome.value(), 0);
        }
        boolean direct = !(condition instanceof Requirement.AtMost most) || most.light() == LightClass.DIRECT;
        return direct && outcome.cell() == Outcome.WHOLE
                ? Amount.sampled(result.judgement()
                        .surfaces()
                        .get(outcome.surface().index())
                        .direct()
                        .irradiance())
                : Amount.UNKNOWN;
    }

    /** Whether a surface fails that held before, more fail, or one or the worst of them fails by more. */
    boolean isWorseThan(Failing before) {
        if (amounts.size() > before.amounts.size()
                || amounts.keySet().stream().anyMatch(name -> before.verdicts.get(name) == Verdict.PASS)) {
            return true;
        }
        double errors = errors(amounts.size());
        boolean anyByMore = amounts.entrySet().stream()
                .anyMatch(each -> before.amounts.containsKey(each.getKey())
                        && each.getValue().exceeds(before.amounts.get(each.getKey()), errors));
        return anyByMore
                || (before.allKnown()
                        && before.worst().isPresent()
                        && worst().filter(now -> now.exceeds(before.worst().get(), errors))
                                .isPresent());
    }

    /** How many standard errors chance alone exceeds in any of so many normally distributed differences, two-sided: 3.3 for one (Bonferroni). */
    static double errors(int count) {
        return NormalDistribution.of(0, 1).inverseSurvivalProbability(CHANCE / 2 / Math.max(1, count));
    }

    /** How badly the worst fails of those of which it is known. */
    public Optional<Amount> worst() {
        return amounts.values().stream().filter(Amount::isKnown).max(Comparator.comparingDouble(Amount::value));
    }

    /** Whether how badly they fail is known of all. */
    boolean allKnown() {
        return amounts.values().stream().allMatch(Amount::isKnown);
    }

    /**
     * Whether any might fail that did not before: one that held or was not there is undecided, or one that was undecided fails. How many do not
     * hold says nothing of it: another may have been mended.
     */
    boolean mightBreak(Failing before) {
        return verdicts.entrySet().stream()
                .anyMatch(each -> each.getValue()
                        .isWorseThan(before.verdicts.getOrDefault(each.getKey(), whereNew(each.getValue()))));
    }

    /** What one that was not there counts as: how badly it fails is compared with the worst of all. */
    private static Verdict whereNew(Verdict now) {
        return now == Verdict.FAIL ? Verdict.FAIL : Verdict.PASS;
    }
}
