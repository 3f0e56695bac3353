package darkrim.study.first;

import static darkrim.study.vanes.VaneText.number;

import java.util.Optional;

/**
 * What is known before there is a drawing. All detectors are square and alike.
 *
 * @param columns detectors along x
 * @param rows detectors along y
 * @param pixels pixels along a side of a detector, reference pixels included
 * @param pixelPitch pixel pitch, mm
 * @param referencePixels width of the border of reference pixels, in pixels
 * @param spacing step between the centres of detectors, mm; without meaning for one detector
 * @param dieMargin from the last pixel, a reference pixel or not, to the edge of the die, mm
 * @param pupilDistance from the focal plane to the pupil, mm
 * @param pupilDiameter diameter of the pupil, mm
 * @param fieldHalfWidth half the side of the square that the optics light in the focal plane, mm
 * @param edgeHeight height of the edges of the openings above the active surface, mm
 * @param placementError total placement error a side between opening and detector, mm
 * @param wallHeight height of the walls on the lid, mm; 0 for none
 */
public record FirstWishes(
        int columns,
        int rows,
        int pixels,
        double pixelPitch,
        int referencePixels,
        double spacing,
        double dieMargin,
        double pupilDistance,
        double pupilDiameter,
        double fieldHalfWidth,
        double edgeHeight,
        double placementError,
        double wallHeight) {
    private static final double LEAST_GAP = 0.02;

    /** Half the side of the pixels that see light, mm. */
    public double activeHalf() {
        return (pixels - 2 * referencePixels) * pixelPitch / 2;
    }

    /** From the last pixel that sees light to the edge of the die: d of the feasibility line, mm. */
    public double room() {
        return dieMargin + referencePixels * pixelPitch;
    }

    /** From the axis to the farthest pixel that sees light, along x or y, mm. */
    public double outermost() {
        return (Math.max(columns, rows) - 1) * (isMosaic() ? spacing : 0) / 2 + activeHalf();
    }

    /** Whether there is more than one detector. */
    public boolean isMosaic() {
        return columns > 1 || rows > 1;
    }

    /** f-number of the beam in the middle. */
    public double fNumber() {
        return pupilDistance / pupilDiameter;
    }

    /** Greatest height of an edge by the feasibility line N (d - 2t), mm; negative where the placement error takes all the room. */
    public double greatestHeight() {
        return fNumber() * (room() - 2 * placementError);
    }

    /** That neighbouring dies would overlap, with what was expected; empty if they do not. */
    public Optional<String> overlap() {
        double die = pixels * pixelPitch + 2 * dieMargin;
        return isMosaic() && spacing < die + LEAST_GAP
                ? Optional.of("the dies are " + number(die) + " mm wide and stand " + number(spacing)
                        + " mm apart from middle to middle, expected at least " + number(die + LEAST_GAP) + " mm")
                : Optional.empty();
    }

    /** That the border of reference pixels leaves no pixel to see light, with what was expected; empty if it leaves some. */
    public Optional<String> blindness() {
        return 2 * referencePixels >= pixels
                ? Optional.of("the border of " + referencePixels + " reference pixels leaves none of " + pixels
                        + " pixels to see light, expected a narrower border")
                : Optional.empty();
    }

    /** That the lit field ends before the last pixel, with what was expected; empty if it does not. */
    public Optional<String> darkPixels() {
        return fieldHalfWidth < outermost()
                ? Optional.of("the lit field ends at " + number(fieldHalfWidth)
                        + " mm from the axis, before the last pixel at " + number(outermost())
                        + " mm, expected at least that")
                : Optional.empty();
    }

    /** That the edges stand too near to the pupil, with what was expected; empty if they do not. */
    public Optional<String> highEdges() {
        return edgeHeight > pupilDistance / 2
                ? Optional.of("the edges stand at " + number(edgeHeight)
                        + " mm, expected at most half way to the pupil, " + number(pupilDistance / 2) + " mm")
                : Optional.empty();
    }

    /** That the walls reach the pupil, with what was expected; empty if they do not. */
    public Optional<String> highWalls() {
        return edgeHeight + wallHeight >= pupilDistance
                ? Optional.of("the walls end at " + number(edgeHeight + wallHeight)
                        + " mm, expected below the pupil at " + number(pupilDistance) + " mm")
                : Optional.empty();
    }
}
