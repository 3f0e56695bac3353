package darkrim.study.tolerance;

import java.util.List;

/**
 * One look at a layout.
 *
 * @param deviations of the contributors, in their order
 * @param marginOf name of the one requirement that is judged and whose margin is measured; empty: all are judged
 */
record Look(List<Double> deviations, String marginOf) {
    /** Copies the list. */
    Look {
        deviations = List.copyOf(deviations);
    }

    /** All requirements are judged. */
    static Look all(List<Double> deviations) {
        return new Look(deviations, "");
    }
}
