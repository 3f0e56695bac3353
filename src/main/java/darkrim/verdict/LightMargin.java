package darkrim.verdict;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * How far direct light is from a surface; negative: how far it reaches in. docs/margins.md says what it promises.
 *
 * @param millimetres of a dark surface its dark clearance, of a lit one its shadow margin, mm
 * @param atLeast whether it is only known to be no less
 * @param setBy what sets it: surfaces that meet at an edge, a surface on which light lies, {@code field limit} or {@code pupil rim}; empty where
 *     that is not known
 * @param at the point of the surface that the light comes nearest to, or where it was found; empty where that is not known
 */
public record LightMargin(double millimetres, boolean atLeast, String setBy, Optional<Vector3D> at) {
    /** No less than a distance, mm. */
    public static LightMargin noLess(double millimetres) {
        return new LightMargin(millimetres, true, "", Optional.empty());
    }

    /** Whether a clearance ends without an edge that explains it: the surface may have more room. */
    public boolean isUnexplained() {
        return millimetres >= 0 && !atLeast && setBy.isEmpty();
    }

    /** The one that says more: an exact one, else the greater. */
    public LightMargin or(LightMargin other) {
        if (atLeast != other.atLeast) {
            return atLeast ? other : this;
        }
        return millimetres >= other.millimetres ? this : other;
    }
}
