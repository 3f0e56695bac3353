package darkrim.shadow;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * All straight lines from a piece of the pupil to a piece of a face: the convex hull of both. The piece of the face may be grown by a
 * radius in all directions.
 *
 * <p>Its one question is whether something flat and convex is apart from it. The answer yes is given only with a plane between the two,
 * tried on every corner with a margin of {@link Tolerance#rounding()}; how the plane was come by does not matter to its truth. Planes
 * tried: the faces of the hull, and planes along an edge of what is asked about (by the separating axis theorem no more are needed for an
 * edge).
 */
final class Shaft {
    private final double[] pupil;
    private final double[] face;
    private final double radius;
    private final double margin;
    /** Three components of the outward unit normal and the support of the hull, for each plane. */
    private final double[] sides;

    private int sideCount;

    private final ShaftBoxes boxes;

    /**
     * @param pupilPiece piece of the pupil
     * @param facePiece piece of the face
     * @param radius by how much the piece of the face is grown, mm
     * @param tolerance margins of the scene
     */
    Shaft(FlatPiece pupilPiece, FlatPiece facePiece, double radius, Tolerance tolerance) {
        this.pupil = pupilPiece.space();
        this.face = facePiece.space();
        this.radius = radius;
        this.margin = tolerance.rounding();
        boxes = new ShaftBoxes(pupil, face, radius, tolerance);
        sides = new double[4 * (pupilPiece.size() + facePiece.size() + 2)];
        addEnds(pupilPiece, facePiece);
        double[] pupilMiddle = mean(pupil);
        double[] faceMiddle = mean(face);
        addSides(pupil, face, pupilMiddle, false);
        addSides(face, pupil, faceMiddle, true);
    }

    /** Corners of the pupil piece, three coordinates each; not copied. */
    double[] pupil() {
        return pupil;
    }

    /** Corners of the face piece, three coordinates each; not copied. */
    double[] face() {
        return face;
    }

    /** By how much the face piece is grown, mm. */
    double radius() {
        return radius;
    }

    /** Whether a box may touch the shaft: false only if it is apart from it. */
    boolean mayTouch(double[] box, int at) {
        return boxes.mayTouch(box, at);
    }

    /**
     * Whether an edge is apart from the shaft.
     *
     * @param ends the coordinates of its two ends
     * @param at where they begin
     */
    boolean apartFromEdge(double[] ends, int at) {
        for (int i = 0; i < sideCount; i++) {
            if (beyond(i, ends, at) && beyond(i, ends, at + 3)) {
                return true;
            }
        }
        return Wedge.between(this, ends, at, at + 3, -1);
    }

    /**
     * Whether a triangle is apart from the shaft.
     *
     * @param corners its nine coordinates
     */
    boolean apartFromTriangle(double[] corners) {
        for (int i = 0; i < sideCount; i++) {
            if (beyond(i, corners, 0) && beyond(i, corners, 3) && beyond(i, corners, 6)) {
                return true;
            }
        }
        double ax = corners[3] - corners[0];
        double ay = corners[4] - corners[1];
        double az = corners[5] - corners[2];
        double bx = corners[6] - corners[0];
        double by = corners[7] - corners[1];
        double bz = corners[8] - corners[2];
        double nx = ay * bz - az * by;
        double ny = az * bx - ax * bz;
        double nz = ax * by - ay * bx;
        return separates(nx, ny, nz, corners, 3)
                || separates(-nx, -ny, -nz, corners, 3)
                || Wedge.between(this, corners, 0, 3, 6)
                || Wedge.between(this, corners, 3, 6, 0)
                || Wedge.between(this, corners, 6, 0, 3);
    }

    /**
     * The hull plane that an edge sinks into least, for finding the line that passes it most nearly.
     *
     * @return number for {@link #side}, or -1
     */
    int nearestSide(double[] ends, int at) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < sideCount; i++) {
            double depth = sides[4 * i + 3] - Math.min(along(i, ends, at), along(i, ends, at + 3));
            if (depth < least) {
                least = depth;
                best = i;
            }
        }
        return best;
    }

    /** Outward normal of a plane of the hull. */
    Vector3D side(int number) {
        return Vector3D.of(sides[4 * number], sides[4 * number + 1], sides[4 * number + 2]);
    }

    /** Whether all given points lie beyond the hull along a direction, with the margin. */
    boolean separates(double nx, double ny, double nz, double[] points, int count) {
        double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            least = Math.min(least, nx * points[3 * i] + ny * points[3 * i + 1] + nz * points[3 * i + 2]);
        }
        return length > 0 && least > support(nx, ny, nz, length) + margin * length;
    }

    /** Greatest n . x over the hull. */
    double support(double nx, double ny, double nz, double length) {
        double greatest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < face.length; i += 3) {
            greatest = Math.max(greatest, nx * face[i] + ny * face[i + 1] + nz * face[i + 2]);
        }
        greatest += radius * length;
        for (int i = 0; i < pupil.length; i += 3) {
            greatest = Math.max(greatest, nx * pupil[i] + ny * pupil[i + 1] + nz * pupil[i + 2]);
        }
        return greatest;
    }

    private boolean beyond(int side, double[] points, int at) {
        return along(side, points, at) > sides[4 * side + 3] + margin;
    }

    private double along(int side, double[] points, int at) {
        int i = 4 * side;
        return sides[i] * points[at] + sides[i + 1] * points[at + 1] + sides[i + 2] * points[at + 2];
    }

    private void addEnds(FlatPiece pupilPiece, FlatPiece facePiece) {
        double[] toFace = mean(face);
        double[] toPupil = mean(pupil);
        Vector3D across = Vector3D.of(toPupil[0] - toFace[0], toPupil[1] - toFace[1], toPupil[2] - toFace[2]);
        Vector3D pupilNormal = pupilPiece.frame().normal();
        Vector3D faceNormal = facePiece.frame().normal();
        addEnd(pupilNormal.dot(across) < 0 ? pupilNormal.negate() : pupilNormal);
        addEnd(faceNormal.dot(across) > 0 ? faceNormal.negate() : faceNormal);
    }

    private void addEnd(Vector3D outward) {
        add(outward.getX(), outward.getY(), outward.getZ());
    }

    private void add(double nx, double ny, double nz) {
        int at = 4 * sideCount++;
        sides[at] = nx;
        sides[at + 1] = ny;
        sides[at + 2] = nz;
        sides[at + 3] = support(nx, ny, nz, Math.sqrt(nx * nx + ny * ny + nz * nz));
    }

    /** Planes through each side of one polygon that touch the other, on which all else lies inside. */
    private void addSides(double[] edged, double[] other, double[] inside, boolean edgedIsFace) {
        int n = edged.length / 3;
        int m = other.length / 3;
        double[] normal = new double[3];
        double[] tried = new double[3];
        for (int i = 0, j = n - 1; i < n; j = i++) {
            int best = -1;
            for (int k = 0; k < m; k++) {
                // The plane through the side and the best corner so far: does this corner lie outside?
                boolean outside = best < 0
                        || normal[0] * (other[3 * k] - other[3 * best])
                                        + normal[1] * (other[3 * k + 1] - other[3 * best + 1])
                                        + normal[2] * (other[3 * k + 2] - other[3 * best + 2])
                                > 0;
                if (outside && tangent(edged, 3 * j, 3 * i, other, 3 * k, inside, edgedIsFace, tried)) {
                    best = k;
                    System.arraycopy(tried, 0, normal, 0, 3);
                }
            }
            if (best >= 0) {
                add(normal[0], normal[1], normal[2]);
            }
        }
    }

    /** The unit normal of the plane through an edge and a corner, moved aside so that it touches the grown face. */
    private boolean tangent(
            double[] edged, int j, int i, double[] other, int k, double[] inside, boolean edgedIsFace, double[] into) {
        double ex = edged[i] - edged[j];
        double ey = edged[i + 1] - edged[j + 1];
        double ez = edged[i + 2] - edged[j + 2];
        double length = Math.sqrt(ex * ex + ey * ey + ez * ez);
        double sign = edgedIsFace ? -1 : 1;
        // From the pupil to the face, square to the edge.
        double wx = sign * (other[k] - edged[j]);
        double wy = sign * (other[k + 1] - edged[j + 1]);
        double wz = sign * (other[k + 2] - edged[j + 2]);
        double px = ey * wz - ez * wy;
        double py = ez * wx - ex * wz;
        double pz = ex * wy - ey * wx;
        double size = Math.sqrt(px * px + py * py + pz * pz);
        double away = size / length;
        if (!(length > 0 && size > 0 && away > radius)) {
            return false;
        }
        double towardX = (py * ez - pz * ey) / (size * length);
        double towardY = (pz * ex - px * ez) / (size * length);
        double towardZ = (px * ey - py * ex) / (size * length);
        double turn = px * (inside[0] - edged[j]) + py * (inside[1] - edged[j + 1]) + pz * (inside[2] - edged[j + 2]);
        double side = (turn > 0 ? -1 : 1) / size;
        double sine = radius / away;
        double cosine = Math.sqrt((1 - sine) * (1 + sine));
        into[0] = cosine * side * px - sine * towardX;
        into[1] = cosine * side * py - sine * towardY;
        into[2] = cosine * side * pz - sine * towardZ;
        return true;
    }

    private static double[] mean(double[] points) {
        double[] mean = new double[3];
        for (int i = 0; i < points.length; i++) {
            mean[i % 3] += 3 * points[i] / points.length;
        }
        return mean;
    }
}
