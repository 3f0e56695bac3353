package darkrim.shadow;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A convex polygon in a plane, counter-clockwise in the frame of the plane; a piece of a face or of the pupil. Immutable. */
final class FlatPiece {
    private final Frame frame;
    /** Two coordinates a corner, mm. */
    private final double[] plane;
    /** Three coordinates a corner, mm. */
    private final double[] space;

    private FlatPiece(Frame frame, double[] plane) {
        this.frame = frame;
        this.plane = plane;
        int n = plane.length / 2;
        space = new double[3 * n];
        for (int i = 0; i < n; i++) {
            double u = plane[2 * i];
            double v = plane[2 * i + 1];
            space[3 * i] =
                    frame.origin().getX() + u * frame.u().getX() + v * frame.v().getX();
            space[3 * i + 1] =
                    frame.origin().getY() + u * frame.u().getY() + v * frame.v().getY();
            space[3 * i + 2] =
                    frame.origin().getZ() + u * frame.u().getZ() + v * frame.v().getZ();
        }
    }

    /**
     * A piece from its corners.
     *
     * @param frame its plane
     * @param corners two coordinates a corner, counter-clockwise, at least three corners, mm; not copied
     */
    static FlatPiece of(Frame frame, double[] corners) {
        return new FlatPiece(frame, corners);
    }

    /** The plane. */
    Frame frame() {
        return frame;
    }

    /** Number of corners. */
    int size() {
        return plane.length / 2;
    }

    /** Two coordinates a corner, mm; not copied. */
    double[] plane() {
        return plane;
    }

    /** Three coordinates a corner, mm; not copied. */
    double[] space() {
        return space;
    }

    double u(int corner) {
        return plane[2 * corner];
    }

    double v(int corner) {
        return plane[2 * corner + 1];
    }

    /** Area, mm2. */
    double area() {
        return PlanarPolygons.area(plane);
    }

    /** Greatest extent along u or v, mm. */
    double extent() {
        return Math.max(extent(0), extent(1));
    }

    /** The mean of the corners in the plane, mm: a point of the piece. */
    double[] middle() {
        double u = 0;
        double v = 0;
        for (int i = 0; i < size(); i++) {
            u += u(i);
            v += v(i);
        }
        return new double[] {u / size(), v / size()};
    }

    /** The mean of the corners, mm. */
    Vector3D middleInSpace() {
        double[] middle = middle();
        return frame.at(middle[0], middle[1]);
    }

    /**
     * What lies on one side of a line: a u + b v {@literal <=} c.
     *
     * @return the part, this piece itself where nothing is cut off, or null if nothing with three corners is left
     */
    FlatPiece clip(double a, double b, double c) {
        double[] left = PlanarPolygons.clip(plane, a, b, c);
        return left == plane ? this : left.length < 6 ? null : new FlatPiece(frame, left);
    }

    /** What lies on the side of a plane where n . x {@literal >=} offset, or null. */
    FlatPiece clipToSpace(Vector3D normal, double offset) {
        double a = normal.dot(frame.u());
        double b = normal.dot(frame.v());
        double c = normal.dot(frame.origin()) - offset;
        if (a == 0 && b == 0) {
            return c >= 0 ? this : null;
        }
        return clip(-a, -b, c);
    }

    /** The two halves across the longer extent. */
    FlatPiece[] halves() {
        return halves(extent(0) >= extent(1) ? 0 : 1);
    }

    /** The two halves across u (0) or v (1). */
    FlatPiece[] halves(int axis) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = axis; i < plane.length; i += 2) {
            low = Math.min(low, plane[i]);
            high = Math.max(high, plane[i]);
        }
        double middle = 0.5 * (low + high);
        FlatPiece below = clip(1 - axis, axis, middle);
        FlatPiece above = clip(axis - 1, -axis, -middle);
        if (below == null) {
            return new FlatPiece[] {above};
        }
        return above == null ? new FlatPiece[] {below} : new FlatPiece[] {below, above};
    }

    private double extent(int axis) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = axis; i < plane.length; i += 2) {
            low = Math.min(low, plane[i]);
            high = Math.max(high, plane[i]);
        }
        return high - low;
    }
}
