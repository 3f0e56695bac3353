package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.geom.Triangulation;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Convex pieces that together hold an outline: a polygon around a disc, wider than it by the rounding margin, never narrower; of a polygon the
 * whole or its triangles, whose corners are its own. Pieces that lie within the hole of a ring hold nothing of it.
 */
final class PupilPieces {
    private static final int SIDES = 64;

    private final Outline outline;
    private final Frame frame;
    private final double margin;
    private final List<FlatPiece> all;

    PupilPieces(Outline outline, Frame frame, Tolerance tolerance) {
        this.outline = outline;
        this.frame = frame;
        this.margin = tolerance.rounding();
        this.all = List.copyOf(pieces());
    }

    /** The pieces to begin with. */
    List<FlatPiece> all() {
        return all;
    }

    private List<FlatPiece> pieces() {
        if (outline instanceof Ring ring) {
            double[] corners = new double[2 * SIDES];
            double around = (ring.radius() + margin) / StrictMath.cos(Math.PI / SIDES) * (1 + 0x1p-50);
            for (int i = 0; i < SIDES; i++) {
                // Sides square to the axes: most baffles are.
                double angle = Math.PI * (2 * i + 1) / SIDES;
                corners[2 * i] = around * StrictMath.cos(angle);
                corners[2 * i + 1] = around * StrictMath.sin(angle);
            }
            return List.of(FlatPiece.of(frame, corners));
        }
        List<FlatPiece> pieces = new ArrayList<>();
        for (double[] part : convexParts((Polygon) outline)) {
            pieces.add(FlatPiece.of(frame, part));
        }
        return pieces;
    }

    /** A polygon as it is where it is convex, otherwise its triangles. */
    static List<double[]> convexParts(Polygon polygon) {
        List<Vector2D> corners = polygon.corners();
        int n = corners.size();
        boolean convex = true;
        for (int i = 0; i < n; i++) {
            Vector2D a = corners.get(i);
            Vector2D b = corners.get((i + 1) % n);
            Vector2D c = corners.get((i + 2) % n);
            convex &=
                    (b.getX() - a.getX()) * (c.getY() - b.getY()) - (b.getY() - a.getY()) * (c.getX() - b.getX()) >= 0;
        }
        List<double[]> parts = new ArrayList<>();
        if (convex) {
            double[] whole = new double[2 * n];
            for (int i = 0; i < n; i++) {
                whole[2 * i] = corners.get(i).getX();
                whole[2 * i + 1] = corners.get(i).getY();
            }
            parts.add(whole);
        } else {
            for (int[] triangle : Triangulation.of(corners, List.of())) {
                double[] part = new double[6];
                for (int k = 0; k < 3; k++) {
                    part[2 * k] = corners.get(triangle[k]).getX();
                    part[2 * k + 1] = corners.get(triangle[k]).getY();
                }
                parts.add(part);
            }
        }
        return parts;
    }

    /** Halves of a piece without what lies outside the outline; none may be left. */
    List<FlatPiece> halves(FlatPiece piece) {
        List<FlatPiece> kept = new ArrayList<>(2);
        for (FlatPiece half : piece.halves()) {
            FlatPiece trimmed = trimmed(half);
            if (trimmed != null && !isInHole(trimmed)) {
                kept.add(trimmed);
            }
        }
        return kept;
    }

    /**
     * Cuts a piece by the tangent that is square to a direction, where the outline is round.
     *
     * @param normal a direction in space
     * @return the piece, smaller or the same; null if nothing is left
     */
    FlatPiece tangentCut(FlatPiece piece, Vector3D normal) {
        double a = normal.dot(frame.u());
        double b = normal.dot(frame.v());
        double size = Math.hypot(a, b);
        return outline instanceof Ring ring && size > 0 ? piece.clip(a / size, b / size, tangent(ring)) : piece;
    }

    /**
     * The point of the outline farthest along a direction, drawn in by a billionth so that it lies inside.
     *
     * @param piece where it is looked for
     * @param normal a direction in space
     * @return in the plane, mm
     */
    double[] farthest(FlatPiece piece, Vector3D normal) {
        double a = normal.dot(frame.u());
        double b = normal.dot(frame.v());
        double size = Math.hypot(a, b);
        if (outline instanceof Ring ring && size > 0) {
            double radius = ring.radius() * (1 - 1e-12);
            double[] tangent = {radius * a / size, radius * b / size};
            if (holds(piece, tangent)) {
                return tangent;
            }
        }
        int best = 0;
        for (int i = 1; i < piece.size(); i++) {
            if (a * piece.u(i) + b * piece.v(i) > a * piece.u(best) + b * piece.v(best)) {
                best = i;
            }
        }
        return drawnIn(piece, best);
    }

    /** A corner of a piece, moved into the outline where it lies outside. */
    double[] drawnIn(FlatPiece piece, int corner) {
        double u = piece.u(corner);
        double v = piece.v(corner);
        if (outline instanceof Ring ring) {
            double distance = Math.hypot(u, v);
            double limit = ring.radius() * (1 - 1e-12);
            return distance > limit ? new double[] {u * limit / distance, v * limit / distance} : new double[] {u, v};
        }
        double[] middle = piece.middle();
        return new double[] {u + 1e-9 * (middle[0] - u), v + 1e-9 * (middle[1] - v)};
    }

    private static boolean holds(FlatPiece piece, double[] point) {
        int n = piece.size();
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double side = (piece.u(i) - piece.u(j)) * (point[1] - piece.v(j))
                    - (piece.v(i) - piece.v(j)) * (point[0] - piece.u(j));
            if (side < 0) {
                return false;
            }
        }
        return true;
    }

    private boolean isInHole(FlatPiece piece) {
        if (!(outline instanceof Ring ring) || ring.hole() == 0) {
            return false;
        }
        double limit = ring.hole() - margin;
        for (int i = 0; i < piece.size(); i++) {
            if (!(Math.hypot(piece.u(i), piece.v(i)) < limit)) {
                return false;
            }
        }
        return true;
    }

    /** Cuts corners that stand out by more than a hundredth of the piece. */
    private FlatPiece trimmed(FlatPiece piece) {
        if (!(outline instanceof Ring ring)) {
            return piece;
        }
        double allowed = ring.radius() + 0.01 * piece.extent();
        FlatPiece left = piece;
        for (int i = 0; i < piece.size() && left != null; i++) {
            double distance = Math.hypot(piece.u(i), piece.v(i));
            if (distance > allowed) {
                left = left.clip(piece.u(i) / distance, piece.v(i) / distance, tangent(ring));
            }
        }
        return left;
    }

    private double tangent(Ring ring) {
        return ring.radius() + margin;
    }
}
