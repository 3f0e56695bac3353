package darkrim.shadow;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A piece of the pupil and a piece of a face, and what their two planes decide: no light comes to a face from behind it, and none leaves
 * the pupil to its back.
 *
 * @param pupil piece of the pupil; its frame's normal points the way the light goes
 * @param face piece of the face; its frame's normal points to the side that is looked at
 * @param radius by how much the piece of the face is grown, mm
 * @param tolerance margins of the scene
 */
record Pair(FlatPiece pupil, FlatPiece face, double radius, Tolerance tolerance) {
    /** A facet that stands on a piece at less than this slope is not trusted to leave all of the piece on one side. */
    private static final double LEAST_SINE = 1 / 16.0;

    /** Triangles thinner than this have no plane that is known well enough. */
    private static final double THINNEST = 1e-5;

    /** The shaft of all lines between the two. */
    Shaft shaft() {
        return new Shaft(pupil, face, radius, tolerance);
    }

    /** A point inside the pupil piece: its middle for number 0, others for other numbers. */
    double[] pupilPoint(int number) {
        return inside(pupil, number);
    }

    /** A point inside the face piece: its middle for number 0, others for other numbers. */
    double[] facePoint(int number) {
        return inside(face, number);
    }

    /** Whether no line of the shaft can meet a triangle before it arrives: it lies in the face's plane, behind it, or behind the pupil. */
    boolean isOutOfReach(double[] t, int at) {
        return (radius == 0 && highest(face.frame(), t, at, 3) <= tolerance.flat())
                || highest(pupil.frame(), t, at, 3) <= tolerance.flat();
    }

    /** The same, a corner counting as in the plane of the face only if rounding alone may have lifted it: what asks for light needs this. */
    boolean isSurelyOutOfReach(double[] t, int at) {
        return (radius == 0 && highest(face.frame(), t, at, 3) <= tolerance.rounding())
                || highest(pupil.frame(), t, at, 3) <= tolerance.flat();
    }

    /**
     * Whether both pieces lie on one side of the plane of a triangle, the face perhaps resting against it with a side, so that no line between
     * them meets it. What is passed over is a strip of the face no wider than rounding.
     */
    boolean isBeside(double[] t, int at) {
        double[] normal = trustedNormal(t, at);
        if (normal.length == 0 || radius != 0) {
            return false;
        }
        double[] ofFace = heights(normal, t, at, face.space());
        double[] ofPupil = heights(normal, t, at, pupil.space());
        double flat = tolerance.flat();
        double least = isSteep(face, normal) ? -tolerance.rounding() : flat;
        return (ofFace[0] >= least && ofPupil[0] > flat) || (ofFace[1] <= -least && ofPupil[1] < -flat);
    }

    /**
     * The plane of a triangle that the face rests against with a side, both pieces lying on one side of it as {@link #isBeside} has it:
     * the unit normal toward them and its product with the points of the plane, mm; empty where there is no such plane.
     */
    double[] restingPlane(double[] t, int at) {
        double[] n = trustedNormal(t, at);
        if (n.length == 0 || !isSteep(face, n) || !isBeside(t, at)) {
            return new double[0];
        }
        double[] ofFace = heights(n, t, at, face.space());
        double sign = heights(n, t, at, pupil.space())[0] > 0 ? 1 : -1;
        if (Math.abs(ofFace[sign > 0 ? 0 : 1]) > tolerance.flat()) {
            return new double[0];
        }
        double offset = n[0] * t[at] + n[1] * t[at + 1] + n[2] * t[at + 2];
        return new double[] {sign * n[0], sign * n[1], sign * n[2], sign * offset};
    }

    /** The same for an edge, as {@link #isOutOfReach} has it. */
    boolean isEdgeOutOfReach(double[] ends, int at) {
        return (radius == 0 && highest(face.frame(), ends, at, 2) <= tolerance.flat())
                || highest(pupil.frame(), ends, at, 2) <= tolerance.flat();
    }

    /** Whether a triangle may touch the inside of one of the two pieces. */
    boolean isTouchedBy(double[] t, int at) {
        return touches(face, t, at, radius) || touches(pupil, t, at, 0);
    }

    private boolean touches(FlatPiece piece, double[] t, int at, double grown) {
        double reach = grown + tolerance.flat();
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 3; i++) {
            double height = height(piece.frame(), t, at + 3 * i);
            lowest = Math.min(lowest, height);
            highest = Math.max(highest, height);
        }
        if (lowest > reach || highest < -reach || boxesApart(piece.space(), t, at, reach)) {
            return false;
        }
        return !isOnOneSide(piece, t, at, grown);
    }

    private static boolean boxesApart(double[] points, double[] t, int at, double reach) {
        for (int k = 0; k < 3; k++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int i = k; i < points.length; i += 3) {
                low = Math.min(low, points[i]);
                high = Math.max(high, points[i]);
            }
            double a = t[at + k];
            double b = t[at + 3 + k];
            double c = t[at + 6 + k];
            if (Math.min(a, Math.min(b, c)) > high + reach || Math.max(a, Math.max(b, c)) < low - reach) {
                return true;
            }
        }
        return false;
    }

    /**
     * Whether a piece lies on one side of the plane of a triangle: apart from it, or resting against it with a side, where the two meet at an
     * angle and the strip that rounding leaves open is far narrower than the gap.
     */
    private boolean isOnOneSide(FlatPiece piece, double[] t, int at, double grown) {
        double[] normal = trustedNormal(t, at);
        if (normal.length == 0) {
            return false;
        }
        double[] range = heights(normal, t, at, piece.space());
        double flat = tolerance.flat();
        if (range[0] > grown + flat || range[1] < -grown - flat) {
            return true;
        }
        return grown == 0 && isSteep(piece, normal) && (range[0] >= -flat) != (range[1] <= flat);
    }

    /** Unit normal of a triangle; empty where it is too thin to have one that is known well enough. */
    private static double[] trustedNormal(double[] t, int at) {
        double ax = t[at + 3] - t[at];
        double ay = t[at + 4] - t[at + 1];
        double az = t[at + 5] - t[at + 2];
        double bx = t[at + 6] - t[at];
        double by = t[at + 7] - t[at + 1];
        double bz = t[at + 8] - t[at + 2];
        double nx = ay * bz - az * by;
        double ny = az * bx - ax * bz;
        double nz = ax * by - ay * bx;
        double squared = nx * nx + ny * ny + nz * nz;
        double sides = (ax * ax + ay * ay + az * az) * (bx * bx + by * by + bz * bz);
        if (!(squared > THINNEST * THINNEST * sides)) {
            return new double[0];
        }
        double length = Math.sqrt(squared);
        return new double[] {nx / length, ny / length, nz / length};
    }

    /** Least and greatest height of points above the plane of a triangle, mm. */
    private static double[] heights(double[] normal, double[] t, int at, double[] points) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.length; i += 3) {
            double height = normal[0] * (points[i] - t[at])
                    + normal[1] * (points[i + 1] - t[at + 1])
                    + normal[2] * (points[i + 2] - t[at + 2]);
            least = Math.min(least, height);
            most = Math.max(most, height);
        }
        return new double[] {least, most};
    }

    private static boolean isSteep(FlatPiece piece, double[] normal) {
        Vector3D facing = piece.frame().normal();
        double cosine = normal[0] * facing.getX() + normal[1] * facing.getY() + normal[2] * facing.getZ();
        return 1 - cosine * cosine > LEAST_SINE * LEAST_SINE;
    }

    private static double highest(Frame frame, double[] points, int at, int count) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            highest = Math.max(highest, height(frame, points, at + 3 * i));
        }
        return highest;
    }

    /** Height of a point above the plane of a frame, mm. */
    static double height(Frame frame, double[] points, int at) {
        Vector3D origin = frame.origin();
        Vector3D normal = frame.normal();
        return (points[at] - origin.getX()) * normal.getX()
                + (points[at + 1] - origin.getY()) * normal.getY()
                + (points[at + 2] - origin.getZ()) * normal.getZ();
    }

    private static double[] inside(FlatPiece piece, int number) {
        double[] middle = piece.middle();
        double share = number == 0 ? 0 : 0.37;
        int corner = number % piece.size();
        double u = middle[0] + share * (piece.u(corner) - middle[0]);
        double v = middle[1] + share * (piece.v(corner) - middle[1]);
        Vector3D point = piece.frame().at(u, v);
        return new double[] {point.getX(), point.getY(), point.getZ()};
    }
}
