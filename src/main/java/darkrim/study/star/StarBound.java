package darkrim.study.star;

import darkrim.light.Estimate;
import darkrim.light.StarTally;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How large a share may be that was sampled: mean + z s + ln(1 / r) b / n.
 *
 * <p>z s is the normal law at one-sided risk r. The last term is for what no sample met: n even samples of the pupil all miss what
 * takes more than ln(1 / r) / n of it with probability r at most, and of what is missed no more than b comes to a receiver: no surface sends on more than
 * it reflects, so b is the most that any reflects, at any angle, that the star may strike and that may throw light on a receiver. It does not depend on what was
 * sampled.
 *
 * <p>A position is looked at up to four times, with more samples each time, and its word is taken as soon as one bound suffices; so each has r = (1 - c) / 4, and
 * all of them together hold with probability c at least (Boole's inequality). For one position at a time; not a proof.
 *
 * @param confidence c, 0.5 to 1
 */
public record StarBound(double confidence) {
    /** How often a position is looked at, at most. */
    static final int LOOKS = 1 + StarScan.SHARPENED;

    /** A share that the sampled one is not likely to exceed; 1 where nothing was sampled. */
    public double upper(StarPosition position) {
        return upper(position.tally(), position.reflected());
    }

    /** Likewise of a star of the layout. */
    public double upper(NamedStar star) {
        return upper(star.tally(), star.reflected());
    }

    private double upper(StarTally tally, double reflected) {
        Estimate share = tally.total();
        return share.samples() == 0
                ? 1
                : share.mean() + quantile() * share.standardError() + unseen(reflected) / share.samples();
    }

    /** Samples from which on what no sample met at a position brings no more than a share. */
    public long needed(StarPosition position, double share) {
        return (long) Math.ceil(unseen(position.reflected()) / share);
    }

    private double risk() {
        return (1 - confidence) / LOOKS;
    }

    private double quantile() {
        return -NormalDistribution.of(0, 1).inverseCumulativeProbability(risk());
    }

    private double unseen(double reflected) {
        return -StrictMath.log(risk()) * reflected;
    }
}
