package darkrim.study;

import darkrim.verdict.Plan;
import java.io.Serializable;

/**
 * How the points of a study are checked, all alike.
 *
 * @param batches batches of samples that each number gets which is sampled
 * @param measured which numbers are
 * @param margins which margins of direct light are looked for
 */
public record PointSettings(int batches, Plan.Measured measured, MarginScope margins) implements Serializable {
    /** Verdicts only: what proof decides is not sampled, and no margins are looked for. */
    public static PointSettings verdicts(int batches) {
        return new PointSettings(batches, Plan.Measured.UNDECIDED, MarginScope.NONE);
    }

    /** Every value, for curves. */
    public static PointSettings values(int batches, MarginScope margins) {
        return new PointSettings(batches, Plan.Measured.VALUES, margins);
    }

    Plan plan() {
        return new Plan(batches, measured, 1);
    }
}
