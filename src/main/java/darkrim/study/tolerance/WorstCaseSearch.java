package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;

/**
 * Looks for the least margin of one requirement over the box of all tolerances. With few contributors every corner is looked at; with many
 * the corner that the slopes point to. From the worst place so far it goes on along one contributor at a time, in steps of the whole width
 * of the tolerance down to an eighth, and keeps each step that makes the margin less, so that a worst place inside the box is found too.
 * (Compass search: Kolda, Lewis, Torczon, SIAM Review 45, 2003.)
 */
final class WorstCaseSearch {
    /** Up to this many contributors every corner is looked at. */
    static final int FEW = 4;
    /** Contributors that change the margin by less than this share of what the strongest does are left where the slopes put them. */
    private static final double NEGLIGIBLE = 0.01;

    private static final int MOST_LOOKS = 300;
    private static final double LAST_STEP = 0.25;
    private static final double LESS = 1e-9;

    private final DeviatingLayout layout;
    private final String requirement;
    private final BooleanSupplier stop;
    private final Map<List<Double>, RequirementMargin> seen = new HashMap<>();
    /** Shares of the tolerance, -1 to 1. */
    private double[] place;

    private RequirementMargin worst;

    /**
     * @param layout the layout
     * @param requirement name of the requirement
     * @param drawn its margin as drawn
     * @param stop whether to end with what is found
     */
    WorstCaseSearch(DeviatingLayout layout, String requirement, RequirementMargin drawn, BooleanSupplier stop) {
        this.layout = layout;
        this.requirement = requirement;
        this.stop = stop;
        this.place = new double[layout.contributors().size()];
        this.worst = drawn;
        seen.put(layout.asDrawn(), drawn);
    }

    /** The worst case, given how the margin follows each contributor. */
    WorstCase find(List<Slope> slopes) {
        RequirementMargin drawn = worst;
        int count = slopes.size();
        double[] pointedAt = new double[count];
        for (int i = 0; i < count; i++) {
            RequirementMargin below = slopes.get(i).atMinus();
            RequirementMargin above = slopes.get(i).atPlus();
            take(only(i, -1), below);
            take(only(i, 1), above);
            int lower = Double.compare(Slope.rank(above), Slope.rank(below));
            // Where both ends are alike but worse than the drawn value either end will do.
            pointedAt[i] = lower != 0 ? -lower : Slope.rank(below) < Slope.rank(drawn) ? -1 : 0;
        }
        boolean few = count <= FEW;
        look(pointedAt);
        if (few) {
            for (int corner = 0; corner < 1 << count; corner++) {
                double[] at = new double[count];
                for (int i = 0; i < count; i++) {
                    at[i] = (corner >> i & 1) == 0 ? -1 : 1;
                }
                look(at);
            }
        }
        goOn(strong(slopes, drawn), few ? 1 : 2);
        return new WorstCase(deviations(place), worst, few, seen.size());
    }

    private static List<Integer> strong(List<Slope> slopes, RequirementMargin drawn) {
        double strongest = slopes.stream()
                .mapToDouble(slope -> slope.influence(drawn))
                .max()
                .orElse(0);
        List<Integer> strong = new ArrayList<>();
        for (int i = 0; i < slopes.size(); i++) {
            double influence = slopes.get(i).influence(drawn);
            if (influence > 0 && influence >= NEGLIGIBLE * strongest) {
                strong.add(i);
            }
        }
        return strong;
    }

    private void goOn(List<Integer> strong, double firstStep) {
        double step = firstStep;
        while (step >= LAST_STEP) {
            boolean better = false;
            for (int i : strong) {
                better |= step(i, step) || step(i, -step);
            }
            step = better ? step : step / 2;
        }
    }

    private boolean step(int contributor, double by) {
        double[] next = place.clone();
        next[contributor] = Math.max(-1, Math.min(1, next[contributor] + by));
        return look(next);
    }

    /** Looks at a place; whether it is worse than any before. */
    private boolean look(double[] at) {
        if (stop.getAsBoolean() || seen.size() >= MOST_LOOKS || seen.containsKey(deviations(at))) {
            return false;
        }
        return take(at, layout.margin(deviations(at), requirement));
    }

    private boolean take(double[] at, RequirementMargin found) {
        seen.put(deviations(at), found);
        boolean worse = Slope.rank(found) < Slope.rank(worst) - LESS * Math.abs(Slope.rank(worst));
        if (worse) {
            place = at;
            worst = found;
        }
        return worse;
    }

    private double[] only(int contributor, double share) {
        double[] at = new double[place.length];
        at[contributor] = share;
        return at;
    }

    private List<Double> deviations(double[] shares) {
        List<Double> deviations = new ArrayList<>();
        for (int i = 0; i < shares.length; i++) {
            deviations.add(layout.contributors().get(i).at(shares[i]) + 0.0);
        }
        return deviations;
    }
}
