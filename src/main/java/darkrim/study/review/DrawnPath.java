package darkrim.study.review;

import darkrim.light.Reflector;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A way of light that is drawn, one of many like it.
 *
 * @param receiver where it arrives
 * @param via the surface that reflects it; empty for direct light
 * @param part the part of that surface's finish; empty for direct light
 * @param share what light by that surface and part is of all once-reflected light of the receiver, 0 to 1; 1 for direct light
 * @param points on the pupil, on both faces of a window if there is one, on the surface that reflects it if there is one, on the receiver, mm
 */
public record DrawnPath(
        Surface receiver, Optional<Surface> via, Optional<Reflector.Part> part, double share, List<Vector3D> points) {
    /** Copies the list. */
    public DrawnPath {
        points = List.copyOf(points);
    }
}
