package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.FieldLimit;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Cuts what a point sees of the pupil's plane to the lines that pass the field limit. A polygon is projected from the point side by side; so
 * is a circle in a plane parallel to the pupil, whose projection is a circle again. A tilted circle stands as a polygon of 1,024 sides and
 * equal area: its area is right to 1e-10.
 */
final class FieldProjection {
    private static final int SIDES = 1024;
    private static final double PARALLEL = 1e-12;

    private FieldProjection() {}

    /**
     * The pieces that are left.
     *
     * @param circles receives circles that bound what is seen
     */
    static List<double[]> clip(
            FieldLimit limit, Frame pupil, Vector3D point, List<double[]> pieces, List<Circle> circles) {
        double height = limit.frame().height(point);
        Outline outline = limit.outline();
        // A point in the plane of the limit: every line through it crosses there.
        if (Math.abs(height) <= 1e-12 * (1 + outline.reach())) {
            boolean inside =
                    outline.contains(limit.frame().inU(point), limit.frame().inV(point));
            return inside ? pieces : List.of();
        }
        if (outline instanceof Ring ring) {
            boolean parallel = limit.frame().normal().cross(pupil.normal()).norm() < PARALLEL;
            if (parallel) {
                addCircles(ring, limit.frame(), pupil, point, circles);
                return pieces;
            }
            List<double[]> left = keep(pieces, limit.frame(), pupil, point, height, circle(ring.radius()));
            return ring.hole() > 0 ? remove(left, limit.frame(), pupil, point, height, circle(ring.hole())) : left;
        }
        List<double[]> left = new ArrayList<>();
        for (double[] part : PupilPieces.convexParts((Polygon) outline)) {
            left.addAll(keep(pieces, limit.frame(), pupil, point, height, part));
        }
        return left;
    }

    private static void addCircles(Ring ring, Frame limit, Frame pupil, Vector3D point, List<Circle> circles) {
        // From the point through the limit to the pupil's plane: scaled by the ratio of the heights, also backward.
        double scale = pupil.height(point) / (pupil.height(point) - pupil.height(limit.origin()));
        Vector3D centre = point.lerp(limit.origin(), scale);
        add(circles, new Circle(pupil.inU(centre), pupil.inV(centre), ring.radius() * Math.abs(scale), true));
        if (ring.hole() > 0) {
            add(circles, new Circle(pupil.inU(centre), pupil.inV(centre), ring.hole() * Math.abs(scale), false));
        }
    }

    private static void add(List<Circle> circles, Circle circle) {
        if (circles.stream().noneMatch(circle::isSameAs)) {
            circles.add(circle);
        }
    }

    private static double[] circle(double radius) {
        double step = 2 * Math.PI / SIDES;
        double equalArea = radius * Math.sqrt(step / StrictMath.sin(step));
        double[] corners = new double[2 * SIDES];
        for (int i = 0; i < SIDES; i++) {
            corners[2 * i] = equalArea * StrictMath.cos(i * step);
            corners[2 * i + 1] = equalArea * StrictMath.sin(i * step);
        }
        return corners;
    }

    private static List<double[]> keep(
            List<double[]> pieces, Frame limit, Frame pupil, Vector3D point, double height, double[] part) {
        List<double[]> left = new ArrayList<>();
        for (ViewLine[] sides : wedges(limit, pupil, point, height, part)) {
            for (double[] piece : pieces) {
                double[] inside = piece;
                for (int i = 0; i < sides.length && inside.length > 0; i++) {
                    inside = sides[i].insideOf(inside);
                }
                if (inside.length > 0) {
                    left.add(inside);
                }
            }
        }
        return left;
    }

    private static List<double[]> remove(
            List<double[]> pieces, Frame limit, Frame pupil, Vector3D point, double height, double[] part) {
        List<double[]> left = pieces;
        for (ViewLine[] sides : wedges(limit, pupil, point, height, part)) {
            List<double[]> next = new ArrayList<>();
            for (double[] piece : left) {
                VisiblePupil.subtract(piece, sides, next);
            }
            left = next;
        }
        return left;
    }

    /**
     * The part of the pupil's plane that looks through a convex part of the limit: once forward and once, for lines that cross the limit
     * behind the point, backward. Which of the two a place belongs to is told by the side of the plane through the point that is parallel
     * to the limit.
     */
    private static List<ViewLine[]> wedges(Frame limit, Frame pupil, Vector3D point, double height, double[] part) {
        List<ViewLine[]> both = new ArrayList<>();
        int n = part.length / 2;
        double[] space = new double[3 * n];
        for (int i = 0; i < n; i++) {
            Vector3D corner = limit.at(part[2 * i], part[2 * i + 1]);
            space[3 * i] = corner.getX();
            space[3 * i + 1] = corner.getY();
            space[3 * i + 2] = corner.getZ();
        }
        for (boolean forward : new boolean[] {true, false}) {
            ViewLine[] sides = new ViewLine[n + 1];
            // Counter-clockwise about the normal: seen from the side of the normal if the point is above.
            boolean front = height > 0;
            for (int i = 0, j = n - 1; i < n; j = i++) {
                sides[i] = ViewLine.through(pupil, point, space, 3 * j, 3 * i, front == forward);
            }
            Vector3D towardLimit = height > 0 ? limit.normal().negate() : limit.normal();
            sides[n] = new ViewLine(pupil, forward ? towardLimit : towardLimit.negate(), point);
            both.add(sides);
        }
        return both;
    }
}
