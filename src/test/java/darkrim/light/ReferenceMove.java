package darkrim.light;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Moves a case as a whole so that a frame of it becomes the frame of the layout; distances and angles stay.
 *
 * @param from the frame that becomes the layout's
 */
record ReferenceMove(Frame from) {
    /** Everything stays where it is. */
    static final ReferenceMove NONE = new ReferenceMove(Frame.LAYOUT);

    /** The moved point, mm. */
    Vector3D point(Vector3D point) {
        return Vector3D.of(from.inU(point), from.inV(point), from.height(point));
    }

    /** The turned direction. */
    Vector3D direction(Vector3D direction) {
        return Vector3D.of(direction.dot(from.u()), direction.dot(from.v()), direction.dot(from.normal()));
    }
}
