package darkrim.shadow;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * How far inside a side of an opening all lines between the pupil and a flat area pass, in closed form.
 *
 * <p>A line from v, at height h_v below the plane of a cross-section, to s, at h_s above it, crosses at c = v + (s - v) h_v / (h_v - h_s). As s
 * or v moves on a straight line, so does c, and in order: the greatest n . c over a convex area lies at a corner. Over the disc of the pupil
 * the greatest value a of the quotient N(s) / D(s) is found by repeating s = argmax (N - a D), a = N(s) / D(s) (Dinkelbach, Management Science
 * 13, 1967), each step in closed form.
 */
final class PupilRoom {
    private static final int MOST_STEPS = 60;

    private final Pupil pupil;

    PupilRoom(Pupil pupil) {
        this.pupil = pupil;
    }

    /**
     * The least distance by which lines clear a side, mm; negative where it cuts some.
     *
     * @param sides the opening
     * @param side the side
     * @param area corners of the area, on the far side of the plate from the pupil
     */
    double of(MovedSides sides, int side, List<Vector3D> area) {
        double least = Double.POSITIVE_INFINITY;
        for (List<Vector3D> loop : sides.loops()) {
            for (Vector3D corner : area) {
                least = Math.min(least, -farthest(corner, loop.get(side), sides.outward(side), sides.normal()));
            }
        }
        return least;
    }

    /** Whether the line between two points passes a cross-section within all its sides. */
    static boolean passes(MovedSides sides, Vector3D from, Vector3D to) {
        for (List<Vector3D> loop : sides.loops()) {
            double a = from.subtract(loop.get(0)).dot(sides.normal());
            double b = to.subtract(loop.get(0)).dot(sides.normal());
            if (!(a * b < 0)) {
                return false;
            }
            Vector3D crossing = from.lerp(to, a / (a - b));
            for (int i = 0; i < sides.count(); i++) {
                if (crossing.subtract(loop.get(i)).dot(sides.outward(i)) > 0) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Greatest n . (c - p) over the pupil, mm. */
    private double farthest(Vector3D v, Vector3D p, Vector3D n, Vector3D normal) {
        double height = v.subtract(p).dot(normal);
        double beyond = v.subtract(p).dot(n);
        Vector3D s = pupil.frame().origin();
        double value = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < MOST_STEPS; i++) {
            double share = height / (height - s.subtract(p).dot(normal));
            double next = beyond + share * s.subtract(v).dot(n);
            if (i > 0 && next <= value) {
                return value;
            }
            value = next;
            // N - a D with N = beyond (h_v - h_s) + h_v n . (s - v) and D = h_v - h_s, taken as positive.
            double sign = height - s.subtract(p).dot(normal) > 0 ? 1 : -1;
            s = farthest(normal.multiply(sign * (value - beyond)).add(n.multiply(sign * height)));
        }
        return value;
    }

    /** The point of the pupil's outline farthest along a direction. */
    private Vector3D farthest(Vector3D direction) {
        double a = direction.dot(pupil.frame().u());
        double b = direction.dot(pupil.frame().v());
        Outline outline = pupil.outline();
        if (outline instanceof Ring ring) {
            double size = Math.hypot(a, b);
            return size > 0
                    ? pupil.frame().at(ring.radius() * a / size, ring.radius() * b / size)
                    : pupil.frame().origin();
        }
        Vector2D best = Vector2D.ZERO;
        double most = Double.NEGATIVE_INFINITY;
        for (Vector2D corner : ((Polygon) outline).corners()) {
            double along = a * corner.getX() + b * corner.getY();
            if (along > most) {
                most = along;
                best = corner;
            }
        }
        return pupil.frame().at(best.getX(), best.getY());
    }
}
