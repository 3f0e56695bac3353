package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;

/**
 * How the margin of a requirement follows one contributor.
 *
 * @param atMinus the margin at the lower end of the tolerance, all else as drawn
 * @param atPlus the margin at the upper end
 * @param perUnit change of the margin for a deviation of 1 mm, 1 degree or 1, over the whole tolerance; NaN where a margin is not known
 */
public record Slope(RequirementMargin atMinus, RequirementMargin atPlus, double perUnit) {
    /** The secant over the tolerance; from the drawn value to one end where the other end is not known. */
    static Slope of(Contributor contributor, RequirementMargin drawn, RequirementMargin atMinus, RequirementMargin atPlus) {
        double minus = contributor.tolerance().minus();
        double plus = contributor.tolerance().plus();
        boolean below = atMinus.isKnown();
        boolean above = atPlus.isKnown();
        double slope = Double.NaN;
        if (below && above) {
            slope = (atPlus.margin() - atMinus.margin()) / (plus + minus);
        } else if (drawn.isKnown() && above && plus > 0) {
            slope = (atPlus.margin() - drawn.margin()) / plus;
        } else if (drawn.isKnown() && below && minus > 0) {
            slope = (drawn.margin() - atMinus.margin()) / minus;
        }
        return new Slope(atMinus, atPlus, slope);
    }

    /** By how much the margin differs between the lower end, the drawn value and the upper end. */
    double influence(RequirementMargin drawn) {
        double low = Math.min(rank(drawn), Math.min(rank(atMinus), rank(atPlus)));
        double high = Math.max(rank(drawn), Math.max(rank(atMinus), rank(atPlus)));
        return high == low ? 0 : high - low;
    }

    /** For comparing: an unknown margin is the best of all, unless the requirement is broken. */
    static double rank(RequirementMargin margin) {
        if (!Double.isNaN(margin.margin())) {
            return margin.margin();
        }
        boolean broken = margin.verdict().filter(darkrim.verdict.Verdict.FAIL::equals).isPresent();
        return broken ? -Double.MAX_VALUE : Double.MAX_VALUE;
    }
}
