package darkrim.shadow;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A straight line that light takes, for anyone to draw: from the pupil, or what stands in its place, to a surface, and nothing in between.
 *
 * @param from start on the pupil, mm
 * @param to end on the surface, mm
 * @param toSurface name of the surface it ends on
 */
public record WitnessRay(Vector3D from, Vector3D to, String toSurface) {
    /** Length, mm. */
    public double length() {
        return to.distance(from);
    }
}
