package darkrim.shadow;

import java.util.function.DoublePredicate;

/**
 * Two distances between which a limit lies: something holds up to it and not beyond, or was not seen to.
 *
 * @param low it holds here, or this is 0, mm
 * @param high it does not hold here; infinite if it holds at the farthest, which is then {@code low}
 */
record LimitBracket(double low, double high) {
    /** A guess is first trusted to within this, mm: a margin hardly bends over the small steps between layouts. */
    private static final double TRUSTED = 2e-6;

    private static final double FIRST_STEP = 0.01;

    /** Whether no limit was found up to the farthest. */
    boolean isCapped() {
        return Double.isInfinite(high);
    }

    /** Looks outward from 0 in steps that double. */
    static LimitBracket fromZero(DoublePredicate holds, double farthest) {
        double low = 0;
        double high = Math.min(FIRST_STEP, farthest);
        while (holds.test(high)) {
            low = high;
            if (high >= farthest) {
                return new LimitBracket(farthest, Double.POSITIVE_INFINITY);
            }
            high = Math.min(farthest, 2 * high);
        }
        return new LimitBracket(low, high);
    }

    /** Looks to the side of a guess on which the limit lies, in steps that grow eightfold. */
    static LimitBracket around(double guess, DoublePredicate holds, double farthest) {
        double at = Math.min(farthest, Math.max(0, guess));
        double step = TRUSTED;
        if (holds.test(at)) {
            double low = at;
            while (low < farthest) {
                double high = Math.min(farthest, low + step);
                if (!holds.test(high)) {
                    return new LimitBracket(low, high);
                }
                low = high;
                step *= 8;
            }
            return new LimitBracket(farthest, Double.POSITIVE_INFINITY);
        }
        double high = at;
        while (high > 0) {
            double low = Math.max(0, high - step);
            if (low == 0 || holds.test(low)) {
                return new LimitBracket(low, high);
            }
            high = low;
            step *= 8;
        }
        return new LimitBracket(0, 0);
    }

    /**
     * Narrows it until it is no wider than a fineness.
     *
     * @param fineness the fineness, mm
     * @param share the fineness as a share of the limit, where that is more
     * @param at where in the interval to look: at less than half where finding that it does not hold costs more than that it does
     */
    LimitBracket narrowed(DoublePredicate holds, double fineness, double share, double at) {
        double from = low;
        double to = high;
        while (!isCapped() && to - from > Math.max(fineness, share * to)) {
            double between = from + at * (to - from);
            if (holds.test(between)) {
                from = between;
            } else {
                to = between;
            }
        }
        return new LimitBracket(from, to);
    }
}
