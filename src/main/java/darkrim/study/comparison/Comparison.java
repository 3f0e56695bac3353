package darkrim.study.comparison;

import darkrim.layout.Dimension;
import darkrim.layout.FinishSpec;
import darkrim.study.CheckResult;
import java.util.List;

/**
 * What a second layout does to a first.
 *
 * @param before the first, checked
 * @param after the second, checked with the same seed
 * @param dimensions named dimensions that differ, are new or gone
 * @param finishes finishes that differ, are new or gone
 * @param partsAdded names of parts only in the second
 * @param partsGone names of parts only in the first
 * @param partsChanged parts in both whose surfaces differ
 * @param surfaces surfaces that are new, gone, moved, turned, of another shape, size or finish
 * @param beam what of the beam differs, in words
 * @param others what else is asked or looked at differently, in words
 * @param requirements every requirement of either
 * @param paths every light path of either that some sample found, those that differ first
 * @param stopped whether the work was stopped before it was done
 */
public record Comparison(
        CheckResult before,
        CheckResult after,
        List<Changed<Dimension>> dimensions,
        List<Changed<FinishSpec>> finishes,
        List<String> partsAdded,
        List<String> partsGone,
        List<PartChange> partsChanged,
        List<SurfaceChange> surfaces,
        List<Changed<String>> beam,
        List<Changed<String>> others,
        List<RequirementChange> requirements,
        List<PathChange> paths,
        boolean stopped) {
    /** Copies the lists. */
    public Comparison {
        dimensions = List.copyOf(dimensions);
        finishes = List.copyOf(finishes);
        partsAdded = List.copyOf(partsAdded);
        partsGone = List.copyOf(partsGone);
        partsChanged = List.copyOf(partsChanged);
        surfaces = List.copyOf(surfaces);
        beam = List.copyOf(beam);
        others = List.copyOf(others);
        requirements = List.copyOf(requirements);
        paths = List.copyOf(paths);
    }

    /** Whether the second layout is worse: in any requirement; not known where nothing is worse and something is open. */
    public RequirementChange.Judgement judgement() {
        List<RequirementChange.Judgement> all =
                requirements.stream().map(RequirementChange::judgement).toList();
        if (all.contains(RequirementChange.Judgement.WORSE)) {
            return RequirementChange.Judgement.WORSE;
        }
        return stopped || all.contains(RequirementChange.Judgement.CANNOT_TELL)
                ? RequirementChange.Judgement.CANNOT_TELL
                : RequirementChange.Judgement.NOT_WORSE;
    }
}
