package darkrim.study.advice;

import java.util.List;
import java.util.Map;

/**
 * For what fails at a start so thoroughly that its margin stands still: a plane through the places where it begins to hold along the axes. With t_i
 * the distance to the place along dimension i and d_i the change, sum d_i / t_i is 1 on it and 0 at the start.
 *
 * @param dimensions what may change
 * @param start where the changes of sides were looked for
 * @param flips changes of sides along the axes
 */
record Planes(List<FreeDimension> dimensions, Map<String, Double> start, List<Flip> flips) {
    /** Coefficients of the plane of a requirement; all 0 where nothing is known. Where both ways lead across, the nearer counts. */
    double[] of(String requirement) {
        double[] plane = new double[dimensions.size()];
        for (int i = 0; i < plane.length; i++) {
            double up = slope(requirement, dimensions.get(i), true);
            double down = slope(requirement, dimensions.get(i), false);
            plane[i] = up >= down ? up : -down;
        }
        return plane;
    }

    /** How far some values are along the way to the plane of a requirement: 0 at the start, 1 on it. */
    double way(String requirement, Map<String, Double> values) {
        double[] plane = of(requirement);
        double way = 0;
        for (int i = 0; i < plane.length; i++) {
            String name = dimensions.get(i).name();
            way += plane[i] * (values.get(name) - start.get(name));
        }
        return way;
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
}
