package darkrim.study.advice;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Moves one dimension one way from a start, in steps that grow fourfold up to the end of its range, and finds by halving where each
 * requirement that fails first holds. One that holds only between two steps is not seen to.
 */
final class AxisSearch {
    /** Share of the way to the end that the first step goes. */
    private static final double[] STEPS = {1 / 64.0, 1 / 16.0, 1 / 4.0, 1};

    /** How often the bracket around a change of sides is halved. */
    private static final int HALVINGS = 6;

    private final Trials trials;
    private final Map<String, Double> start;
    private final Collection<String> requirements;

    /**
     * @param trials looks at layouts
     * @param start values of all dimensions that may change
     * @param requirements requirements that fail there
     */
    AxisSearch(Trials trials, Map<String, Double> start, Collection<String> requirements) {
        this.trials = trials;
        this.start = start;
        this.requirements = requirements;
    }

    /** A dimension within the part of its range, around the start, in which layouts are possible. */
    FreeDimension possible(FreeDimension dimension) {
        double from = start.get(dimension.name());
        return dimension.within(
                farthestPossible(dimension, from, dimension.least()),
                farthestPossible(dimension, from, dimension.most()));
    }

    /** The nearest value at which each requirement holds, where there is one; what was found until then if it is stopped. */
    List<Flip> along(FreeDimension dimension, boolean up) {
        double from = start.get(dimension.name());
        double end = up ? dimension.most() : dimension.least();
        List<Flip> flips = new ArrayList<>();
        List<String> open = new ArrayList<>(requirements);
        double near = from;
        for (double step : STEPS) {
            double far = from + step * (end - from);
            if (far == from || open.isEmpty()) {
                break;
            }
            Trial there = look(dimension, far, open);
            if (there.stopped() || !there.possible()) {
                break;
            }
            for (String requirement : List.copyOf(open)) {
                if (there.holds(requirement)) {
                    open.remove(requirement);
                    refined(requirement, dimension, up, near, far, flips);
                }
            }
            near = far;
        }
        return flips;
    }

    private double farthestPossible(FreeDimension dimension, double near, double far) {
        if (look(dimension, far, List.of()).possible()) {
            return far;
        }
        double inside = near;
        double outside = far;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (inside + outside) / 2;
            if (look(dimension, middle, List.of()).possible()) {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        return inside;
    }

    private void refined(
            String requirement, FreeDimension dimension, boolean up, double near, double far, List<Flip> flips) {
        double inside = near;
        double outside = far;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (inside + outside) / 2;
            Trial trial = look(dimension, middle, List.of(requirement));
            if (trial.stopped()) {
                return;
            }
            if (trial.holds(requirement)) {
                outside = middle;
            } else {
                inside = middle;
            }
        }
        flips.add(new Flip(requirement, dimension.name(), up, inside, outside));
    }

    private Trial look(FreeDimension dimension, double value, Collection<String> asked) {
        Map<String, Double> chosen = new TreeMap<>(start);
        chosen.put(dimension.name(), value);
        return trials.at(chosen, asked);
    }
}
