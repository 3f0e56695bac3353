package darkrim.study.advice;

import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;

/**
 * How the room of each requirement grows with each dimension near some values, by differences to a neighbour in each dimension: a near one for exact
 * margins, a farther one for samples.
 *
 * @param at where the requirements stand
 * @param slopes for each requirement the growth of its room for one unit of each dimension, in the order of the dimensions
 */
record LocalModel(Standing at, Map<String, double[]> slopes) {
    /** The near neighbour is this share of the dimension's scale away, the far one this many scales. */
    private static final double NEAR = 0.25;

    private static final double FAR = 2.5;
    /** A sampled difference counts when it is larger than so many standard errors. */
    private static final double ERRORS = 2;
    /** A requirement stands still if so many scales of every dimension together do not mend it. */
    private static final double STILL = 20;

    static LocalModel of(Standing at, List<FreeDimension> dimensions, Standings standings, Workers workers) {
        List<Callable<Standing>> tasks = new ArrayList<>();
        for (FreeDimension each : dimensions) {
            tasks.add(() -> neighbour(at, each, NEAR, values -> standings.at(values, false)));
            tasks.add(() -> neighbour(at, each, FAR, values -> standings.at(values, true)));
        }
        List<Standing> neighbours = workers.all(tasks.stream());
        Map<String, double[]> slopes = new TreeMap<>();
        for (String requirement : at.room().keySet()) {
            boolean sampled = at.error().containsKey(requirement);
            double[] row = new double[dimensions.size()];
            for (int i = 0; i < row.length; i++) {
                Standing there = neighbours.get(2 * i + (sampled ? 1 : 0));
                row[i] = slope(at, there, requirement, dimensions.get(i).name());
            }
            slopes.put(requirement, row);
        }
        return new LocalModel(at, slopes);
    }

    private static double slope(Standing at, Standing there, String requirement, String dimension) {
        double difference = there.room(requirement) - at.room(requirement);
        double error = Math.hypot(
                at.error().getOrDefault(requirement, 0.0), there.error().getOrDefault(requirement, 0.0));
        double slope = difference / (there.values().get(dimension) - at.values().get(dimension));
        return Double.isFinite(slope) && Math.abs(difference) > ERRORS * error ? slope : 0;
    }

    private interface Look {
        Standing at(Map<String, Double> values);
    }

    private static Standing neighbour(Standing at, FreeDimension dimension, double scales, Look look) {
        double value = at.values().get(dimension.name());
        double step = scales * dimension.scale();
        double up = value + step <= dimension.most() ? step : -step;
        Standing there = look.at(with(at, dimension, value + up));
        if (there.possible() || there.stopped()) {
            return there;
        }
        return look.at(with(at, dimension, Math.max(dimension.least(), value - up)));
    }

    private static Map<String, Double> with(Standing at, FreeDimension dimension, double value) {
        Map<String, Double> values = new TreeMap<>(at.values());
        values.put(dimension.name(), value);
        return values;
    }

    /** Slopes of a requirement. */
    double[] of(String requirement) {
        return slopes.get(requirement).clone();
    }

    /** Whether a requirement fails in such a way that small changes make no difference: its surfaces are lit all over. */
    boolean standsStill(String requirement, List<FreeDimension> dimensions) {
        double reach = 0;
        double[] row = slopes.get(requirement);
        for (int i = 0; i < row.length; i++) {
            reach += Math.abs(row[i]) * dimensions.get(i).scale() * STILL;
        }
        return at.room(requirement) < -reach;
    }
}
