package darkrim.shadow;

import darkrim.scene.Pupil;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The part of the pupil that a point sees: convex pieces of the pupil's plane, met with circles. Its rim is made of stretches of the sides of
 * the pieces, within all circles, and of arcs, within a piece and all other circles. Sides that two pieces share are run through both ways
 * and cancel.
 */
public final class PupilView {
    /** Square of half the chord over the radius below which a side touches a circle: the segment it cuts off is 1e-18 of the disc. */
    private static final double TOUCHING = 1e-12;

    /** Sides of a piece below this, over its longest side, come from rounding. */
    private static final double SHORTEST = 1e-12;

    private static final double[] PLACES = {0.23, 0.5, 0.81};

    private final Pupil pupil;
    private final Vector3D point;
    private final Vector3D normal;
    private final List<double[]> pieces;
    private final List<Circle> circles;

    private final double blur;

    /**
     * @param pupil the pupil
     * @param point the point that looks, mm
     * @param normal where its surface faces
     * @param pieces convex pieces of the pupil's plane, two coordinates a corner, mm
     * @param circles what else bounds the visible part
     * @param blur how far rounding may move a rim in the pupil's plane: the rounding of coordinates, as the nearest part in the way
     *     throws it onto that plane, mm
     */
    PupilView(Pupil pupil, Vector3D point, Vector3D normal, List<double[]> pieces, List<Circle> circles, double blur) {
        this.pupil = pupil;
        this.point = point;
        this.normal = normal;
        this.pieces = pieces;
        this.circles = circles;
        this.blur = blur;
    }

    /**
     * The share of the pupil below which the visible part cannot be told from rounding: a strip as long as its rim and as wide as rounding
     * may move that rim.
     */
    public double roundingFraction() {
        LengthSum sum = new LengthSum();
        follow(sum);
        return blur * sum.length / pupil.outline().area();
    }

    /** Whether nothing is seen but what rounding leaves: the visible part would vanish if its rim moved by rounding. */
    public boolean isNone() {
        return areaFraction() <= roundingFraction();
    }

    /** Visible area over the area of the pupil, 0 to 1. Exact: triangles and sectors of circles. */
    public double areaFraction() {
        AreaSum sum = new AreaSum();
        follow(sum);
        return Math.min(1, Math.max(0, sum.area / pupil.outline().area()));
    }

    /**
     * Irradiance of the element over the radiance of the pupil, sr: E = (L/2) n . contour integral of (r x dr) / r^2, for straight sides
     * (L/2) sum theta_i n . gamma_i. Lambert 1760; Howell, Menguc, Siegel, Thermal Radiation Heat Transfer, ch. 5.
     */
    public double irradiance() {
        IrradianceSum sum = new IrradianceSum(pupil.frame(), point, normal);
        follow(sum);
        return Math.max(0, sum.irradiance());
    }

    /**
     * The visible part as closed loops of straight stretches and arcs, for exact drawings. It lies to the left; the parts of different loops
     * do not overlap, though they may touch.
     */
    public List<List<RimStep>> rims() {
        List<List<RimStep>> rims = new ArrayList<>();
        for (double[] piece : pieces) {
            PieceOutline outline = new PieceOutline();
            follow(piece, outline);
            rims.addAll(outline.loops());
        }
        return rims;
    }

    /**
     * The visible part as polygons in the pupil's u and v, mm, for drawing. They do not overlap; arcs are drawn with a point each degree.
     *
     * @return closed loops, two coordinates a corner
     */
    public List<double[]> loops() {
        return rims().stream().map(PupilView::polygon).toList();
    }

    private static double[] polygon(List<RimStep> rim) {
        return rim.stream().flatMapToDouble(RimStep::corners).toArray();
    }

    /** What is summed along a rim; the region lies to the left. */
    interface Rim {
        /** A straight stretch. */
        void straight(double u0, double v0, double u1, double v1);

        /** An arc; from the first angle to the second, rad, which is less where the region lies outside the circle. */
        void arc(Circle circle, double from, double to);
    }

    private void follow(Rim rim) {
        for (double[] piece : pieces) {
            follow(piece, rim);
        }
    }

    private void follow(double[] piece, Rim rim) {
        int n = piece.length / 2;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            followSide(piece[2 * j], piece[2 * j + 1], piece[2 * i], piece[2 * i + 1], rim);
        }
        for (Circle circle : circles) {
            followCircle(circle, piece, rim);
        }
    }

    private void followSide(double u0, double v0, double u1, double v1, Rim rim) {
        double[] cuts = new double[2 + 2 * circles.size()];
        int count = 0;
        cuts[count++] = 0;
        cuts[count++] = 1;
        for (Circle circle : circles) {
            count = crossings(circle, u0, v0, u1 - u0, v1 - v0, cuts, count);
        }
        Arrays.sort(cuts, 0, count);
        for (int k = 0; k + 1 < count; k++) {
            if (cuts[k + 1] > cuts[k] && isStretchKept(u0, v0, u1 - u0, v1 - v0, cuts[k], cuts[k + 1])) {
                rim.straight(
                        u0 + cuts[k] * (u1 - u0),
                        v0 + cuts[k] * (v1 - v0),
                        u0 + cuts[k + 1] * (u1 - u0),
                        v0 + cuts[k + 1] * (v1 - v0));
            }
        }
    }

    private void followCircle(Circle circle, double[] piece, Rim rim) {
        int n = piece.length / 2;
        double[] cuts = new double[2 + 2 * n + 2 * circles.size()];
        int count = 0;
        cuts[count++] = -Math.PI;
        cuts[count++] = Math.PI;
        double[] found = new double[2];
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double du = piece[2 * i] - piece[2 * j];
            double dv = piece[2 * i + 1] - piece[2 * j + 1];
            int hits = crossings(circle, piece[2 * j], piece[2 * j + 1], du, dv, found, 0);
            for (int k = 0; k < hits; k++) {
                cuts[count++] = StrictMath.atan2(
                        piece[2 * j + 1] + found[k] * dv - circle.v(), piece[2 * j] + found[k] * du - circle.u());
            }
        }
        for (Circle other : circles) {
            double du = other.u() - circle.u();
            double dv = other.v() - circle.v();
            double distance = Math.hypot(du, dv);
            double along = (distance * distance + circle.radius() * circle.radius() - other.radius() * other.radius())
                    / (2 * distance * circle.radius());
            if (distance > 0 && Math.abs(along) < 1) {
                double middle = StrictMath.atan2(dv, du);
                cuts[count++] = Math.IEEEremainder(middle + StrictMath.acos(along), 2 * Math.PI);
                cuts[count++] = Math.IEEEremainder(middle - StrictMath.acos(along), 2 * Math.PI);
            }
        }
        Arrays.sort(cuts, 0, count);
        for (int k = 0; k + 1 < count; k++) {
            if (cuts[k + 1] > cuts[k] && isArcKept(circle, piece, cuts[k], cuts[k + 1])) {
                if (circle.keepsInside()) {
                    rim.arc(circle, cuts[k], cuts[k + 1]);
                } else {
                    rim.arc(circle, cuts[k + 1], cuts[k]);
                }
            }
        }
    }

    /** Three places vote: one of them may lie just where another circle touches. */
    private boolean isStretchKept(double u0, double v0, double du, double dv, double from, double to) {
        int votes = 0;
        for (double share : PLACES) {
            double t = from + share * (to - from);
            votes += kept(u0 + t * du, v0 + t * dv, null) ? 1 : -1;
        }
        return votes > 0;
    }

    private boolean isArcKept(Circle circle, double[] piece, double from, double to) {
        int votes = 0;
        for (double share : PLACES) {
            double angle = from + share * (to - from);
            double u = circle.u() + circle.radius() * StrictMath.cos(angle);
            double v = circle.v() + circle.radius() * StrictMath.sin(angle);
            votes += inPiece(piece, u, v) && kept(u, v, circle) ? 1 : -1;
        }
        return votes > 0;
    }

    private boolean kept(double u, double v, Circle except) {
        for (Circle circle : circles) {
            if (!circle.equals(except) && !circle.keeps(u, v)) {
                return false;
            }
        }
        return true;
    }

    /** A side that is short by rounding alone has no direction that means anything, and bounds nothing. */
    private static boolean inPiece(double[] piece, double u, double v) {
        int n = piece.length / 2;
        double shortest = 0;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double length = Math.abs(piece[2 * i] - piece[2 * j]) + Math.abs(piece[2 * i + 1] - piece[2 * j + 1]);
            shortest = Math.max(shortest, SHORTEST * length);
        }
        boolean inside = false;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double du = piece[2 * i] - piece[2 * j];
            double dv = piece[2 * i + 1] - piece[2 * j + 1];
            double side = du * (v - piece[2 * j + 1]) - dv * (u - piece[2 * j]);
            if (side < 0 && Math.abs(du) + Math.abs(dv) > shortest) {
                return false;
            }
            inside |= side > 0;
        }
        return inside;
    }

    /** Shares of a stretch where it crosses a circle, between 0 and 1; the root that would cancel comes from the product of the two. */
    private static int crossings(Circle circle, double u0, double v0, double du, double dv, double[] into, int count) {
        double pu = u0 - circle.u();
        double pv = v0 - circle.v();
        double a = du * du + dv * dv;
        double b = pu * du + pv * dv;
        double cross = pu * dv - pv * du;
        double root = a * circle.radius() * circle.radius() - cross * cross;
        // A side that only touches a circle does not cut it; both the side and the circle find it so.
        if (!(root > TOUCHING * a * circle.radius() * circle.radius())) {
            return count;
        }
        double c = Math.hypot(pu, pv);
        double power = (c - circle.radius()) * (c + circle.radius());
        double q = -(b + Math.copySign(Math.sqrt(root), b));
        double first = q / a;
        double second = q == 0 ? 0 : power / q;
        int next = count;
        if (first > 0 && first < 1) {
            into[next++] = first;
        }
        if (second > 0 && second < 1) {
            into[next++] = second;
        }
        return next;
    }

    private static final class LengthSum implements Rim {
        private double length;

        @Override
        public void straight(double u0, double v0, double u1, double v1) {
            length += Math.hypot(u1 - u0, v1 - v0);
        }

        @Override
        public void arc(Circle circle, double from, double to) {
            length += circle.radius() * Math.abs(to - from);
        }
    }

    private static final class AreaSum implements Rim {
        private double area;

        @Override
        public void straight(double u0, double v0, double u1, double v1) {
            area += 0.5 * (u0 * v1 - v0 * u1);
        }

        @Override
        public void arc(Circle circle, double from, double to) {
            double sine = StrictMath.sin(to) - StrictMath.sin(from);
            double cosine = StrictMath.cos(to) - StrictMath.cos(from);
            area += 0.5 * circle.radius() * (circle.radius() * (to - from) + circle.u() * sine - circle.v() * cosine);
        }
    }
}
