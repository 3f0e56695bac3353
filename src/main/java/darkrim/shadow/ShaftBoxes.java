package darkrim.shadow;

/**
 * A quick look whether a box may touch the hull of two sets of points: the hull lies within boxes that go over from the one of the first set
 * to that of the second.
 */
final class ShaftBoxes {
    /** The two must be this far apart along an axis, as a share of the whole length, or rounding is no longer small. */
    private static final double NEAREST = 1 / 64.0;

    private final double[] far;
    private final double[] near;
    /** Boxes nearer than this still count: rounding of the test, and neighbours that a gap width away may matter. */
    private final double slack;

    private final int axis;
    private final boolean tapers;

    /**
     * @param farPoints three coordinates a point: the pupil
     * @param nearPoints three coordinates a point: the face
     * @param radius by how much the near points are grown, mm
     * @param tolerance margins of the scene
     */
    ShaftBoxes(double[] farPoints, double[] nearPoints, double radius, Tolerance tolerance) {
        slack = 64 * tolerance.rounding() + 2 * tolerance.gap();
        far = box(farPoints, 0);
        near = box(nearPoints, radius);
        int best = 0;
        double longest = Double.NEGATIVE_INFINITY;
        double whole = 0;
        for (int k = 0; k < 3; k++) {
            double gap = Math.max(far[k] - near[k + 3], near[k] - far[k + 3]);
            if (gap > longest) {
                longest = gap;
                best = k;
            }
            whole = Math.max(whole, Math.max(far[k + 3], near[k + 3]) - Math.min(far[k], near[k]));
        }
        axis = best;
        tapers = longest > NEAREST * whole;
    }

    /** False only if the box is apart from the hull. */
    boolean mayTouch(double[] box, int at) {
        for (int k = 0; k < 3; k++) {
            if (box[at + k] > Math.max(far[k + 3], near[k + 3]) + slack
                    || box[at + k + 3] < Math.min(far[k], near[k]) - slack) {
                return false;
            }
        }
        if (!tapers) {
            return true;
        }
        boolean up = far[axis] > near[axis];
        double low = up ? box[at + axis] : -box[at + axis + 3];
        double high = up ? box[at + axis + 3] : -box[at + axis];
        double nearLow = up ? near[axis] : -near[axis + 3];
        double nearHigh = up ? near[axis + 3] : -near[axis];
        double farLow = up ? far[axis] : -far[axis + 3];
        double farHigh = up ? far[axis + 3] : -far[axis];
        // A point of the hull at the height of the box is (1 - t) near + t far with t within these.
        double least = clamp(low <= nearHigh ? 0 : (low - nearHigh) / (farHigh - nearHigh));
        double most = clamp(high >= farLow ? 1 : (high - nearLow) / (farLow - nearLow));
        for (int k = 0; k < 3; k++) {
            if (k != axis) {
                double from = Math.min(mix(near[k], far[k], least), mix(near[k], far[k], most));
                double to = Math.max(mix(near[k + 3], far[k + 3], least), mix(near[k + 3], far[k + 3], most));
                if (box[at + k] > to + slack || box[at + k + 3] < from - slack) {
                    return false;
                }
            }
        }
        return true;
    }

    private static double mix(double a, double b, double t) {
        return a + t * (b - a);
    }

    private static double clamp(double t) {
        return Math.min(1, Math.max(0, t));
    }

    private static double[] box(double[] points, double radius) {
        double infinite = Double.POSITIVE_INFINITY;
        double[] box = {infinite, infinite, infinite, -infinite, -infinite, -infinite};
        for (int i = 0; i < points.length; i++) {
            int k = i % 3;
            box[k] = Math.min(box[k], points[i] - radius);
            box[k + 3] = Math.max(box[k + 3], points[i] + radius);
        }
        return box;
    }
}
