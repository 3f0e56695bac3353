package darkrim.study.advice;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Moves one dimension one way from a start, in steps that grow fourfold up to the end of its range, and finds by halving where each
 * requirement first changes sides. A requirement that changes sides twice between two steps is not seen to.
 */
final class AxisSearch {
    /** Share of the way to the end that the first step goes. */
    private static final double[] STEPS = {1 / 64.0, 1 / 16.0, 1 / 4.0, 1};

    private final Trials trials;
    private final Map<String, Double> start;
    private final List<String> requirements;
    private final Trial atStart;
    private final int halvings;

    /**
     * @param trials looks at layouts
     * @param start values of all dimensions that may change
     * @param requirements all requirements
     * @param atStart what holds there
     * @param halvings how often the bracket around a change of sides is halved
     */
    AxisSearch(Trials trials, Map<String, Double> start, List<String> requirements, Trial atStart, int halvings) {
        this.trials = trials;
        this.start = start;
        this.requirements = requirements;
        this.atStart = atStart;
        this.halvings = halvings;
    }

    /** The nearest change of sides of each requirement, where there is one; what was found until then if it is stopped. */
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
            if (there.stopped()) {
                break;
            }
            if (!there.possible()) {
                refined(Flip.GEOMETRY, dimension, up, near, far, flips);
                break;
            }
            for (String requirement : List.copyOf(open)) {
                if (there.holds(requirement) != atStart.holds(requirement)) {
                    open.remove(requirement);
                    refined(requirement, dimension, up, near, far, flips);
                }
            }
            near = far;
        }
        return flips;
    }

    private void refined(
            String requirement, FreeDimension dimension, boolean up, double near, double far, List<Flip> flips) {
        double inside = near;
        double outside = far;
        for (int i = 0; i < halvings; i++) {
            double middle = (inside + outside) / 2;
            Trial trial = look(dimension, middle, requirement.isEmpty() ? List.of() : List.of(requirement));
            if (trial.stopped()) {
                return;
            }
            boolean same = requirement.isEmpty()
                    ? trial.possible()
                    : trial.possible() && trial.holds(requirement) == atStart.holds(requirement);
            if (same) {
                inside = middle;
            } else {
                outside = middle;
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
