package darkrim.emission;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Radiance of a black body within a band of wavelengths.
 *
 * <p>Planck's law over x = h c / (lambda k T): the photon radiance is 2 k^3 T^3 / (h^3 c^2) times the integral of x^2 / (e^x - 1), the
 * radiance 2 k^4 T^4 / (h^3 c^2) times that of x^3 / (e^x - 1) (Planck 1901; any radiometry text). The integrand has one sign, so Gauss
 * and Legendre's rule on panels of one unit loses nothing where the band is narrow or far in the tail: the error is below 1e-12 of the value.
 * Constants are the exact ones of the SI of 2019, as CODATA 2018 lists them.
 */
public final class Planck {
    /** Planck's constant, J s. */
    public static final double PLANCK_CONSTANT = 6.62607015e-34;
    /** Speed of light, m/s. */
    public static final double LIGHT_SPEED = 299_792_458;
    /** Boltzmann's constant, J/K. */
    public static final double BOLTZMANN_CONSTANT = 1.380649e-23;

    /** The second radiation constant h c / k, um K. */
    public static final double SECOND_RADIATION_CONSTANT = PLANCK_CONSTANT * LIGHT_SPEED / BOLTZMANN_CONSTANT * 1e6;

    /** Beyond so many units of x above its beginning the integrand adds less than 1e-20 of the whole. */
    private static final double REACH = 60;

    private static final int POINTS = 16;

    private Planck() {}

    /**
     * Photon radiance within a band.
     *
     * @param kelvin temperature, K, 0 or more
     * @param from shortest wavelength, um, above 0
     * @param to longest wavelength, um, may be infinite
     * @return photons/(s m2 sr)
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static double photonRadiance(double kelvin, double from, double to) {
        double scale = 2 * cube(BOLTZMANN_CONSTANT * kelvin / PLANCK_CONSTANT) / (LIGHT_SPEED * LIGHT_SPEED);
        return scale == 0 ? checked(kelvin, from, to) : scale * integral(2, kelvin, from, to);
    }

    /**
     * Radiance within a band.
     *
     * @param kelvin temperature, K, 0 or more
     * @param from shortest wavelength, um, above 0
     * @param to longest wavelength, um, may be infinite
     * @return W/(m2 sr)
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static double radiance(double kelvin, double from, double to) {
        double scale = 2
                * cube(BOLTZMANN_CONSTANT * kelvin / PLANCK_CONSTANT)
                / (LIGHT_SPEED * LIGHT_SPEED)
                * (BOLTZMANN_CONSTANT * kelvin);
        return scale == 0 ? checked(kelvin, from, to) : scale * integral(3, kelvin, from, to);
    }

    private static double checked(double kelvin, double from, double to) {
        if (!(kelvin >= 0 && kelvin < Double.POSITIVE_INFINITY && from > 0 && to > from)) {
            throw new IllegalArgumentException("a black body of " + kelvin + " K from " + from + " to " + to + " um");
        }
        return 0;
    }

    /** Integral of x^n / (e^x - 1) over the band. */
    private static double integral(int n, double kelvin, double from, double to) {
        checked(kelvin, from, to);
        double low = SECOND_RADIATION_CONSTANT / (to * kelvin);
        double high = Math.min(SECOND_RADIATION_CONSTANT / (from * kelvin), low + REACH);
        // e^-low stands before the integral, so that nothing underflows early.
        DoubleUnaryOperator law =
                x -> (n == 2 ? x * x : x * x * x) * StrictMath.exp(low - x) / (x == 0 ? 1 : -StrictMath.expm1(-x));
        GaussIntegratorFactory rules = new GaussIntegratorFactory();
        int panels = Math.max(1, (int) Math.ceil(high - low));
        double sum = 0;
        for (int i = panels - 1; i >= 0; i--) {
            double a = low + (high - low) * i / panels;
            double b = low + (high - low) * (i + 1) / panels;
            GaussIntegrator rule = rules.legendre(POINTS, a, b);
            sum += rule.integrate(law::applyAsDouble);
        }
        return StrictMath.exp(-low) * sum;
    }

    private static double cube(double value) {
        return value * value * value;
    }
}
