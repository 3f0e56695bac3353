package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import java.util.List;

/**
 * The worst that was found within all tolerances at once: the worst verdict, and of those the least margin.
 *
 * @param deviations where
 * @param margin the margin there, with the verdict of the check
 * @param everyCorner whether every corner of the tolerances was looked at; otherwise those that the slopes point to
 * @param looks how many layouts were looked at
 */
public record WorstCase(List<Double> deviations, RequirementMargin margin, boolean everyCorner, int looks) {
    /** Copies the list. */
    public WorstCase {
        deviations = List.copyOf(deviations);
    }
}
