package darkrim.shadow;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The place of a corner, as a key: corners are the same when their coordinates are to the last bit.
 *
 * @param x first coordinate, mm
 * @param y second coordinate, mm
 * @param z third coordinate, mm
 */
record Corner(double x, double y, double z) {
    /** Adding 0 turns -0 into 0: the two are the same place. */
    Corner {
        x += 0.0;
        y += 0.0;
        z += 0.0;
    }

    static Corner of(Vector3D point) {
        return new Corner(point.getX(), point.getY(), point.getZ());
    }
}
