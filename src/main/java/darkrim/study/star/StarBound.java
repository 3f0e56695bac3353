package darkrim.study.star;

import darkrim.light.Estimate;
import darkrim.light.StarTally;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How large a share may be that was sampled: mean + z s + ln(1 / (1 - c)) b / n.
 *
 * <p>z s is the normal law at one-sided confidence c. The last term is for what no sample met: n even samples of the pupil all miss what
 * takes more than ln(1 / (1 - c)) / n of it with probability 1 - c at most, and what is missed is taken to bring a receiver no more than the
 * largest sample of the whole scan, b, did; where no sample of it met any light, all light, b = 1. For one position at a time; not a proof.
 *
 * @param confidence c, 0.5 to 1
 * @param largest b, or 0 where no sample met any light
 */
public record StarBound(double confidence, double largest) {
    /** A share that the sampled one is not likely to exceed; 1 where nothing was sampled. */
    public double upper(StarTally tally) {
        Estimate share = tally.total();
        return share.samples() == 0 ? 1 : share.mean() + quantile() * share.standardError() + unseen(share.samples());
    }

    /** Samples from which on what no sample met may bring less than a share. */
    public long needed(double share) {
        return (long) Math.ceil(unseen(1) / share);
    }

    private double quantile() {
        return NormalDistribution.of(0, 1).inverseCumulativeProbability(confidence);
    }

    private double unseen(long samples) {
        return -StrictMath.log(1 - confidence) * (largest > 0 ? largest : 1) / samples;
    }
}
