package darkrim.shadow;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Faces made wider in their plane, or cut back from a side. */
final class Growth {
    private static final int DIRECTIONS = 16;

    /** Angles, rad, of tangents of the polygon that stands for a disc; more of them where a corner is looked at. */
    private final List<Double> angles = new ArrayList<>();

    Growth() {
        for (int i = 0; i < DIRECTIONS; i++) {
            angles.add(2 * Math.PI * i / DIRECTIONS);
        }
    }

    /** Makes growing exact along a direction of the plane. */
    void sharpen(double u, double v) {
        angles.add(positive(StrictMath.atan2(v, u)));
    }

    private static double positive(double angle) {
        return angle < 0 ? angle + 2 * Math.PI : angle;
    }

    /** Direction, rad, in which a side of a piece faces. */
    private static double outward(FlatPiece piece, int side) {
        int next = (side + 1) % piece.size();
        return StrictMath.atan2(piece.u(side) - piece.u(next), piece.v(next) - piece.v(side));
    }

    /** The directions in which sides of the faces face, each once. */
    static List<Side> sides(List<Face> faces) {
        List<Side> sides = new ArrayList<>();
        for (Face face : faces) {
            for (int i = 0; i < face.piece().size(); i++) {
                double angle = outward(face.piece(), i);
                Vector3D direction = face.piece()
                        .frame()
                        .u()
                        .multiply(StrictMath.cos(angle))
                        .add(face.piece().frame().v().multiply(StrictMath.sin(angle)));
                if (sides.stream().noneMatch(s -> s.direction().distance(direction) < 1e-9)) {
                    sides.add(new Side(direction));
                }
            }
        }
        return sides;
    }

    /** The faces grown by a distance in their plane: by a polygon around the disc, never less. */
    List<Face> grown(List<Face> faces, double by) {
        List<Face> grown = new ArrayList<>();
        for (Face face : faces) {
            double[] disc = disc(by, face.piece());
            double[] plane = face.piece().plane();
            double[] points = new double[plane.length * disc.length / 2];
            int at = 0;
            for (int i = 0; i < plane.length; i += 2) {
                for (int k = 0; k < disc.length; k += 2) {
                    points[at++] = plane[i] + disc[k];
                    points[at++] = plane[i + 1] + disc[k + 1];
                }
            }
            grown.add(new Face(FlatPiece.of(face.piece().frame(), PlanarPolygons.hull(points)), face.plane()));
        }
        return grown;
    }

    /** A polygon around a disc; it touches the disc also square to the sides of the piece, so that these move by the radius. */
    private double[] disc(double radius, FlatPiece piece) {
        List<Double> all = new ArrayList<>(angles);
        for (int i = 0; i < piece.size(); i++) {
            all.add(positive(outward(piece, i)));
        }
        all.sort(Double::compare);
        int n = all.size();
        double[] corners = new double[2 * n];
        for (int i = 0; i < n; i++) {
            double from = all.get(i);
            double to = all.get((i + 1) % n) + (i + 1 == n ? 2 * Math.PI : 0);
            double middle = 0.5 * (from + to);
            double reach = radius / StrictMath.cos(0.5 * (to - from));
            corners[2 * i] = reach * StrictMath.cos(middle);
            corners[2 * i + 1] = reach * StrictMath.sin(middle);
        }
        return corners;
    }

    /** Greatest u a + v b over the faces; they share a plane and a frame up to its origin. */
    static double farthest(List<Face> faces, Side side) {
        double farthest = Double.NEGATIVE_INFINITY;
        for (Face face : faces) {
            double[] space = face.piece().space();
            for (int i = 0; i < space.length; i += 3) {
                farthest = Math.max(farthest, side.along(space, i));
            }
        }
        return farthest;
    }

    /** The faces without what lies within a depth of some sides; what is left, which may be nothing. */
    static List<Face> cutBack(List<Face> faces, List<Side> sides, double depth) {
        List<Face> left = faces;
        for (Side side : sides) {
            double limit = farthest(faces, side) - depth;
            List<Face> next = new ArrayList<>();
            for (Face face : left) {
                FlatPiece piece = face.piece().clipToSpace(side.direction().negate(), -limit);
                if (piece != null) {
                    next.add(new Face(piece, face.plane()));
                }
            }
            left = next;
        }
        return left;
    }
}
