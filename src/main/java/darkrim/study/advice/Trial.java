package darkrim.study.advice;

import java.util.List;
import java.util.Map;

/**
 * What a layout with other values shows, in the short look that a search takes.
 *
 * @param holds whether each requirement that was looked at holds
 * @param possible whether there is such a layout
 * @param stopped whether the look was cut short: then it says nothing
 */
record Trial(Map<String, Boolean> holds, boolean possible, boolean stopped) {
    Trial {
        holds = Map.copyOf(holds);
    }

    /** Whether a requirement holds; an impossible layout fulfils nothing. */
    boolean holds(String requirement) {
        return possible && holds.getOrDefault(requirement, false);
    }

    /** Whether all of some requirements hold. */
    boolean holdsAll(List<String> requirements) {
        return requirements.stream().allMatch(this::holds);
    }
}
