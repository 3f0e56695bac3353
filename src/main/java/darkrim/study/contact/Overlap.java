package darkrim.study.contact;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Two bodies that run into one another.
 *
 * @param first number of the body that comes first in the layout
 * @param second number of the other
 * @param at a place inside both, mm
 * @param low least coordinates of what was found inside both, mm
 * @param high greatest coordinates
 */
record Overlap(int first, int second, Vector3D at, Vector3D low, Vector3D high) {
    /** One place, as small as can be. */
    static Overlap at(int first, int second, Vector3D place) {
        return new Overlap(first, second, place, place, place);
    }

    /** The same with another place inside both. */
    Overlap and(Vector3D more) {
        return new Overlap(
                first,
                second,
                at,
                Vector3D.of(
                        Math.min(low.getX(), more.getX()),
                        Math.min(low.getY(), more.getY()),
                        Math.min(low.getZ(), more.getZ())),
                Vector3D.of(
                        Math.max(high.getX(), more.getX()),
                        Math.max(high.getY(), more.getY()),
                        Math.max(high.getZ(), more.getZ())));
    }

    /** Extents along x, y and z, mm: the overlap reaches at least that far. */
    Vector3D size() {
        return high.subtract(low);
    }
}
