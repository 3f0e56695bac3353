package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What the slopes say of many builds, as if the margin were a straight-line function of deviations that have nothing to do with each other:
 * its mean is the drawn margin plus slope times mean deviation, its variance the sum of slope squared times variance. Common practice in
 * tolerance analysis; the variance of a sum of independent quantities.
 *
 * @param mean mean margin, in the unit of the margin
 * @param deviation standard deviation of the margin
 * @param yield share of builds with a margin above 0, if the margin is normally distributed
 * @param shares what share of the variance each contributor has, 0 to 1
 */
public record RootSumSquare(double mean, double deviation, double yield, List<Double> shares) {
    /** Standard deviations that are kept from the limit. */
    private static final double KEPT = 3;

    /** Copies the list. */
    public RootSumSquare {
        shares = List.copyOf(shares);
    }

    /**
     * Of a requirement whose margin is known as drawn and at both ends of each tolerance, and not the same at all of them, which says nothing
     * of a spread; otherwise empty.
     */
    static Optional<RootSumSquare> of(List<Contributor> contributors, RequirementMargin drawn, List<Slope> slopes) {
        boolean bound = slopes.stream()
                .anyMatch(slope -> slope.atMinus().isBound() || slope.atPlus().isBound());
        if (!drawn.isKnown() || drawn.isBound() || bound) {
            return Optional.empty();
        }
        double mean = drawn.margin();
        double sum = 0;
        List<Double> parts = new ArrayList<>();
        for (int i = 0; i < slopes.size(); i++) {
            double slope = slopes.get(i).perUnit();
            mean += slope * contributors.get(i).mean();
            double part = slope * slope * contributors.get(i).variance();
            parts.add(part);
            sum += part;
        }
        if (!Double.isFinite(mean) || !Double.isFinite(sum) || sum == 0) {
            return Optional.empty();
        }
        double whole = sum;
        double deviation = StrictMath.sqrt(sum);
        double yield = NormalDistribution.of(0, 1).cumulativeProbability(mean / deviation);
        return Optional.of(new RootSumSquare(
                mean, deviation, yield, parts.stream().map(part -> part / whole).toList()));
    }

    /** The margin that is left at three standard deviations. */
    public double atThreeSigma() {
        return mean - KEPT * deviation;
    }
}
