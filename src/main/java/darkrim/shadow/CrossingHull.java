package darkrim.shadow;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Where the lines of a shaft cross a plane: the hull of the crossings of all pairs of corners holds all crossings, as long as every line
 * runs through the plane the same way. Proof: for a fixed point s of the pupil the crossing (h_s r - h_r s) / (h_s - h_r) is a projective
 * map of r whose denominator keeps its sign, so it lies in the hull of the images of the corners of the face; for a fixed r likewise in s.
 */
final class CrossingHull {
    private final double[] corners;
    private final double amplification;

    private CrossingHull(double[] corners, double amplification) {
        this.corners = corners;
        this.amplification = amplification;
    }

    /** The hull in the plane, two coordinates a corner, counter-clockwise, mm; fewer than three corners where it is a line. */
    double[] corners() {
        return corners;
    }

    /** By how much a rounding error of a corner can grow in the crossing. */
    double amplification() {
        return amplification;
    }

    /**
     * The hull.
     *
     * @param frame the plane
     * @param pupil corners of the pupil piece, three coordinates each
     * @param face corners of the face piece
     * @param radius by how much the face is grown, mm; a cube around each corner stands for it
     * @param flattest least share of a line's length by which it must run through the plane
     * @return null if some line may run too flat or the other way
     */
    static CrossingHull of(Frame frame, double[] pupil, double[] face, double radius, double flattest) {
        double[] grown = radius > 0 ? cubes(face, radius) : face;
        int n = pupil.length / 3;
        int m = grown.length / 3;
        double[] pupilLocal = local(frame, pupil);
        double[] faceLocal = local(frame, grown);
        double[] points = new double[2 * n * m];
        double sign = Math.signum(pupilLocal[2] - faceLocal[2]);
        double steepest = 1;
        for (int i = 0; i < n; i++) {
            double su = pupilLocal[3 * i];
            double sv = pupilLocal[3 * i + 1];
            double sh = pupilLocal[3 * i + 2];
            for (int j = 0; j < m; j++) {
                double ru = faceLocal[3 * j];
                double rv = faceLocal[3 * j + 1];
                double rh = faceLocal[3 * j + 2];
                double fall = sign * (sh - rh);
                double length = Math.abs(su - ru) + Math.abs(sv - rv) + Math.abs(sh - rh);
                if (!(fall > flattest * length)) {
                    return null;
                }
                double t = sh / (sh - rh);
                steepest = Math.max(steepest, length / fall * (1 + Math.abs(t)));
                points[2 * (i * m + j)] = su + t * (ru - su);
                points[2 * (i * m + j) + 1] = sv + t * (rv - sv);
            }
        }
        return new CrossingHull(PlanarPolygons.hull(points), steepest);
    }

    /** The hull grown by a length or more in every direction. */
    double[] grownBy(double length) {
        double[] points = new double[4 * corners.length];
        for (int i = 0; i < corners.length; i += 2) {
            for (int k = 0; k < 4; k++) {
                points[4 * i + 2 * k] = corners[i] + (k % 2 == 0 ? length : -length);
                points[4 * i + 2 * k + 1] = corners[i + 1] + (k < 2 ? length : -length);
            }
        }
        return PlanarPolygons.hull(points);
    }

    private static double[] local(Frame frame, double[] points) {
        double[] local = new double[points.length];
        Vector3D u = frame.u();
        Vector3D v = frame.v();
        Vector3D o = frame.origin();
        for (int i = 0; i < points.length; i += 3) {
            double x = points[i] - o.getX();
            double y = points[i + 1] - o.getY();
            double z = points[i + 2] - o.getZ();
            local[i] = x * u.getX() + y * u.getY() + z * u.getZ();
            local[i + 1] = x * v.getX() + y * v.getY() + z * v.getZ();
            local[i + 2] = Pair.height(frame, points, i);
        }
        return local;
    }

    private static double[] cubes(double[] points, double radius) {
        double[] out = new double[8 * points.length];
        for (int i = 0; i < points.length; i += 3) {
            for (int k = 0; k < 8; k++) {
                int at = 8 * i + 3 * k;
                out[at] = points[i] + ((k & 1) == 0 ? radius : -radius);
                out[at + 1] = points[i + 1] + ((k & 2) == 0 ? radius : -radius);
                out[at + 2] = points[i + 2] + ((k & 4) == 0 ? radius : -radius);
            }
        }
        return out;
    }
}
