package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Looks which way a contributor makes the margin less that does not do so within its own tolerance: from one place, one contributor at a
 * time, 4 times as far as its tolerance, 16 times and so on, up to as many times as there are contributors. Many that say nothing alone may
 * break a requirement together: if they do so in a straight line, the strongest of n is seen at n times its tolerance at the latest. What is
 * found there is no part of any worst case: it says which corner to look at.
 */
final class BeyondTolerance {
    private static final double WIDER = 4;

    private final List<Contributor> contributors;
    private final double[] base;
    private final double atBase;
    private final List<Integer> open;
    private final List<double[]> wanted = new ArrayList<>();
    private final List<Integer> moved = new ArrayList<>();
    private final Map<Integer, Double> sides = new TreeMap<>();
    private final Map<Integer, Double> falls = new TreeMap<>();
    private double factor = 1;

    /**
     * @param contributors what deviates
     * @param base where to look from, shares of the tolerances
     * @param atBase the rank of the margin there
     * @param open numbers of the contributors whose way is not known
     */
    BeyondTolerance(List<Contributor> contributors, double[] base, double atBase, List<Integer> open) {
        this.contributors = contributors;
        this.base = base.clone();
        this.atBase = atBase;
        this.open = new ArrayList<>(open);
        goOn();
    }

    /** Where it wants to look, as shares of the tolerances; nowhere once it is done. */
    List<double[]> next() {
        return List.copyOf(wanted);
    }

    /** Which end of the tolerance is the worse, -1 or 1, by the number of the contributor; only once it is done. */
    Map<Integer, Double> sides() {
        return sides;
    }

    /** By how much the margin falls on the way to that end, if it falls evenly; only once it is done. */
    double fall(int contributor) {
        return falls.get(contributor);
    }

    /** Hears the margins at all places of {@link #next}, in their order. */
    void found(List<RequirementMargin> margins) {
        Map<Integer, Double> least = new TreeMap<>();
        for (int i = 0; i < margins.size(); i++) {
            int contributor = moved.get(i);
            double rank = Slope.rank(margins.get(i));
            // What cannot be built so far out says nothing of what lies within the tolerance.
            boolean says = margins.get(i).impossible().isEmpty() && Slope.isLess(rank, atBase);
            if (says && rank < least.getOrDefault(contributor, Double.POSITIVE_INFINITY)) {
                least.put(contributor, rank);
                sides.put(contributor, Math.signum(wanted.get(i)[contributor]));
                falls.put(contributor, (atBase - rank) / factor);
            }
        }
        open.removeAll(least.keySet());
        goOn();
    }

    private void goOn() {
        wanted.clear();
        moved.clear();
        boolean farEnough = factor >= contributors.size();
        factor *= WIDER;
        if (farEnough) {
            return;
        }
        for (int contributor : open) {
            if (contributors.get(contributor).tolerance().minus() > 0) {
                want(contributor, -factor);
            }
            if (contributors.get(contributor).tolerance().plus() > 0) {
                want(contributor, factor);
            }
        }
    }

    private void want(int contributor, double share) {
        double[] at = base.clone();
        at[contributor] = share;
        wanted.add(at);
        moved.add(contributor);
    }
}
