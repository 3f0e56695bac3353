package darkrim.study.advice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Looks for the smallest scaled change of all dimensions together that fulfils all requirements: solves for planes, looks, and shifts the planes of
 * those that do not hold, until all do; then goes back toward the last failure, and rounds.
 */
final class JointSearch {
    /** Shifts of the planes, each by this share of the way to them. */
    private static final double SHIFT = 0.08;

    private static final int SHIFTS = 16;
    private static final int HALVINGS = 3;
    /** Values are rounded to these shares of the scale, the coarsest that holds. */
    private static final double[] ROUND = {0.1, 0.01, 0.001};

    private final List<FreeDimension> dimensions;
    private final List<String> requirements;
    private final Trials trials;

    JointSearch(List<FreeDimension> dimensions, List<String> requirements, Trials trials) {
        this.dimensions = dimensions;
        this.requirements = requirements;
        this.trials = trials;
    }

    /**
     * What came of it.
     *
     * @param passing values that fulfil all in a short look, if any were found
     * @param nearest otherwise the values of which the most requirements held
     */
    record Found(Optional<Map<String, Double>> passing, Map<String, Double> nearest) {}

    /**
     * Looks from where the planes of a step were found.
     *
     * @param step the planes
     * @param start the values there
     */
    Found from(LinearStep step, Map<String, Double> start) {
        List<String> asked = new ArrayList<>(requirements);
        asked.add(Flip.GEOMETRY);
        Map<String, Double> reserves = new HashMap<>();
        asked.forEach(each -> reserves.put(each, SHIFT / 4));
        Map<String, Double> failed = start;
        Map<String, Double> nearest = start;
        long most = -1;
        for (int i = 0; i < SHIFTS && !trials.stopped(); i++) {
            Optional<Map<String, Double>> next = step.solve(asked, reserves);
            if (next.isEmpty()) {
                return new Found(Optional.empty(), most < 0 ? step.nearest(asked) : nearest);
            }
            Trial trial = trials.at(next.get(), requirements);
            if (trial.stopped()) {
                break;
            }
            if (trial.possible() && trial.holdsAll(requirements)) {
                return new Found(Optional.of(rounded(nearer(failed, next.get()))), nearest);
            }
            long holding = requirements.stream().filter(trial::holds).count();
            if (trial.possible() && holding > most) {
                most = holding;
                nearest = next.get();
            }
            failed = next.get();
            if (trial.possible()) {
                requirements.stream()
                        .filter(each -> !trial.holds(each))
                        .forEach(each -> reserves.merge(each, SHIFT, Double::sum));
            } else {
                reserves.merge(Flip.GEOMETRY, SHIFT, Double::sum);
            }
        }
        return new Found(Optional.empty(), nearest);
    }

    /** Halves the way between a failure and a pass. */
    private Map<String, Double> nearer(Map<String, Double> failed, Map<String, Double> passed) {
        Map<String, Double> low = failed;
        Map<String, Double> high = passed;
        for (int i = 0; i < HALVINGS; i++) {
            Map<String, Double> middle = new LinkedHashMap<>();
            for (FreeDimension each : dimensions) {
                middle.put(each.name(), (low.get(each.name()) + high.get(each.name())) / 2);
            }
            if (holdsAll(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    private boolean holdsAll(Map<String, Double> values) {
        Trial trial = trials.at(values, requirements);
        return !trial.stopped() && trial.holdsAll(requirements);
    }

    /** The nearest round values that hold, a little farther from the file's values if need be; as they are if none do. */
    private Map<String, Double> rounded(Map<String, Double> values) {
        for (double step : ROUND) {
            for (boolean farther : new boolean[] {false, true}) {
                Map<String, Double> round = new TreeMap<>();
                for (FreeDimension each : dimensions) {
                    round.put(each.name(), round(each, values.get(each.name()), step * each.scale(), farther));
                }
                if (holdsAll(round)) {
                    return round;
                }
            }
        }
        return values;
    }

    private static double round(FreeDimension dimension, double value, double step, boolean farther) {
        if (Math.abs(value - dimension.value()) < step * 1e-3) {
            return dimension.value();
        }
        double steps = value / step;
        double whole = !farther ? Math.rint(steps) : value > dimension.value() ? Math.ceil(steps) : Math.floor(steps);
        // By division, so that 37.1 is the number that is written 37.1.
        double round = step < 1 ? whole / Math.rint(1 / step) : whole * step;
        return round >= dimension.least() && round <= dimension.most() ? round : value;
    }
}
