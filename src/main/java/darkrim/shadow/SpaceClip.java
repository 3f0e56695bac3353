package darkrim.shadow;

import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Cuts flat convex polygons in space by planes; three coordinates a corner. */
final class SpaceClip {
    private SpaceClip() {}

    /** The part of a polygon that lies more than a height above a plane; an empty array if nothing does. */
    static double[] above(double[] corners, Vector3D normal, Vector3D origin, double height) {
        int n = corners.length / 3;
        double[] heights = new double[n];
        boolean all = true;
        for (int i = 0; i < n; i++) {
            heights[i] = (corners[3 * i] - origin.getX()) * normal.getX()
                    + (corners[3 * i + 1] - origin.getY()) * normal.getY()
                    + (corners[3 * i + 2] - origin.getZ()) * normal.getZ()
                    - height;
            all &= heights[i] >= 0;
        }
        if (all) {
            return corners;
        }
        double[] out = new double[6 * n];
        int size = 0;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            if ((heights[j] < 0 && heights[i] > 0) || (heights[j] > 0 && heights[i] < 0)) {
                double t = heights[j] / (heights[j] - heights[i]);
                for (int k = 0; k < 3; k++) {
                    out[size++] = corners[3 * j + k] + t * (corners[3 * i + k] - corners[3 * j + k]);
                }
            }
            if (heights[i] >= 0) {
                System.arraycopy(corners, 3 * i, out, size, 3);
                size += 3;
            }
        }
        return size < 9 ? new double[0] : Arrays.copyOf(out, size);
    }
}
