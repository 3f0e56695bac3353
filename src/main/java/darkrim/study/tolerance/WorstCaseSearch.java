package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * Looks for the least margin of one requirement over the box of all tolerances. With few contributors every corner is looked at; with many
 * the corner that the slopes point to, and a design of others ({@link CornerDesign}). Contributors that make the margin no less by themselves
 * are then looked at beyond their tolerance ({@link BeyondTolerance}), and the corner that this points to. From the worst place so far it goes
 * on along one contributor at a time, in steps of the whole width of the tolerance down to an eighth, and keeps each step that makes the margin
 * less, so that a worst place inside the box is found too. (Compass search: Kolda, Lewis, Torczon, SIAM Review 45, 2003.) It does not look by
 * itself: it says where, and is told what was found.
 */
final class WorstCaseSearch {
    /** Up to this many contributors every corner is looked at. */
    static final int FEW = 4;
    /** Up to this many where the margin says nothing at the ends of the tolerances. */
    static final int FEW_ALIKE = 6;
    /** Contributors that change the margin by less than this share of what the strongest does are left where they were put. */
    private static final double NEGLIGIBLE = 0.01;
    /** Steps at most: for each contributor that is followed so many, five times what it takes to find that none leads on. */
    private static final int MOST_STEPS = 40;

    private static final int LEAST_MOST_STEPS = 300;
    /** How often contributors are looked at beyond their tolerance, each time from the corner found before. */
    private static final int ROUNDS = 3;

    private static final double LAST_STEP = 0.25;

    private final List<Contributor> contributors;
    private final boolean everyCorner;
    private final double drawn;
    private final Map<List<Double>, RequirementMargin> seen = new LinkedHashMap<>();
    /** Those that are followed step by step. */
    private final TreeSet<Integer> strong = new TreeSet<>();
    /** Those whose worse end is not known. */
    private final TreeSet<Integer> open = new TreeSet<>();
    /** Where to look next, as shares of the tolerance, by deviations. */
    private final Map<List<Double>, double[]> wanted = new LinkedHashMap<>();
    /** Shares of the tolerance, -1 to 1. */
    private double[] place;

    private RequirementMargin worst;
    private double strongest;
    private int looksBeyond;
    private int rounds;
    private BeyondTolerance beyond;
    /** The corner that the looks beyond the tolerances point to; null where none does. */
    private double[] follow;

    private double step;
    /** Which of the steps of this width is next: two for each strong contributor, up and down. */
    private int turn;

    private int steps;
    private boolean better;

    /**
     * @param contributors what deviates
     * @param drawn margin of the requirement as drawn
     * @param slopes how the margin follows each contributor
     */
    WorstCaseSearch(List<Contributor> contributors, RequirementMargin drawn, List<Slope> slopes) {
        this.contributors = List.copyOf(contributors);
        int count = contributors.size();
        this.place = new double[count];
        this.worst = drawn;
        this.drawn = Slope.rank(drawn);
        seen.put(deviations(place), drawn);
        double[] pointedAt = new double[count];
        for (int i = 0; i < count; i++) {
            take(only(i, -1), slopes.get(i).atMinus());
            take(only(i, 1), slopes.get(i).atPlus());
            pointedAt[i] = slopes.get(i).worseEnd(drawn);
        }
        choose(slopes, drawn);
        this.everyCorner = count <= (strong.isEmpty() ? FEW_ALIKE : FEW);
        this.step = everyCorner ? 1 : 2;
        want(pointedAt);
        (everyCorner ? CornerDesign.every(count) : CornerDesign.mirrored(count)).forEach(this::want);
        goOn();
    }

    private void choose(List<Slope> slopes, RequirementMargin drawn) {
        strongest = slopes.stream()
                .mapToDouble(slope -> slope.fall(drawn))
                .filter(WorstCaseSearch::isMeasured)
                .max()
                .orElse(0);
        for (int i = 0; i < slopes.size(); i++) {
            // One that makes the margin more to both sides may have its worst place between.
            if (isStrong(slopes.get(i).influence(drawn))) {
                strong.add(i);
            }
            if (!isStrong(slopes.get(i).fall(drawn))) {
                open.add(i);
            }
        }
    }

    private boolean isStrong(double change) {
        return change > 0 && change >= NEGLIGIBLE * strongest;
    }

    /** Whether a fall is one between margins, not one to where none is known. */
    private static boolean isMeasured(double fall) {
        return fall < Double.MAX_VALUE / 2;
    }

    /** Where it wants to look, as deviations; nowhere once it is done. */
    List<List<Double>> next() {
        return beyond == null
                ? List.copyOf(wanted.keySet())
                : beyond.next().stream().map(this::deviations).toList();
    }

    /** How many more looks it takes at the least. */
    int left() {
        int widths = 0;
        for (double width = step; width >= LAST_STEP; width /= 2) {
            widths++;
        }
        return next().size() + Math.max(0, 2 * strong.size() * widths - turn);
    }

    /** How many layouts were looked at. */
    int looks() {
        return seen.size() + looksBeyond;
    }

    /**
     * Hears what was found.
     *
     * @param margins the margins at all places of {@link #next}, in their order
     */
    void found(List<RequirementMargin> margins) {
        if (beyond != null) {
            looksBeyond += margins.size();
            beyond.found(margins);
            if (beyond.next().isEmpty()) {
                follow();
            }
        } else {
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
        int corners = (int) seen.keySet().stream().filter(this::isCorner).count();
        boolean cutShort = step >= LAST_STEP && steps >= most();
        return new WorstCase(at, found, corners, everyCorner, alike(), cutShort, looks());
    }

    private boolean alike() {
        return seen.values().stream().allMatch(margin -> Slope.rank(margin) == drawn);
    }

    private static Verdict verdict(RequirementMargin margin) {
        return margin.verdict().orElse(Verdict.FAIL);
    }

    private int most() {
        return Math.max(LEAST_MOST_STEPS, MOST_STEPS * strong.size());
    }

    /** Goes on to what leads to a place not seen before. */
    private void goOn() {
        settle();
        while (beyond == null && wanted.isEmpty() && goesBeyond()) {
            rounds++;
            BeyondTolerance next = new BeyondTolerance(contributors, place, Slope.rank(worst), List.copyOf(open));
            if (!next.next().isEmpty()) {
                beyond = next;
            }
        }
        // Where the margin is the same everywhere a step shows no way either.
        boolean falls = !alike();
        while (beyond == null && wanted.isEmpty() && falls && step >= LAST_STEP && steps < most()) {
            step();
        }
    }

    private boolean goesBeyond() {
        return rounds < ROUNDS && !everyCorner && !open.isEmpty() && verdict(worst) != Verdict.FAIL;
    }

    private void step() {
        if (turn >= 2 * strong.size()) {
            step = better ? step : step / 2;
            better = false;
            turn = 0;
            return;
        }
        int contributor = List.copyOf(strong).get(turn / 2);
        double by = turn % 2 == 0 ? step : -step;
        turn++;
        double[] at = place.clone();
        at[contributor] = Math.max(-1, Math.min(1, at[contributor] + by));
        want(at);
        steps += wanted.size();
    }

    /** Takes what the looks beyond the tolerances say, and asks for the corner that they point to. */
    private void follow() {
        follow = place.clone();
        beyond.sides().forEach((contributor, side) -> {
            follow[contributor] = side;
            open.remove(contributor);
            if (isStrong(beyond.fall(contributor))) {
                strong.add(contributor);
            }
        });
        rounds = beyond.sides().isEmpty() ? ROUNDS : rounds;
        beyond = null;
        want(follow);
    }

    /** Goes to the corner that was followed unless the margin is more there: where it is alike, the next looks are from there. */
    private void settle() {
        if (follow != null && wanted.isEmpty()) {
            RequirementMargin there = seen.get(deviations(follow));
            if (Slope.isLess(Slope.rank(worst), Slope.rank(there))) {
                rounds = ROUNDS;
            } else {
                place = follow;
                worst = there;
            }
            follow = null;
        }
    }

    private void want(double[] at) {
        if (!seen.containsKey(deviations(at))) {
            wanted.put(deviations(at), at);
        }
    }

    private boolean isCorner(List<Double> deviations) {
        for (int i = 0; i < deviations.size(); i++) {
            double deviation = deviations.get(i);
            if (deviation != contributors.get(i).at(-1)
                    && deviation != contributors.get(i).at(1)) {
                return false;
            }
        }
        return true;
    }

    private boolean take(double[] at, RequirementMargin found) {
        seen.put(deviations(at), found);
        boolean worse = Slope.isLess(Slope.rank(found), Slope.rank(worst));
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
