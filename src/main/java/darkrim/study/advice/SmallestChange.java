package darkrim.study.advice;

import darkrim.study.RequirementMargin;
import java.util.List;

/**
 * The smallest change of one dimension one way that makes a requirement hold, and what it does to all.
 *
 * @param requirement the requirement that fails as written
 * @param dimension the dimension
 * @param from its value in the file, in mm, degrees or plain
 * @param to the nearest value at which the requirement was found to hold
 * @param effects verdict and margin of every requirement there, in the order of the layout; empty if the work was stopped
 */
public record SmallestChange(
        String requirement, String dimension, double from, double to, List<RequirementMargin> effects) {
    /** Copies the list. */
    public SmallestChange {
        effects = List.copyOf(effects);
    }

    /** How far the dimension moves. */
    public double change() {
        return to - from;
    }
}
