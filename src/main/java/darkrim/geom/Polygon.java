package darkrim.geom;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** A simple polygon in its plane, counter-clockwise, convex or not. Immutable. */
public final class Polygon implements Outline {
    private final List<Vector2D> corners;
    private final double area;
    private final double reach;
    /** Six coordinates a triangle. */
    private final double[] triangles;
    /** Area up to and including each triangle, over the whole area. */
    private final double[] shareUpTo;

    private Polygon(List<Vector2D> corners) {
        this.corners = corners;
        this.area = signedArea(corners);
        this.reach = corners.stream().mapToDouble(Vector2D::norm).max().orElseThrow();
        List<int[]> pieces = Triangulation.of(corners, List.of());
        triangles = new double[6 * pieces.size()];
        shareUpTo = new double[pieces.size()];
        double sum = 0;
        for (int i = 0; i < pieces.size(); i++) {
            int[] piece = pieces.get(i);
            for (int k = 0; k < 3; k++) {
                triangles[6 * i + 2 * k] = corners.get(piece[k]).getX();
                triangles[6 * i + 2 * k + 1] = corners.get(piece[k]).getY();
            }
            sum += triangleArea(i);
            shareUpTo[i] = sum;
        }
        for (int i = 0; i < shareUpTo.length; i++) {
            shareUpTo[i] /= sum;
        }
    }

    /**
     * A polygon from its corners, in either sense.
     *
     * @param corners at least three corners, mm
     * @throws IllegalArgumentException if the corners are too few, not finite, enclose nothing, or the outline crosses itself
     */
    public static Polygon of(List<Vector2D> corners) {
        Triangulation.requireSimple(corners);
        List<Vector2D> ordered = new ArrayList<>(corners);
        if (signedArea(ordered) < 0) {
            Collections.reverse(ordered);
        }
        return new Polygon(List.copyOf(ordered));
    }

    /** A rectangle about the origin of the plane. */
    public static Polygon rectangle(double width, double height) {
        double x = width / 2;
        double y = height / 2;
        return of(List.of(Vector2D.of(-x, -y), Vector2D.of(x, -y), Vector2D.of(x, y), Vector2D.of(-x, y)));
    }

    /** The corners, counter-clockwise, mm. */
    public List<Vector2D> corners() {
        return corners;
    }

    /** Signed area of a closed chain of corners, mm2; positive when counter-clockwise. */
    public static double signedArea(List<Vector2D> chain) {
        double sum = 0;
        Vector2D first = chain.get(0);
        for (int i = 1; i + 1 < chain.size(); i++) {
            Vector2D a = chain.get(i).subtract(first);
            Vector2D b = chain.get(i + 1).subtract(first);
            sum += a.getX() * b.getY() - a.getY() * b.getX();
        }
        return sum / 2;
    }

    @Override
    public double area() {
        return area;
    }

    @Override
    public double reach() {
        return reach;
    }

    @Override
    public boolean contains(double u, double v) {
        boolean inside = false;
        for (int i = 0, j = corners.size() - 1; i < corners.size(); j = i++) {
            double ui = corners.get(i).getX();
            double vi = corners.get(i).getY();
            double uj = corners.get(j).getX();
            double vj = corners.get(j).getY();
            double turn = (uj - ui) * (v - vi) - (vj - vi) * (u - ui);
            if (turn == 0
                    && Math.min(ui, uj) <= u
                    && u <= Math.max(ui, uj)
                    && Math.min(vi, vj) <= v
                    && v <= Math.max(vi, vj)) {
                return true;
            }
            if ((vi > v) != (vj > v) && u < (uj - ui) * (v - vi) / (vj - vi) + ui) {
                inside = !inside;
            }
        }
        return inside;
    }

    @Override
    public void place(double s, double t, double[] into) {
        int piece = 0;
        while (piece + 1 < shareUpTo.length && s >= shareUpTo[piece]) {
            piece++;
        }
        double before = piece == 0 ? 0 : shareUpTo[piece - 1];
        double local = Math.min(1, Math.max(0, (s - before) / (shareUpTo[piece] - before)));
        double root = Math.sqrt(local);
        double a = 1 - root;
        double b = root * (1 - t);
        double c = root * t;
        int at = 6 * piece;
        into[0] = a * triangles[at] + b * triangles[at + 2] + c * triangles[at + 4];
        into[1] = a * triangles[at + 1] + b * triangles[at + 3] + c * triangles[at + 5];
    }

    /** Whether the other is a polygon with the same corners, to the bit, in the same order. All else follows from the corners. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Polygon polygon && corners.equals(polygon.corners);
    }

    @Override
    public int hashCode() {
        return corners.hashCode();
    }

    private double triangleArea(int piece) {
        int at = 6 * piece;
        return 0.5
                * ((triangles[at + 2] - triangles[at]) * (triangles[at + 5] - triangles[at + 1])
                        - (triangles[at + 3] - triangles[at + 1]) * (triangles[at + 4] - triangles[at]));
    }
}
