package darkrim.shadow;

import darkrim.geom.Outline;
import darkrim.geom.Ring;
import java.util.List;

/**
 * A circle in the pupil's plane that bounds what is seen.
 *
 * @param u centre, mm
 * @param v centre, mm
 * @param radius radius, mm
 * @param keepsInside whether the inside is kept; otherwise the outside
 */
record Circle(double u, double v, double radius, boolean keepsInside) {
    /** The circles that bound an outline: none for a polygon. */
    static List<Circle> boundsOf(Outline outline) {
        if (!(outline instanceof Ring ring)) {
            return List.of();
        }
        Circle rim = new Circle(0, 0, ring.radius(), true);
        return ring.hole() > 0 ? List.of(rim, new Circle(0, 0, ring.hole(), false)) : List.of(rim);
    }

    /** Whether a point lies on the side that is kept. */
    boolean keeps(double atU, double atV) {
        double du = atU - u;
        double dv = atV - v;
        return (du * du + dv * dv <= radius * radius) == keepsInside;
    }

    /** Whether two circles are the same to rounding, and keep the same side. */
    boolean isSameAs(Circle other) {
        double close = 1e-13 * radius;
        return keepsInside == other.keepsInside
                && Math.abs(u - other.u) < close
                && Math.abs(v - other.v) < close
                && Math.abs(radius - other.radius) < close;
    }
}
