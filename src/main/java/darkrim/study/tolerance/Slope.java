package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;

/**
 * How the margin of a requirement follows one contributor.
 *
 * @param atMinus the margin at the lower end of the tolerance, all else as drawn
 * @param atPlus the margin at the upper end
 * @param perUnit change of the margin for a deviation of 1 mm, 1 degree or 1, over the whole tolerance. Where an exact margin
 *     falls to one end more steeply than it changes over the whole, since another edge then sets it, that fall, which is on the safe side; of
 *     sampled margins, which are less sure over half a tolerance, where neither end has more than is drawn. NaN where a margin is not known
 */
public record Slope(RequirementMargin atMinus, RequirementMargin atPlus, double perUnit) {
    /** Differences below this share are rounding. */
    private static final double LESS = 1e-9;

    /**
     * The secant over the tolerance, or the steeper fall; from the drawn value to one end where the margin at the other is only known to be at
     * least so much. Not known where an end cannot be built, is broken by an unknown amount or is not decided: the other end may be the good one.
     */
    static Slope of(
            Contributor contributor, RequirementMargin drawn, RequirementMargin atMinus, RequirementMargin atPlus) {
        double minus = contributor.tolerance().minus();
        double plus = contributor.tolerance().plus();
        boolean below = atMinus.isKnown();
        boolean above = atPlus.isKnown();
        double slope = Double.NaN;
        if (below && above && drawn.isKnown() && minus > 0 && plus > 0) {
            double down = (drawn.margin() - atMinus.margin()) / minus;
            double up = (atPlus.margin() - drawn.margin()) / plus;
            double secant = (atPlus.margin() - atMinus.margin()) / (plus + minus);
            boolean moreAtNeither = down >= 0 && up <= 0;
            boolean exact = drawn.standardError() == 0 && atMinus.standardError() == 0 && atPlus.standardError() == 0;
            boolean steeperFall = Math.max(down, -up) > Math.abs(secant);
            slope = steeperFall && (moreAtNeither || exact) ? (down > -up ? down : up) : secant;
        } else if (below && above) {
            slope = (atPlus.margin() - atMinus.margin()) / (plus + minus);
        } else if (drawn.isKnown() && above && plus > 0 && isCappedAbove(atMinus)) {
            slope = (atPlus.margin() - drawn.margin()) / plus;
        } else if (drawn.isKnown() && below && minus > 0 && isCappedAbove(atPlus)) {
            slope = (drawn.margin() - atMinus.margin()) / minus;
        }
        return new Slope(atMinus, atPlus, slope);
    }

    private static boolean isCappedAbove(RequirementMargin end) {
        return end.capped() && end.margin() >= 0;
    }

    /** By how much the margin differs between the lower end, the drawn value and the upper end. */
    double influence(RequirementMargin drawn) {
        double low = Math.min(rank(drawn), Math.min(rank(atMinus), rank(atPlus)));
        double high = Math.max(rank(drawn), Math.max(rank(atMinus), rank(atPlus)));
        return high == low ? 0 : high - low;
    }

    /** By how much the margin is less at an end than as drawn; 0 where it is less at neither. */
    double fall(RequirementMargin drawn) {
        return Math.max(0, rank(drawn) - Math.min(rank(atMinus), rank(atPlus)));
    }

    /** The end with the less margin, -1 or 1, the lower of two alike; 0 where it is less than the drawn value at neither. */
    int worseEnd(RequirementMargin drawn) {
        double below = rank(atMinus);
        double above = rank(atPlus);
        return Math.min(below, above) < rank(drawn) ? above < below ? 1 : -1 : 0;
    }

    /** Whether a rank is less than another by more than rounding. */
    static boolean isLess(double rank, double other) {
        return rank < other - LESS * Math.abs(other);
    }

    /** For comparing: an unknown margin is the best of all where the requirement holds, the worst where it is broken, and else 0. */
    static double rank(RequirementMargin margin) {
        if (!Double.isNaN(margin.margin())) {
            return margin.margin();
        }
        return switch (margin.verdict().orElse(Verdict.FAIL)) {
            case FAIL -> -Double.MAX_VALUE;
            case UNDECIDED -> 0;
            case PASS -> Double.MAX_VALUE;
        };
    }
}
