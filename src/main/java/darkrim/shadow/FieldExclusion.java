package darkrim.shadow;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.FieldLimit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Shows that no line of a shaft passes the field limit. The lines, drawn out where the plane of the limit lies below the face, cross that
 * plane inside the hull of the crossings of all pairs of corners, as long as all run through it the same way: for a fixed point of the
 * pupil the crossing is a projective map of the face, and the other way round. If the hull is apart from the outline, or inside its hole,
 * the shaft is dark.
 */
final class FieldExclusion {
    /** Lines flatter than this against the plane are not judged: their crossings are too uncertain. */
    private static final double FLATTEST = 1e-4;

    private final Frame frame;
    private final Outline outline;
    private final List<double[]> parts = new ArrayList<>();
    private final double rounding;
    /** The limit may lie farther out than all facets. */
    private final double ownRounding;

    FieldExclusion(FieldLimit limit, Tolerance tolerance) {
        frame = limit.frame();
        outline = limit.outline();
        rounding = tolerance.rounding();
        ownRounding = 0x1p-46 * (frame.origin().norm() + outline.reach());
        if (outline instanceof Polygon polygon) {
            parts.addAll(PupilPieces.convexParts(polygon));
        }
    }

    /** Whether every line of the shaft passes the outline: the crossings lie inside it. */
    boolean admits(Shaft shaft) {
        CrossingHull crossing = CrossingHull.of(frame, shaft.pupil(), shaft.face(), shaft.radius(), FLATTEST);
        if (crossing == null) {
            return false;
        }
        double[] hull = crossing.corners();
        double margin = rounding * crossing.amplification() + ownRounding;
        if (outline instanceof Ring ring) {
            return isWithin(hull, ring.radius() - margin)
                    && (ring.hole() == 0 || distanceFromOrigin(hull) > ring.hole() + margin);
        }
        for (double[] part : parts) {
            if (holds(part, hull, margin)) {
                return true;
            }
        }
        return false;
    }

    /** Whether the middle line passes the outline: a quick look that spares the hull. */
    boolean passesMiddle(Pair pair) {
        Vector3D from = pair.pupil().middleInSpace();
        Vector3D to = pair.face().middleInSpace();
        double start = frame.height(from);
        double end = frame.height(to);
        if (start == end) {
            return true;
        }
        Vector3D crossing = from.lerp(to, start / (start - end));
        return outline.contains(frame.inU(crossing), frame.inV(crossing));
    }

    /** Whether every line of the shaft misses the outline. */
    boolean excludes(Shaft shaft) {
        CrossingHull crossing = CrossingHull.of(frame, shaft.pupil(), shaft.face(), shaft.radius(), FLATTEST);
        if (crossing == null) {
            return false;
        }
        double[] hull = crossing.corners();
        double margin = rounding * crossing.amplification() + ownRounding;
        if (outline instanceof Ring ring) {
            return distanceFromOrigin(hull) > ring.radius() + margin || isWithin(hull, ring.hole() - margin);
        }
        for (double[] part : parts) {
            if (!apart(hull, part, margin) && !apart(part, hull, margin)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Where to look for a line that comes nearest to passing the limit (sign 1), or to missing it (sign -1).
     *
     * @return empty where the middle line is parallel to the plane of the limit
     */
    Optional<Question.Aim> aim(Pair pair, int sign) {
        Vector3D from = pair.pupil().middleInSpace();
        Vector3D to = pair.face().middleInSpace();
        double start = frame.height(from);
        double end = frame.height(to);
        if (start == end) {
            return Optional.empty();
        }
        double t = start / (start - end);
        Vector3D crossing = from.lerp(to, t);
        double[] inward = toward(frame.inU(crossing), frame.inV(crossing));
        Vector3D way = frame.u().multiply(sign * inward[0]).add(frame.v().multiply(sign * inward[1]));
        // The crossing is (1 - t) s + t r: beyond one of the two it moves against it.
        return Optional.of(new Question.Aim(t <= 1 ? way : way.negate(), t >= 0 ? way : way.negate()));
    }

    /** The way from a point of the plane to the outline, or, from within it, away from its rim. */
    private double[] toward(double u, double v) {
        if (outline instanceof Ring ring) {
            boolean fromHole = ring.hole() > 0 && 2 * Math.hypot(u, v) < ring.hole() + ring.radius();
            return fromHole ? new double[] {u, v} : new double[] {-u, -v};
        }
        boolean inside = outline.contains(u, v);
        double[] best = {0, 0};
        double least = Double.POSITIVE_INFINITY;
        for (double[] part : parts) {
            int n = part.length / 2;
            for (int i = 0, j = n - 1; i < n; j = i++) {
                double su = part[2 * i] - part[2 * j];
                double sv = part[2 * i + 1] - part[2 * j + 1];
                double share = ((u - part[2 * j]) * su + (v - part[2 * j + 1]) * sv) / (su * su + sv * sv);
                share = Math.max(0, Math.min(1, share));
                double du = part[2 * j] + share * su - u;
                double dv = part[2 * j + 1] + share * sv - v;
                if (Math.hypot(du, dv) < least) {
                    least = Math.hypot(du, dv);
                    best = new double[] {du, dv};
                }
            }
        }
        return inside ? new double[] {-best[0], -best[1]} : best;
    }

    /** Whether a convex polygon lies within another. */
    private static boolean holds(double[] outer, double[] inner, double margin) {
        int n = outer.length / 2;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double su = outer[2 * i] - outer[2 * j];
            double sv = outer[2 * i + 1] - outer[2 * j + 1];
            double size = Math.hypot(su, sv);
            for (int k = 0; k < inner.length; k += 2) {
                double side = su * (inner[k + 1] - outer[2 * j + 1]) - sv * (inner[k] - outer[2 * j]);
                if (!(side > margin * size)) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean isWithin(double[] hull, double radius) {
        for (int i = 0; i < hull.length; i += 2) {
            if (!(Math.hypot(hull[i], hull[i + 1]) < radius)) {
                return false;
            }
        }
        return true;
    }

    /** Distance of a convex polygon from the origin; 0 if it holds the origin. */
    private static double distanceFromOrigin(double[] hull) {
        double least = Double.POSITIVE_INFINITY;
        boolean inside = false;
        int n = hull.length / 2;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double su = hull[2 * i] - hull[2 * j];
            double sv = hull[2 * i + 1] - hull[2 * j + 1];
            double squared = su * su + sv * sv;
            double t = squared > 0 ? -(hull[2 * j] * su + hull[2 * j + 1] * sv) / squared : 0;
            t = Math.min(1, Math.max(0, t));
            least = Math.min(least, Math.hypot(hull[2 * j] + t * su, hull[2 * j + 1] + t * sv));
            // Counting crossings, as a side lost in rounding may have any direction.
            boolean crosses = hull[2 * i + 1] > 0 != hull[2 * j + 1] > 0;
            inside ^= crosses && (su * -hull[2 * j + 1] - sv * -hull[2 * j] > 0) == sv > 0;
        }
        return inside && n > 2 ? 0 : least;
    }

    /** Whether a side of the first polygon has the second beyond it. */
    private static boolean apart(double[] sided, double[] other, double margin) {
        int n = sided.length / 2;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double nu = sided[2 * i + 1] - sided[2 * j + 1];
            double nv = sided[2 * j] - sided[2 * i];
            double size = Math.hypot(nu, nv);
            double own = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < sided.length; k += 2) {
                own = Math.max(own, nu * sided[k] + nv * sided[k + 1]);
            }
            double least = Double.POSITIVE_INFINITY;
            for (int k = 0; k < other.length; k += 2) {
                least = Math.min(least, nu * other[k] + nv * other[k + 1]);
            }
            if (size > 0 && least > own + margin * size) {
                return true;
            }
        }
        return false;
    }
}
