package darkrim.study.first;

import static darkrim.study.vanes.VaneText.number;

import java.util.ArrayList;
import java.util.List;

/**
 * Dimensions of a first baffle, by similar triangles. With the pupil's radius R at the distance H, the edge at the height h, the last pixel at a
 * from the middle of its detector, the edge of the die d beyond it, the placement error t and k = 1 - h / H: the whole pupil is seen from all
 * pixels where half the opening is at least a k + R h / H + t and, at the lower end of the land, l below the edge, of an opening whose middle stands at c k
 * where its detector's stands at c, at least a (k + l / H) + R (h - l) / H + c l / H + t; and no light passes the edge of the die where it is at most (a + d) k - R h / H - t,
 * if its middle stands at k times that of the detector. Half way between the two is (a + d / 2) k.
 *
 * @param opening side of an opening at its edge, mm
 * @param step step between the middles of openings, mm; 0 where there is one
 * @param thickness thickness of the lid, mm
 * @param land height of the straight land at the edge, mm
 * @param bevel angle of the bevel from the axis of the opening, degrees
 * @param ledge width of the readout's ledge around a die, mm
 * @param wallInside distance between walls that face each other, mm
 * @param lidSide side of the lid, mm
 * @param oneForAll whether one opening stands over all detectors since no web would be left between several
 * @param conflicts what cannot be had together, a sentence each
 */
public record FirstBaffle(
        double opening,
        double step,
        double thickness,
        double land,
        double bevel,
        double ledge,
        double wallInside,
        double lidSide,
        boolean oneForAll,
        List<String> conflicts) {
    /** Thickness of the walls, mm. */
    static final double WALL = 1.5;

    private static final double THICKEST = 0.8;
    private static final double LEAST_WEB = 0.2;
    private static final double LEAST_THICKNESS = 0.1;
    private static final double LEAST_BEVEL = 30;
    private static final double MOST_BEVEL = 75;
    private static final double BEVEL_RESERVE = 5;
    private static final double LAND = 0.05;
    private static final double LEDGE = 0.3;
    /** What rounding of the lengths that are written may cost, mm. */
    private static final double AS_WRITTEN = 2e-4;
    /** Steps a millimetre to which openings are rounded. */
    private static final double HUNDREDTHS = 100;
    /** Steps a millimetre where that leaves no room: as fine as lengths are written. */
    private static final double FINEST_STEPS = 1e4;

    /** How much longer the lid is than what it carries or leaves open. */
    private static final double OVERHANG = 10;

    /** Copies the list. */
    public FirstBaffle {
        conflicts = List.copyOf(conflicts);
    }

    /** Finds the dimensions. */
    public static FirstBaffle of(FirstWishes wishes) {
        List<String> conflicts = new ArrayList<>();
        double shrink = 1 - wishes.edgeHeight() / wishes.pupilDistance();
        double cone = wishes.pupilDiameter() / 2 * wishes.edgeHeight() / wishes.pupilDistance();
        double thickest = Math.min(THICKEST, wishes.edgeHeight() / 2);
        double least = Math.max(seen(wishes, wishes.edgeHeight()), seen(wishes, wishes.edgeHeight() - land(thickest)))
                + AS_WRITTEN;
        double most = (wishes.activeHalf() + wishes.room()) * shrink - cone - wishes.placementError() - AS_WRITTEN;
        if (least > most) {
            conflicts.add(conflict(wishes));
        }
        double half = least > most
                ? roundedUp(least, HUNDREDTHS)
                : between(Math.max(least, (wishes.activeHalf() + wishes.room() / 2) * shrink), most);
        double bevel = bevel(wishes);
        double thickness = thickest;
        double step = wishes.isMosaic() ? wishes.spacing() * shrink : 0;
        boolean oneForAll = false;
        if (wishes.isMosaic()) {
            double web = step - 2 * half;
            double fitting = (web - LEAST_WEB) / (2 * StrictMath.tan(Math.toRadians(bevel)));
            oneForAll = fitting < LEAST_THICKNESS;
            thickness = oneForAll ? thickness : Math.min(thickness, fitting);
            if (oneForAll) {
                half = roundedUp(half + step * (Math.max(wishes.columns(), wishes.rows()) - 1) / 2, HUNDREDTHS);
                conflicts.add("Between openings of their own only " + number(web)
                        + " mm of the lid would be left: one opening over all detectors is written, and the edges"
                        + " of dies between them are lit. Expected a lower edge or a wider spacing.");
            }
        }
        double inside = wallInside(wishes);
        return new FirstBaffle(
                2 * half,
                step,
                thickness,
                land(thickness),
                bevel,
                ledge(wishes),
                inside,
                Math.ceil(Math.max(inside + 2 * WALL, 2 * half) + OVERHANG),
                oneForAll,
                conflicts);
    }

    /** Half the opening that shows every pixel the whole pupil, as far as its border at the height z is concerned: the outermost detector decides. */
    private static double seen(FirstWishes wishes, double z) {
        double share = z / wishes.pupilDistance();
        double middle = wishes.outermost() - wishes.activeHalf();
        return wishes.activeHalf() * (1 - share)
                + wishes.pupilDiameter() / 2 * share
                + middle * (wishes.edgeHeight() - z) / wishes.pupilDistance()
                + wishes.placementError();
    }

    private static double land(double thickness) {
        return Math.min(LAND, thickness / 4);
    }

    private static String conflict(FirstWishes wishes) {
        return "No opening can do both, show every pixel the whole pupil and keep the light off the edge of the die: an"
                + " edge at h = " + number(wishes.edgeHeight()) + " mm is above N (d - 2t) = "
                + number(wishes.fNumber()) + " (" + number(wishes.room()) + " - 2 x "
                + number(wishes.placementError()) + ") = " + number(wishes.greatestHeight())
                + " mm, or so near it that the finite distance of the pupil or the land decides. The opening that is written shows the"
                + " whole pupil. Expected a lower edge, a smaller placement error, more room on the die or a slower beam.";
    }

    /** Farther from the axis than any light that comes in, so that what lies below the land is not struck. */
    private static double bevel(FirstWishes wishes) {
        double farthest = Math.toDegrees(
                StrictMath.atan((wishes.fieldHalfWidth() + wishes.pupilDiameter() / 2) / wishes.pupilDistance()));
        return Math.min(MOST_BEVEL, Math.max(LEAST_BEVEL, Math.ceil(farthest) + BEVEL_RESERVE));
    }

    private static double ledge(FirstWishes wishes) {
        double between = wishes.spacing() - wishes.pixels() * wishes.pixelPitch() - 2 * wishes.dieMargin();
        return wishes.isMosaic() ? Math.min(LEDGE, between / 5) : LEDGE;
    }

    /** The beam fills at the height z what lies between the field, scaled by 1 - z / H, and the pupil, scaled by z / H. */
    private static double wallInside(FirstWishes wishes) {
        double widest = Math.max(
                beamHalf(wishes, wishes.edgeHeight()), beamHalf(wishes, wishes.edgeHeight() + wishes.wallHeight()));
        return 2 * Math.ceil(widest + 1);
    }

    private static double beamHalf(FirstWishes wishes, double z) {
        double share = z / wishes.pupilDistance();
        return wishes.fieldHalfWidth() * (1 - share) + wishes.pupilDiameter() / 2 * share;
    }

    /** A length up to the next hundredth of a millimetre that is allowed, or else to the next step of what is written, for which there is a reserve. */
    private static double between(double length, double most) {
        double steps = HUNDREDTHS;
        while (roundedUp(length, steps) > most && steps < FINEST_STEPS) {
            steps *= 10;
        }
        return roundedUp(length, steps);
    }

    /** Up to the next of so many steps a millimetre. */
    private static double roundedUp(double length, double steps) {
        return Math.ceil(length * steps - 1e-6) / steps;
    }
}
