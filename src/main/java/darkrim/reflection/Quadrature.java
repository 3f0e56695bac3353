package darkrim.reflection;

import java.util.function.DoubleUnaryOperator;

/** Integrals of functions of one number by Gauss and Legendre's rule of eight points on panels. */
final class Quadrature {
    /** Roots of the Legendre polynomial of degree eight, and the weights (Abramowitz and Stegun, table 25.4, from memory; tested). */
    private static final double[] ROOTS = {
        0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363
    };

    private static final double[] WEIGHTS = {
        0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763
    };

    /** Panels over the cosine; with kinks at places unknown the error stays below about 1e-6. */
    private static final int PANELS = 200;

    private Quadrature() {}

    /** The integral over one panel. */
    static double panel(DoubleUnaryOperator function, double from, double to) {
        double middle = (from + to) / 2;
        double half = (to - from) / 2;
        double sum = 0;
        for (int i = 0; i < ROOTS.length; i++) {
            sum += WEIGHTS[i]
                    * (function.applyAsDouble(middle - half * ROOTS[i])
                            + function.applyAsDouble(middle + half * ROOTS[i]));
        }
        return half * sum;
    }

    /** The integral of a function of the cosine of an angle from 0 to 1. */
    static double overCosine(DoubleUnaryOperator function) {
        double sum = 0;
        for (int i = 0; i < PANELS; i++) {
            sum += panel(function, (double) i / PANELS, (i + 1.0) / PANELS);
        }
        return sum;
    }
}
