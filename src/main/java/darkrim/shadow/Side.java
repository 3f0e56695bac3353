package darkrim.shadow;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A side of a surface: the direction in its plane that points out over it.
 *
 * @param direction unit vector
 */
record Side(Vector3D direction) {
    /** How far a point lies along the direction, mm. */
    double along(double[] points, int at) {
        return direction.getX() * points[at] + direction.getY() * points[at + 1] + direction.getZ() * points[at + 2];
    }
}
