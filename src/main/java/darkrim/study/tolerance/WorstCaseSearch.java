package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Looks for the least margin of one requirement over the box of all tolerances. With few contributors every corner is looked at; with many
 * the corner that the slopes point to. From the worst place so far it goes on along one contributor at a time, in steps of the whole width
 * of the tolerance down to an eighth, and keeps each step that makes the margin less, so that a worst place inside the box is found too.
 * (Compass search: Kolda, Lewis, Torczon, SIAM Review 45, 2003.) It does not look by itself: it says where, and is told what was found.
 */
final class WorstCaseSearch {
    /** Up to this many contributors every corner is looked at. */
    static final int FEW = 4;
    /** Contributors that change the margin by less than this share of what the strongest does are left where the slopes put them. */
    private static final double NEGLIGIBLE = 0.01;

    private static final int MOST_LOOKS = 300;
    private static final double LAST_STEP = 0.25;
    private static final double LESS = 1e-9;

    private final List<Contributor> contributors;
    private final boolean few;
    private final Map<List<Double>, RequirementMargin> seen = new LinkedHashMap<>();
    private final List<Integer> strong = new ArrayList<>();
    /** Where to look next, as shares of the tolerance, by deviations. */
    private final Map<List<Double>, double[]> wanted = new LinkedHashMap<>();
    /** Shares of the tolerance, -1 to 1. */
    private double[] place;

    private RequirementMargin worst;
    private double step;
    /** Which of the steps of this width is next: two for each strong contributor, up and down. */
    private int turn;

    private boolean better;

    /**
     * @param contributors what deviates
     * @param drawn margin of the requirement as drawn
     * @param slopes how the margin follows each contributor
     */
    WorstCaseSearch(List<Contributor> contributors, RequirementMargin drawn, List<Slope> slopes) {
        this.contributors = List.copyOf(contributors);
        int count = contributors.size();
        this.few = count <= FEW;
        this.place = new double[count];
        this.worst = drawn;
        this.step = few ? 1 : 2;
        seen.put(deviations(place), drawn);
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
        want(pointedAt);
        for (int corner = 0; few && corner < 1 << count; corner++) {
            double[] at = new double[count];
            for (int i = 0; i < count; i++) {
                at[i] = (corner >> i & 1) == 0 ? -1 : 1;
            }
            want(at);
        }
        choose(slopes, drawn);
        goOn();
    }

    private void choose(List<Slope> slopes, RequirementMargin drawn) {
        double strongest = slopes.stream()
                .mapToDouble(slope -> slope.influence(drawn))
                .max()
                .orElse(0);
        for (int i = 0; i < slopes.size(); i++) {
            double influence = slopes.get(i).influence(drawn);
            if (influence > 0 && influence >= NEGLIGIBLE * strongest) {
                strong.add(i);
            }
        }
    }

    /** Where it wants to look, as deviations; nowhere once it is done. */
    List<List<Double>> next() {
        return List.copyOf(wanted.keySet());
    }

    /** How many more looks it takes at the least. */
    int left() {
        int widths = 0;
        for (double width = step; width >= LAST_STEP; width /= 2) {
            widths++;
        }
        return wanted.size() + Math.max(0, 2 * strong.size() * widths - turn);
    }

    /** How many layouts were looked at. */
    int looks() {
        return seen.size();
    }

    /**
     * Hears what was found.
     *
     * @param margins the margins at all places of {@link #next}, in their order
     */
    void found(List<RequirementMargin> margins) {
        List<double[]> places = List.copyOf(wanted.values());
        wanted.clear();
        for (int i = 0; i < places.size(); i++) {
            boolean worse = take(places.get(i), margins.get(i));
            if (worse && turn > 0) {
                better = true;
                // A step the other way would lead back.
                turn += turn % 2;
            }
        }
        goOn();
    }

    /**
     * What was found; only once it is done. Of all places seen those count whose verdict is the worst: a sampled value may be undecided farther from its
     * limit than where it passes, and a share of the pupil be too small where the margin of the whole pupil is not the least.
     */
    WorstCase result() {
        List<Double> at = deviations(place);
        RequirementMargin found = worst;
        for (Map.Entry<List<Double>, RequirementMargin> each : seen.entrySet()) {
            boolean beyondSearch = verdict(found) != verdict(worst);
            boolean alike = verdict(each.getValue()) == verdict(found);
            if (verdict(each.getValue()).isWorseThan(verdict(found))
                    || (beyondSearch && alike && Slope.rank(each.getValue()) < Slope.rank(found))) {
                at = each.getKey();
                found = each.getValue();
            }
        }
        return new WorstCase(at, found, few, seen.size());
    }

    private static Verdict verdict(RequirementMargin margin) {
        return margin.verdict().orElse(Verdict.FAIL);
    }

    /** Goes on to the next step that leads to a place not seen before. */
    private void goOn() {
        while (wanted.isEmpty() && step >= LAST_STEP && seen.size() < MOST_LOOKS) {
            if (turn == 2 * strong.size()) {
                step = better ? step : step / 2;
                better = false;
                turn = 0;
            } else {
                int contributor = strong.get(turn / 2);
                double by = turn % 2 == 0 ? step : -step;
                turn++;
                double[] at = place.clone();
                at[contributor] = Math.max(-1, Math.min(1, at[contributor] + by));
                want(at);
            }
        }
    }

    private void want(double[] at) {
        if (!seen.containsKey(deviations(at))) {
            wanted.put(deviations(at), at);
        }
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
            deviations.add(contributors.get(i).at(shares[i]) + 0.0);
        }
        return deviations;
    }
}
