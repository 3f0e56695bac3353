package darkrim.verdict;

import darkrim.layout.ThermalShape;
import darkrim.scene.Surface;
import java.util.Map;
import java.util.function.BiPredicate;

/**
 * What was found for one surface, or one cell of its map, against a requirement.
 *
 * @param surface the surface
 * @param cell number of the cell, or {@link #WHOLE}
 * @param verdict what can be said
 * @param value the value compared: relative irradiance, or the share of the pupil, or a distance in mm; 0 where darkness is proved, NaN where no value is known or
 *     that proof is in doubt
 * @param evidence why
 */
public record Outcome(Surface surface, int cell, Verdict verdict, double value, Evidence evidence) {
    /** Stands for the whole surface. */
    public static final int WHOLE = -1;

    /** The same with the margin of its surface put into the evidence, where there is one. */
    Outcome with(Map<Surface, LightMargin> margins) {
        return margins.containsKey(surface)
                ? new Outcome(surface, cell, verdict, value, evidence.with(margins.get(surface)))
                : this;
    }

    /** The same; undecided where it passes by a proof of darkness that is in doubt: what that says of the value is not known either. */
    Outcome doubting(BiPredicate<Surface, Evidence.ProvedDark> doubtful) {
        return verdict == Verdict.PASS && evidence instanceof Evidence.ProvedDark dark && doubtful.test(surface, dark)
                ? new Outcome(surface, cell, Verdict.UNDECIDED, Double.NaN, dark.behindFacets())
                : this;
    }

    /** Whether the surface is dark behind facets, which is no proof for the curved surfaces that they stand for. */
    public boolean isDarknessInDoubt() {
        return evidence instanceof Evidence.DarkBehindFacets;
    }

    /** The surface's name, with the cell where it is one; of a clearance both surfaces. */
    public String where() {
        if (evidence instanceof Evidence.Distance distance) {
            String way = distance.raised().isPresent() ? ", on the way in" : "";
            return surface.name() + " to " + distance.second() + way + ", "
                    + (distance.shape() == ThermalShape.COLD ? "cold" : "as drawn");
        }
        if (cell == WHOLE) {
            return surface.name();
        }
        int columns = surface.grid().orElseThrow().columns();
        return surface.name() + " cell (" + (cell % columns + 1) + "," + (cell / columns + 1) + ")";
    }
}
