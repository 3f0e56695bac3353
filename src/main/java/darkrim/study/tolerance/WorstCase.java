package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.List;

/**
 * The worst that was found within all tolerances at once: the worst verdict, and of those the least margin.
 *
 * @param deviations where
 * @param margin the margin there, with the verdict of the check
 * @param corners how many corners of the tolerances were looked at
 * @param everyCorner whether these are all
 * @param alike whether the margin was the same wherever it was looked at, so that it shows no way to a worse place
 * @param cutShort whether the search was ended before it had come to rest
 * @param looks how many layouts were looked at
 */
public record WorstCase(
        List<Double> deviations,
        RequirementMargin margin,
        int corners,
        boolean everyCorner,
        boolean alike,
        boolean cutShort,
        int looks) {
    /** Copies the list. */
    public WorstCase {
        deviations = List.copyOf(deviations);
    }

    /** What can be said of the requirement there; what cannot be built fails, and of a search cut short no pass is told. */
    public Verdict verdict() {
        Verdict found = margin.verdict().orElse(Verdict.FAIL);
        return cutShort && found == Verdict.PASS ? Verdict.UNDECIDED : found;
    }
}
