package darkrim.material;

import java.util.List;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * A published fit of the coefficient of linear expansion, log10(alpha / 1e-6) = sum c_i (log10 T)^i, as the NIST cryogenic material properties
 * database (trc.nist.gov/cryogenics) has it for copper. The contraction is its integral from T to 293 K, by Gauss and Legendre's rule.
 *
 * @param coefficients c_0 and so on
 * @param lowest least temperature of the fit, K
 * @param highest greatest temperature of the fit, K
 * @param stated stated error of the fit from 50 K up, as a share
 * @param statedCold the same below 50 K
 */
record ExpansionFit(List<Double> coefficients, double lowest, double highest, double stated, double statedCold)
        implements Contraction {
    private static final GaussIntegrator RULE = new GaussIntegratorFactory(2).legendre(24);
    private static final double COLD = 50;
    /** The rule is used on pieces of which the ends have no greater ratio: the fit is a polynomial of the logarithm. */
    private static final double RATIO = 1.5;

    ExpansionFit {
        coefficients = List.copyOf(coefficients);
    }

    @Override
    public double at(double kelvin) {
        return kelvin <= REFERENCE ? integral(kelvin, REFERENCE) : -integral(REFERENCE, kelvin);
    }

    @Override
    public double accuracy(double kelvin) {
        return kelvin < COLD ? statedCold : stated;
    }

    private double integral(double from, double to) {
        double sum = 0;
        double low = from;
        while (low < to) {
            double high = Math.min(to, RATIO * low);
            double middle = (low + high) / 2;
            double half = (high - low) / 2;
            for (int i = 0; i < RULE.getNumberOfPoints(); i++) {
                sum += half * RULE.getWeight(i) * expansion(middle + half * RULE.getPoint(i));
            }
            low = high;
        }
        return sum;
    }

    /** The coefficient of linear expansion, 1/K. */
    private double expansion(double kelvin) {
        double log = StrictMath.log10(kelvin);
        double sum = 0;
        for (int power = coefficients.size() - 1; power >= 0; power--) {
            sum = sum * log + coefficients.get(power);
        }
        return 1e-6 * StrictMath.pow(10, sum);
    }
}
