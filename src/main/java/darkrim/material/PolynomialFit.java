package darkrim.material;

import java.util.List;

/**
 * A published fit of the length itself: (L - L293) / L293 = (a + bT + cT^2 + dT^3 + eT^4) 1e-5 above a low temperature, and constant below. This
 * is the form of the NIST cryogenic material properties database (trc.nist.gov/cryogenics).
 *
 * @param coefficients a to e, in 1e-5 and powers of K
 * @param low below this the value is constant, K
 * @param atLow that value, 1e-5
 * @param lowest least temperature of the fit, K
 * @param highest greatest temperature of the fit, K
 * @param stated stated error of the fit, as a share
 */
record PolynomialFit(List<Double> coefficients, double low, double atLow, double lowest, double highest, double stated)
        implements Contraction {
    PolynomialFit {
        coefficients = List.copyOf(coefficients);
    }

    @Override
    public double at(double kelvin) {
        if (kelvin == REFERENCE) {
            // The fit need not go through 0 there: what is left is within its accuracy.
            return 0;
        }
        if (kelvin <= low) {
            return -1e-5 * atLow;
        }
        double sum = 0;
        for (int power = coefficients.size() - 1; power >= 0; power--) {
            sum = sum * kelvin + coefficients.get(power);
        }
        return -1e-5 * sum;
    }

    @Override
    public double accuracy(double kelvin) {
        return stated;
    }
}
