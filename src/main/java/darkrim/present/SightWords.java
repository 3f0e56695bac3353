package darkrim.present;

import darkrim.study.PointSight;
import darkrim.study.SurfacePoint;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What a point sees, in words. */
final class SightWords {
    /** Shares closer to 0 or 1 than this are rounding. */
    private static final double ROUNDING = 1e-12;
    /** Above this share what is missing is the figure that matters. */
    private static final double NEARLY_ALL = 0.995;

    private SightWords() {}

    /** Such as {@code sees 43.2 % of the pupil}. */
    static String verdict(double share) {
        if (isNone(share)) {
            return "sees none of the pupil";
        }
        if (isWhole(share)) {
            return "sees the whole pupil";
        }
        return share > NEARLY_ALL
                ? "sees all but " + percent(1 - share) + " of the pupil"
                : "sees " + percent(share) + " of the pupil";
    }

    /** Whether it is 0 but for rounding. */
    static boolean isNone(double share) {
        return share <= ROUNDING;
    }

    /** Whether it is 1 but for rounding. */
    static boolean isWhole(double share) {
        return share >= 1 - ROUNDING;
    }

    /** Three digits that matter, such as {@code 43.2 %}; what is not quite all is never rounded up to it. */
    static String percent(double share) {
        if (isWhole(share)) {
            return "100 %";
        }
        if (share > NEARLY_ALL) {
            return "100 % less " + Figures.three(100 * (1 - share)) + " %";
        }
        return isNone(share) ? "0 %" : Figures.three(100 * share) + " %";
    }

    /** Such as {@code mosaic/die[1,1]/active at 0.5,0.5}. */
    static String place(SurfacePoint at) {
        return Printable.of(at.surface().name()) + " at " + Figures.limit(at.u()) + "," + Figures.limit(at.v());
    }

    /** Where the point lies and which way it faces. */
    static String position(SurfacePoint at) {
        return EvidenceWords.point(at.position()) + " mm, facing " + direction(at.normal());
    }

    private static String direction(Vector3D normal) {
        String[] axes = {"x", "y", "z"};
        for (int k = 0; k < axes.length; k++) {
            double along = normal.toArray()[k];
            if (Math.abs(along) > 1 - ROUNDING) {
                return (along > 0 ? "+" : "-") + axes[k];
            }
        }
        return EvidenceWords.point(normal);
    }

    /** What the field limit and the horizon of the surface take, before any part does. */
    static String withoutParts(PointSight sight) {
        double lit = sight.withoutParts().areaFraction();
        boolean limited = sight.scene().beam().fieldLimit().isPresent();
        if (isWhole(lit)) {
            return (limited ? "The field limit takes nothing here: without" : "The beam has no field limit: without")
                    + " any part in the way the point would see the whole pupil.";
        }
        String rest = unlit(sight);
        return isNone(lit)
                ? "Even without any part in the way the point would see none of the pupil: all of it lies " + rest + "."
                : "Without any part in the way the point would see " + percent(lit) + " of the pupil; the rest lies "
                        + rest + ".";
    }

    /** Where that part of the pupil lies that sends the point no light whatever the parts do. */
    static String unlit(PointSight sight) {
        boolean behind = sight.obstruction().behind() > 0;
        boolean beyond = sight.obstruction().beyondField() > 0;
        if (behind != beyond) {
            return behind ? "behind the surface" : "beyond the field limit";
        }
        return "behind the surface or beyond the field limit";
    }
}
