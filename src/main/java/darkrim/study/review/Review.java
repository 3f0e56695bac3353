package darkrim.study.review;

import darkrim.scene.Surface;
import darkrim.study.CheckResult;
import darkrim.study.RequirementMargin;
import darkrim.study.comparison.Comparison;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.section.LayoutSection;
import darkrim.study.tolerance.ToleranceResult;
import java.util.List;
import java.util.Optional;

/**
 * All that a review tells of a layout.
 *
 * @param result what the check found
 * @param margins margins of the requirements, in their order
 * @param lit the light on its surfaces
 * @param mapped the surfaces that are shown as maps, in the order of the layout
 * @param left how many more could be
 * @param paths ways of light that are drawn
 * @param sections sections that are drawn
 * @param comparison what differs from another layout, if one was given
 * @param tolerance what the tolerances do, if that was asked for
 * @param inputs the files that were read
 * @param stopped whether the work was stopped before its end
 */
public record Review(
        CheckResult result,
        List<RequirementMargin> margins,
        LitLayout lit,
        List<Surface> mapped,
        int left,
        List<DrawnPath> paths,
        List<LayoutSection> sections,
        Optional<Comparison> comparison,
        Optional<ToleranceResult> tolerance,
        List<InputHash> inputs,
        boolean stopped) {
    /** Copies the lists. */
    public Review {
        margins = List.copyOf(margins);
        mapped = List.copyOf(mapped);
        paths = List.copyOf(paths);
        sections = List.copyOf(sections);
        inputs = List.copyOf(inputs);
    }
}
