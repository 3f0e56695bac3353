package darkrim.view.camera;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The line of sight through a pixel.
 *
 * @param origin where it begins, mm: the eye, or in parallel projection a point in front of everything
 * @param direction where it goes, unit length
 */
public record SightLine(Vector3D origin, Vector3D direction) {
    /** The point at a distance, mm. */
    public Vector3D at(double distance) {
        return origin.add(direction.multiply(distance));
    }
}
