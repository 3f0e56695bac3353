package darkrim.study.advice;

import darkrim.study.CheckResult;
import darkrim.study.RequirementMargin;
import java.util.List;
import java.util.Optional;

/**
 * What to change so that a layout passes.
 *
 * @param before the full check of the layout as written
 * @param margins the margin of each requirement as written, in the order of the layout
 * @param dimensions what may change, and within which range
 * @param slopes for each requirement that does not pass and each dimension
 * @param changes for each requirement that does not pass and each dimension, the smallest change either way that makes it hold
 * @param open requirements that do not pass, but hold in a short look at the layout as written: for them no change is looked for, more samples decide
 * @param proposal values with which a short look finds all requirements fulfilled, if any were found, with the full check of them
 * @param nearest values that come nearest, where no proposal was found
 * @param exclusion two requirements that exclude each other within the ranges, as far as a straight-line model at the nearest values tells
 * @param blackness how black each finish must be, as written
 * @param stopped whether the work was stopped before it was done
 */
public record Advice(
        CheckResult before,
        List<RequirementMargin> margins,
        List<FreeDimension> dimensions,
        List<Slope> slopes,
        List<SmallestChange> changes,
        List<String> open,
        Optional<Proposal> proposal,
        Optional<Nearest> nearest,
        Optional<Exclusion> exclusion,
        List<Blackness> blackness,
        boolean stopped) {
    /** Copies the lists. */
    public Advice {
        margins = List.copyOf(margins);
        dimensions = List.copyOf(dimensions);
        slopes = List.copyOf(slopes);
        changes = List.copyOf(changes);
        open = List.copyOf(open);
        blackness = List.copyOf(blackness);
    }

    /** Whether every requirement that does not pass holds in a short look: nothing needs to change, as far as that tells. */
    public boolean isOpenAlone() {
        return !stopped && proposal.isEmpty() && nearest.isEmpty() && !open.isEmpty();
    }

    /** The requirements that do not pass as written, in the order of the layout. */
    public List<RequirementMargin> wanting() {
        return margins.stream().filter(figure -> !figure.holds()).toList();
    }
}
