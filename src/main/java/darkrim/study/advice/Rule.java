package darkrim.study.advice;

import java.util.Arrays;
import java.util.List;

/**
 * What a step must fulfil for one requirement: room + slopes . change is at least 0.
 *
 * @param requirement the requirement
 * @param room what there is before the step
 * @param slopes growth for one unit of each dimension
 */
record Rule(String requirement, double room, List<Double> slopes) {
    static Rule of(String requirement, double room, double[] slopes) {
        return new Rule(requirement, room, Arrays.stream(slopes).boxed().toList());
    }
}
