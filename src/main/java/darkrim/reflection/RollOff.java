package darkrim.reflection;

import darkrim.geom.UnitCircle;
import java.util.Objects;

/**
 * The shift-invariant roll-off: BRDF = a / (b + d^g), d the distance of the scattered direction from the mirror direction in direction cosines.
 * The law is that of Stover, Optical Scattering (SPIE), and of Church and co-workers (from memory); terms as in ASTM E2387.
 *
 * <p>Directions are drawn by {@link Rings}: in each the law is largest at the inner edge. Immutable.
 */
public final class RollOff implements Lobe {
    private static final int RINGS = 256;
    /** Steps over half a turn in the integral over all directions. */
    private static final int STEPS = 512;

    private final double a;
    private final double b;
    private final double g;
    private final Rings rings;
    /** Integral of d a / (b + d^g) from 0 to each edge. */
    private final double[] within;

    private final double greatestReflectance;

    /**
     * @param a numerator, 1/sr, above 0
     * @param b sets the width of the shoulder, above 0
     * @param g slope, 0 to 10
     * @throws IllegalArgumentException if a number is out of its range
     */
    public RollOff(double a, double b, double g) {
        if (!(a > 0 && a < 1e12 && b >= 1e-12 && b < 1e12 && g >= 0 && g <= 10)) {
            throw new IllegalArgumentException("roll-off a " + a + ", b " + b + ", g " + g);
        }
        this.a = a;
        this.b = b;
        this.g = g;
        double shoulder = g > 0 ? StrictMath.pow(b, 1 / g) : 1;
        double[] edge = Rings.geometric(Math.min(0.1, Math.max(1e-12, 0.05 * shoulder)), RINGS);
        rings = new Rings(edge, ring -> law(edge[ring] * edge[ring]));
        within = new double[RINGS + 1];
        for (int i = 0; i < RINGS; i++) {
            within[i + 1] = within[i] + Quadrature.panel(d -> d * law(d * d), edge[i], edge[i + 1]);
        }
        greatestReflectance = reflectance(1);
    }

    /** The numerator, 1/sr. */
    public double a() {
        return a;
    }

    /** What sets the shoulder. */
    public double b() {
        return b;
    }

    /** The slope. */
    public double g() {
        return g;
    }

    @Override
    public double value(double in, double out, double between) {
        return law(Rings.apart2(in, out, between));
    }

    @Override
    public double density(double given, double drawn, double between) {
        return rings.density(Rings.apart2(given, drawn, between));
    }

    @Override
    public boolean sample(double given, double u, double v, double[] into) {
        return rings.sample(given, u, v, into);
    }

    @Override
    public double greatestWeight() {
        return rings.sum();
    }

    @Override
    public double greatestValue() {
        return law(0);
    }

    /**
     * Polar coordinates about the mirror direction: the radial integral is known up to each edge, the one over the turn is a periodic
     * trapezoid rule.
     */
    @Override
    public double reflectance(double cosine) {
        double sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
        double sum = 0;
        for (int i = 0; i <= STEPS; i++) {
            double turn = 0.5 * i / STEPS;
            double across = sine * UnitCircle.sine(turn);
            double reach = Math.sqrt(Math.max(0, 1 - across * across)) - sine * UnitCircle.cosine(turn);
            sum += (i == 0 || i == STEPS ? 0.5 : 1) * radial(Math.max(0, reach));
        }
        return 2 * Math.PI * sum / STEPS;
    }

    /** About normal incidence the disc of all directions is centred on the peak; off it, it holds less (Anderson's theorem, 1955). */
    @Override
    public double greatestReflectance() {
        return greatestReflectance;
    }

    @Override
    public String describe() {
        return "a " + a + ", b " + b + ", g " + g;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RollOff that && a == that.a && b == that.b && g == that.g;
    }

    @Override
    public int hashCode() {
        return Objects.hash(a, b, g);
    }

    private double law(double d2) {
        if (g == 2) {
            return a / (b + d2);
        }
        return a / (b + (g == 0 ? 1 : StrictMath.pow(d2, g / 2)));
    }

    private double radial(double reach) {
        int ring = rings.ring(reach * reach);
        return within[ring] + Quadrature.panel(d -> d * law(d * d), rings.edge(ring), reach);
    }
}
