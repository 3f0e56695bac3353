package darkrim.study.vanes;

import darkrim.layout.VanesShape.Taper;
import java.util.OptionalDouble;

/**
 * A tube or cone that is to get vanes. The detector lies about the axis in the plane z = 0 and faces +z; light comes in through the entrance,
 * a disc about the axis at the top of the wall. Lengths in mm.
 *
 * @param wall inner radius of the wall at its base and at the entrance
 * @param edge radius of the edges of vanes, likewise
 * @param base height of the base of the wall above the detector, 0 or more
 * @param entranceHeight height of the entrance above the detector
 * @param detectorRadius radius of the detector
 * @param entranceRadius radius of the entrance, no larger than the wall there
 * @param offAxis light at or beyond this angle off axis must not reach a wall point that the detector sees, degrees; absent where vanes are to
 *     hide the whole wall above the first of them
 * @param first height of the first vane; absent where the angle decides
 * @param clearance by how much edges, detector and entrance may be wider than drawn, 0 or more
 */
public record VaneTask(
        Taper wall,
        Taper edge,
        double base,
        double entranceHeight,
        double detectorRadius,
        double entranceRadius,
        OptionalDouble offAxis,
        OptionalDouble first,
        double clearance) {

    /** Inner radius of the wall at a height. */
    double wallAt(double z) {
        return at(wall, z);
    }

    /** Radius of the edges at a height, without the clearance. */
    public double edgeAt(double z) {
        return at(edge, z);
    }

    /** By how much a radius grows for each mm of height. */
    double slope(Taper taper) {
        return (taper.atTop() - taper.atBase()) / (entranceHeight - base);
    }

    private double at(Taper taper, double z) {
        return taper.atBase() + slope(taper) * (z - base);
    }
}
