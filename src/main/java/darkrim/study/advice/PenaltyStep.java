package darkrim.study.advice;

import java.util.ArrayList;
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
 * The step of a sequential linear programme with an exact penalty: least sum of |value - value in the file| / scale plus what rules are missed by times
 * a weight, within a box around the values (Fletcher, Practical Methods of Optimization, from memory; Dantzig's simplex method).
 */
final class PenaltyStep {
    /** What missing a rule by 1 costs: more than any change that mends it. */
    static final double MISSED = 1e4;

    private final List<FreeDimension> dimensions;

    PenaltyStep(List<FreeDimension> dimensions) {
        this.dimensions = dimensions;
    }

    /**
     * The values after the step.
     *
     * @param from the values before it
     * @param rules what it should fulfil
     * @param most how far each dimension may go, in its scales; infinite where only its range counts
     */
    Optional<Map<String, Double>> solve(Map<String, Double> from, List<Rule> rules, double most) {
        int n = dimensions.size();
        // Up, down and distance from the file's value of each dimension; then how far each rule is missed.
        int width = 3 * n + rules.size();
        double[] cost = new double[width];
        List<LinearConstraint> constraints = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            FreeDimension each = dimensions.get(i);
            double value = from.get(each.name());
            double box = most * each.scale();
            cost[2 * n + i] = 1 / each.scale();
            // Among equals no dimension goes both ways.
            cost[i] = 1e-6 / each.scale();
            cost[n + i] = 1e-6 / each.scale();
            constraints.add(rule(width, Relationship.LEQ, Math.min(box, each.most() - value), i, 1));
            constraints.add(rule(width, Relationship.LEQ, Math.min(box, value - each.least()), n + i, 1));
            constraints.add(rule(width, Relationship.GEQ, value - each.value(), 2 * n + i, 1, i, -1, n + i, 1));
            constraints.add(rule(width, Relationship.GEQ, each.value() - value, 2 * n + i, 1, i, 1, n + i, -1));
        }
        for (int r = 0; r < rules.size(); r++) {
            double[] row = new double[width];
            for (int i = 0; i < n; i++) {
                row[i] = rules.get(r).slopes().get(i);
                row[n + i] = -row[i];
            }
            row[3 * n + r] = 1;
            cost[3 * n + r] = MISSED;
            constraints.add(
                    new LinearConstraint(row, Relationship.GEQ, -rules.get(r).room()));
        }
        return solved(from, cost, constraints);
    }

    private Optional<Map<String, Double>> solved(
            Map<String, Double> from, double[] cost, List<LinearConstraint> constraints) {
        int n = dimensions.size();
        try {
            PointValuePair best = new SimplexSolver()
                    .optimize(
                            new LinearObjectiveFunction(cost, 0),
                            new LinearConstraintSet(constraints),
                            GoalType.MINIMIZE,
                            new NonNegativeConstraint(true));
            Map<String, Double> values = new LinkedHashMap<>();
            for (int i = 0; i < n; i++) {
                FreeDimension each = dimensions.get(i);
                double value = from.get(each.name()) + best.getPoint()[i] - best.getPoint()[n + i];
                // What the solver leaves of a change that is none.
                double kept = Math.abs(value - each.value()) < 1e-9 * each.scale() ? each.value() : value;
                values.put(each.name(), Math.max(each.least(), Math.min(each.most(), kept)));
            }
            return Optional.of(values);
        } catch (MathIllegalStateException noSolution) {
            return Optional.empty();
        }
    }

    /** Sum of changes from the file, in scales. */
    double change(Map<String, Double> values) {
        return dimensions.stream()
                .mapToDouble(each -> Math.abs(values.get(each.name()) - each.value()) / each.scale())
                .sum();
    }

    private static LinearConstraint rule(int width, Relationship relation, double bound, double... pairs) {
        double[] row = new double[width];
        for (int k = 0; k < pairs.length; k += 2) {
            row[(int) pairs[k]] = pairs[k + 1];
        }
        return new LinearConstraint(row, relation, bound);
    }
}
