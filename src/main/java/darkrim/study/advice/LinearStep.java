package darkrim.study.advice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.PointValuePair;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;

/**
 * The smallest scaled change that fulfils all requirements, if each changed sides on a plane. The plane of a requirement goes through the
 * places where it changes sides along the axes: with t_i the distance to the place along dimension i and d_i the change,
 * sum d_i / t_i is 1 on it, 0 at the start. What fails at the start must get to 1 or more, what holds must stay at 1 or less. The sum of |d_i| /
 * scale_i is least (a linear programme: Dantzig's simplex method).
 */
final class LinearStep {
    /** What it costs to miss the plane of what holds and of what fails by the whole way to it: more than any change, the latter most of all. */
    private static final double MISSED = 1e4;

    private static final double STILL_FAILING = 1e6;

    private final List<FreeDimension> dimensions;
    private final Map<String, Double> start;
    private final Map<String, Boolean> holds;
    private final List<Flip> flips;

    /**
     * @param dimensions what may change
     * @param start where the changes of sides were looked for
     * @param holds which requirements hold there; the geometry is one of them
     * @param flips changes of sides along the axes
     */
    LinearStep(
            List<FreeDimension> dimensions, Map<String, Double> start, Map<String, Boolean> holds, List<Flip> flips) {
        this.dimensions = dimensions;
        this.start = start;
        this.holds = holds;
        this.flips = flips;
    }

    /**
     * The values to try; empty if the planes leave none.
     *
     * @param asked the requirements that count
     * @param reserves how far beyond, or short of, its plane each must be, as a share of the way to it
     */
    Optional<Map<String, Double>> solve(Collection<String> asked, Map<String, Double> reserves) {
        return solve(asked, reserves, false);
    }

    /** The values that miss the planes least, what fails before what holds: a place to look from anew. */
    Map<String, Double> nearest(Collection<String> asked) {
        return solve(asked, Map.of(), true).orElse(start);
    }

    private Optional<Map<String, Double>> solve(
            Collection<String> asked, Map<String, Double> reserves, boolean mayMiss) {
        int n = dimensions.size();
        // Up, down and distance from the file's value of each dimension; then how far each plane is missed.
        int width = 3 * n + (mayMiss ? asked.size() : 0);
        double[] cost = new double[width];
        List<LinearConstraint> rules = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            FreeDimension each = dimensions.get(i);
            double from = start.get(each.name());
            cost[2 * n + i] = 1 / each.scale();
            // Among equals no dimension goes both ways.
            cost[i] = 1e-6 / each.scale();
            cost[n + i] = 1e-6 / each.scale();
            rules.add(rule(width, Relationship.LEQ, each.most() - from, i, 1));
            rules.add(rule(width, Relationship.LEQ, from - each.least(), n + i, 1));
            rules.add(rule(width, Relationship.GEQ, from - each.value(), 2 * n + i, 1, i, -1, n + i, 1));
            rules.add(rule(width, Relationship.GEQ, each.value() - from, 2 * n + i, 1, i, 1, n + i, -1));
        }
        int missed = 3 * n;
        for (String requirement : asked) {
            double reserve = reserves.getOrDefault(requirement, 0.0);
            double[] plane = Arrays.copyOf(plane(requirement), width);
            boolean held = holds.get(requirement);
            if (mayMiss) {
                cost[missed] = held ? MISSED : STILL_FAILING;
                plane[missed++] = held ? -1 : 1;
            }
            rules.add(
                    held
                            ? new LinearConstraint(plane, Relationship.LEQ, 1 - reserve)
                            : new LinearConstraint(plane, Relationship.GEQ, 1 + reserve));
        }
        return solved(n, cost, rules);
    }

    private Optional<Map<String, Double>> solved(int n, double[] cost, List<LinearConstraint> rules) {
        try {
            PointValuePair best = new SimplexSolver()
                    .optimize(
                            new LinearObjectiveFunction(cost, 0),
                            new LinearConstraintSet(rules),
                            GoalType.MINIMIZE,
                            new NonNegativeConstraint(true));
            Map<String, Double> values = new LinkedHashMap<>();
            for (int i = 0; i < n; i++) {
                FreeDimension each = dimensions.get(i);
                double value = start.get(each.name()) + best.getPoint()[i] - best.getPoint()[n + i];
                values.put(each.name(), Math.max(each.least(), Math.min(each.most(), value)));
            }
            return Optional.of(values);
        } catch (MathIllegalStateException noSolution) {
            return Optional.empty();
        }
    }

    /** Two requirements, or one twice, that leave nothing by themselves. */
    Optional<Exclusion> exclusion(List<String> asked) {
        for (int i = 0; i < asked.size(); i++) {
            for (int j = 0; j <= i; j++) {
                List<String> pair = List.of(asked.get(j), asked.get(i));
                boolean single = i == j;
                if ((single && solve(List.of(asked.get(i)), Map.of()).isEmpty())
                        || (!single && solve(pair, Map.of()).isEmpty())) {
                    return Optional.of(new Exclusion(asked.get(j), asked.get(i)));
                }
            }
        }
        return Optional.empty();
    }

    private double[] plane(String requirement) {
        int n = dimensions.size();
        double[] plane = new double[3 * n];
        for (int i = 0; i < n; i++) {
            FreeDimension each = dimensions.get(i);
            double up = slope(requirement, each, true);
            double down = slope(requirement, each, false);
            // Where one way leads nearer, the other leads away.
            plane[i] = up != 0 ? up : -down;
            plane[n + i] = down != 0 ? down : -up;
        }
        return plane;
    }

    private double slope(String requirement, FreeDimension dimension, boolean up) {
        return flips.stream()
                .filter(flip -> flip.requirement().equals(requirement)
                        && flip.dimension().equals(dimension.name())
                        && flip.up() == up)
                .mapToDouble(flip -> 1 / flip.distance(start.get(dimension.name())))
                .findFirst()
                .orElse(0);
    }

    private static LinearConstraint rule(int width, Relationship relation, double bound, double... pairs) {
        double[] row = new double[width];
        for (int k = 0; k < pairs.length; k += 2) {
            row[(int) pairs[k]] = pairs[k + 1];
        }
        return new LinearConstraint(row, relation, bound);
    }
}
