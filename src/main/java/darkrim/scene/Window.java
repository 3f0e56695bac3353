package darkrim.scene;

import java.util.OptionalDouble;

/**
 * A plane plate between the parts and the pupil, parallel to the focal plane and wide enough for all light: a window or a filter. Outside it
 * is vacuum.
 *
 * <p>Light that reaches a point below it under an angle a to the z axis crossed the plate under b, sin a = n sin b. Below the plate rays are
 * straight, and all of light, shadow and proof below it is that of straight lines; only where a line comes from on the pupil differs. With
 * slope = tan a, a point H under the pupil and a plate of thickness t, the way from the point to the pupil goes aside by
 * r = slope (H - t + t / sqrt(n2 + (n2 - 1) slope2)).
 *
 * <p>Light is thrown to and fro between the faces; the parts add without interference, each of the two polarisations by itself: T = (1 - R1)(1 -
 * R2) q / (1 - R1 R2 q2), q what one crossing leaves. Born and Wolf, Principles of Optics, 1.5.2 and 7.6 (sections from memory), without phases.
 *
 * @param name its name
 * @param bottom height of its lower face above the focal plane, mm
 * @param thickness thickness, mm
 * @param index refractive index, at least 1
 * @param lower reflectance of the lower face at every angle, in place of Fresnel's
 * @param upper reflectance of the upper face, likewise
 * @param internal share that one crossing along z leaves, above 0
 */
public record Window(
        String name,
        double bottom,
        double thickness,
        double index,
        OptionalDouble lower,
        OptionalDouble upper,
        double internal) {
    private static final int MOST_STEPS = 60;

    /**
     * @throws IllegalArgumentException if a number is out of its range
     */
    public Window {
        if (!(bottom > 0 && thickness > 0 && index >= 1 && index < 1e3 && internal > 0 && internal <= 1)) {
            throw new IllegalArgumentException(
                    "window at " + bottom + ", thickness " + thickness + ", index " + index + ", internal " + internal);
        }
        if (!(lower.orElse(0) >= 0 && lower.orElse(0) < 1 && upper.orElse(0) >= 0 && upper.orElse(0) < 1)) {
            throw new IllegalArgumentException("reflectances " + lower + ", " + upper);
        }
    }

    /** Height of its upper face, mm. */
    public double top() {
        return bottom + thickness;
    }

    /** By how much nearer the pupil seems along z, mm: t (1 - 1 / n). */
    public double shift() {
        return thickness * (1 - 1 / index);
    }

    /**
     * How far aside the way from a point goes until it reaches the pupil.
     *
     * @param height how far the point lies under the pupil, mm; more than the thickness
     * @param slope tangent of the angle to the z axis below the plate
     */
    public double aside(double height, double slope) {
        return slope * (height - thickness + thickness * inside(slope));
    }

    /** Tangent of the angle within the plate over that below it. */
    double inside(double slope) {
        return 1 / Math.sqrt(index * index + (index * index - 1) * slope * slope);
    }

    /** The change of {@link #aside} with the slope, mm. */
    private double stretch(double height, double slope) {
        double g = inside(slope);
        return height - thickness + thickness * index * index * g * g * g;
    }

    /**
     * The slope under which a way goes aside by a distance: the inverse of {@link #aside}. That function rises and is hollow from below, so
     * Newton's steps climb to the root from the paraxial guess, which lies below it.
     *
     * @param height as there
     * @param aside the distance, mm, 0 or more
     */
    public double slope(double height, double aside) {
        double slope = aside / (height - thickness + thickness / index);
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = (aside - aside(height, slope)) / stretch(height, slope);
            slope += step;
            if (!(step > 1e-15 * slope)) {
                break;
            }
        }
        return slope;
    }

    /**
     * Solid angle that an element of the pupil fills below the plate, over its area, 1/mm2: dw / dA = sin a da / (r dr).
     *
     * @param height how far the point lies under the pupil, mm
     * @param slope tangent of the angle to the z axis below the plate
     */
    public double solidAngle(double height, double slope) {
        double cosine = 1 / Math.sqrt(1 + slope * slope);
        double perSlope = height - thickness + thickness * inside(slope);
        return cosine * cosine * cosine / (perSlope * stretch(height, slope));
    }

    /**
     * How much farther aside the straight line goes that stands for a way, where the pupil seems to be, mm, 0 or more; it never falls with the
     * slope: t (tan a / n - tan b).
     */
    public double excess(double slope) {
        return thickness * slope * Math.max(0, 1 / index - inside(slope));
    }

    /**
     * Share of unpolarised light that passes.
     *
     * @param cosine of the angle to the z axis outside
     */
    public double transmittance(double cosine) {
        double q = crossing(cosine);
        return (through(s(cosine), q) + through(p(cosine), q)) / 2;
    }

    /**
     * Share of unpolarised light from below that is thrown back down.
     *
     * @param cosine of the angle to the z axis outside
     */
    public double reflectance(double cosine) {
        double q = crossing(cosine);
        return (back(s(cosine), q) + back(p(cosine), q)) / 2;
    }

    /**
     * How often light that is thrown back down crossed the plate to and fro before: drawn in proportion to what comes so.
     *
     * @param cosine of the angle to the z axis outside
     * @param first a uniform number, 0 to 1: picks the polarisation
     * @param second another: picks the number
     */
    public int roundTrips(double cosine, double first, double second) {
        double q = crossing(cosine);
        double s = s(cosine);
        double p = p(cosine);
        double backS = back(s, q);
        double fresnel = first * (backS + back(p, q)) < backS ? s : p;
        double r1 = lower.orElse(fresnel);
        double atOnce = r1 / back(fresnel, q);
        if (second < atOnce || !(atOnce < 1)) {
            return 0;
        }
        double again = r1 * upper.orElse(fresnel) * q * q;
        if (!(again > 0)) {
            return 1;
        }
        double left = (1 - second) / (1 - atOnce);
        return 1 + (int) Math.min(1000, StrictMath.log(left) / StrictMath.log(again));
    }

    /** How far aside light goes within the plate until it is back at the lower face, mm. */
    public double roundTrip(double slope) {
        return 2 * thickness * slope * inside(slope);
    }

    private double through(double fresnel, double q) {
        double r1 = lower.orElse(fresnel);
        double r2 = upper.orElse(fresnel);
        return r1 * r2 * q * q < 1 ? (1 - r1) * (1 - r2) * q / (1 - r1 * r2 * q * q) : 0;
    }

    private double back(double fresnel, double q) {
        double r1 = lower.orElse(fresnel);
        double r2 = upper.orElse(fresnel);
        return r1 * r2 * q * q < 1 ? r1 + (1 - r1) * (1 - r1) * r2 * q * q / (1 - r1 * r2 * q * q) : 1;
    }

    /** Fresnel's reflectance of light polarised across the plane of incidence; the same from either side of a face. */
    private double s(double cosine) {
        double within = within(cosine);
        double root = cosine + within > 0 ? (cosine - within) / (cosine + within) : 1;
        return root * root;
    }

    /** The same of light polarised in the plane of incidence. */
    private double p(double cosine) {
        double within = within(cosine);
        double square = index * index * cosine;
        double root = square + within > 0 ? (square - within) / (square + within) : 1;
        return root * root;
    }

    /** Index times the cosine within the plate. */
    private double within(double cosine) {
        return Math.sqrt(Math.max(0, index * index - 1 + cosine * cosine));
    }

    /** Share of light that one crossing of the material leaves. */
    private double crossing(double cosine) {
        return internal == 1 ? 1 : StrictMath.pow(internal, index / within(cosine));
    }
}
