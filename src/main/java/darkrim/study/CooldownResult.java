package darkrim.study;

import darkrim.assembly.OpeningShift;
import darkrim.layout.Cooldown;
import darkrim.material.Material;
import darkrim.shadow.OpeningMargin;
import darkrim.verdict.Verdict;
import java.util.List;

/**
 * What the cool-down does: a layout that is judged in its cold shape beside the same in its shape as drawn.
 *
 * @param cooldown the temperatures
 * @param warm verdicts and margins in the shape as drawn, in the order of the layout
 * @param cold verdicts and margins of what was judged, in the same order; of a clearance they are the worst of all that it asks
 * @param warmVerdict what can be said of all requirements together in the shape as drawn
 * @param warmOpenings how far sides and corners of openings can be moved in the shape as drawn, where that was looked for
 * @param openings how far the openings move against their dies
 * @param materials what the parts are made of
 */
public record CooldownResult(
        Cooldown cooldown,
        List<RequirementMargin> warm,
        List<RequirementMargin> cold,
        Verdict warmVerdict,
        List<OpeningMargin> warmOpenings,
        List<OpeningShift> openings,
        List<Material> materials) {
    /** Copies the lists. */
    public CooldownResult {
        warm = List.copyOf(warm);
        cold = List.copyOf(cold);
        warmOpenings = List.copyOf(warmOpenings);
        openings = List.copyOf(openings);
        materials = List.copyOf(materials);
    }
}
