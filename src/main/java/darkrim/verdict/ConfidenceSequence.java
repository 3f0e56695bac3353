package darkrim.verdict;

import darkrim.light.Estimate;

/**
 * Bounds on a mean, one from below and one from above, that hold together and at every look, so that looking again and again does not wear
 * them out.
 *
 * <p>At look k they are the empirical Bernstein bounds of Maurer and Pontil, "Empirical Bernstein bounds and sample variance
 * penalization", COLT 2009, for samples from 0 to b: mean +- (sqrt(2 V ln(3/delta) / n) + 7 b ln(3/delta) / (3 (n - 1))). Their theorem 4 is
 * about one side and has 2 for 3: half of delta goes to Bennett's inequality for the mean, half to their theorem 10 for the variance. Here a
 * third goes to Bennett's inequality on each side, and a third to the variance, which is the same for both. It is exact for any n and any
 * bounded distribution; n samples that are all zero give the upper bound 7 b ln(3/delta) / (3 (n - 1)), never zero. The risk of look k is the
 * whole risk over k (k + 1), which adds up to the whole (union bound over the looks).
 *
 * <p>For samples in pairs the same holds with the variance of the pairs, as docs/decisions/0035 shows; of samples that depend on each other in groups, each
 * group is one.
 *
 * @param risk probability that the mean is ever, at any look, outside its bounds, 0 to 1
 */
public record ConfidenceSequence(double risk) {
    /**
     * @throws IllegalArgumentException if the risk is not strictly between 0 and 1
     */
    public ConfidenceSequence {
        if (!(risk > 0 && risk < 1)) {
            throw new IllegalArgumentException("a risk lies between 0 and 1, got " + risk);
        }
    }

    /** How far a bound lies from the mean at a look, from 1; infinite where there are fewer than two samples. */
    public double width(Estimate estimate, int look) {
        if (estimate.independent() < 2) {
            return Double.POSITIVE_INFINITY;
        }
        double logarithm = StrictMath.log(3.0 * look * (look + 1) / risk);
        return Math.sqrt(2 * estimate.variance() * logarithm / estimate.samples())
                + 7 * estimate.largest() * logarithm / (3.0 * (estimate.independent() - 1));
    }

    /**
     * About how many samples bring a bound nearer to the mean than a gap at the next look, if mean and variance stay what they are: the root n of
     * gap n = sqrt(2 V L n) + 7 b L g / 3, where g samples depend on each other; infinite where there is no gap.
     */
    double samplesFor(Estimate estimate, double gap, int look) {
        double logarithm = StrictMath.log(3.0 * (look + 1) * (look + 2) / risk);
        double byVariance = Math.sqrt(2 * estimate.variance() * logarithm);
        double byLargest = 7 * estimate.largest() * logarithm * estimate.together() / 3;
        double root = (byVariance + Math.sqrt(byVariance * byVariance + 4 * gap * byLargest)) / (2 * gap);
        return gap > 0 ? root * root : Double.POSITIVE_INFINITY;
    }

    /** No mean above this is likely at this look; at most the largest sample. */
    public double upper(Estimate estimate, int look) {
        return Math.min(estimate.largest(), estimate.mean() + width(estimate, look));
    }

    /** No mean below this is likely at this look; at least 0. */
    public double lower(Estimate estimate, int look) {
        return Math.max(0, estimate.mean() - width(estimate, look));
    }
}
