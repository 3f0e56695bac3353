package darkrim.study.advice;

import java.util.Map;
import java.util.TreeMap;

/**
 * Where the requirements stand when dimensions have some values, in numbers that an optimiser can follow.
 *
 * @param values values of the dimensions that may change, in mm, degrees or plain
 * @param room how far each requirement is from failing, negative where it fails: mm where its margin is in mm, a share of the limit otherwise
 * @param error standard error of the room of those that are sampled
 * @param possible whether there is such a layout; if not, no room is known
 * @param stopped whether the look was cut short: then it says nothing
 */
record Standing(
        Map<String, Double> values,
        Map<String, Double> room,
        Map<String, Double> error,
        boolean possible,
        boolean stopped) {
    Standing {
        values = new TreeMap<>(values);
        room = new TreeMap<>(room);
        error = Map.copyOf(error);
    }

    /** Room of a requirement; NaN where it is not known. */
    double room(String requirement) {
        return room.getOrDefault(requirement, Double.NaN);
    }

    /** Whether there is room in every requirement. */
    boolean holds() {
        return possible && room.values().stream().allMatch(each -> each >= 0);
    }
}
