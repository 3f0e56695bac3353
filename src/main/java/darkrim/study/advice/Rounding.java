package darkrim.study.advice;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;

/** Rounds values as a drawing has them, the coarsest way that still passes. */
record Rounding(List<FreeDimension> dimensions) {
    /** Steps, mm, degrees or a share of a plain number's power of ten. */
    private static final double[] STEPS = {0.1, 0.05, 0.01, 0.001};

    /**
     * The nearest round values that pass, a little farther from the file's values if need be; as they are if that passes and no round ones do.
     *
     * @param passes whether values pass
     */
    Optional<Map<String, Double>> of(Map<String, Double> values, Predicate<Map<String, Double>> passes) {
        for (double step : STEPS) {
            for (boolean farther : new boolean[] {false, true}) {
                Map<String, Double> round = new TreeMap<>();
                for (FreeDimension each : dimensions) {
                    round.put(each.name(), round(each, values.get(each.name()), step * each.unitSize(), farther));
                }
                if (passes.test(round)) {
                    return Optional.of(round);
                }
            }
        }
        return passes.test(values) ? Optional.of(values) : Optional.empty();
    }

    /** A value rounded away from the file's value to a thousandth of 1 mm, 1 deg or a plain number's power of ten; as it is if that leaves the range. */
    static double outward(FreeDimension dimension, double value) {
        return round(dimension, value, STEPS[STEPS.length - 1] * dimension.unitSize(), true);
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
