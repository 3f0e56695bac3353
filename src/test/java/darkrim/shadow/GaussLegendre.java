package darkrim.shadow;

import java.util.function.DoubleUnaryOperator;

/** The rule of a given order; nodes by Newton's method on the Legendre recurrence. */
final class GaussLegendre {
    private final double[] nodes;
    private final double[] weights;

    GaussLegendre(int order) {
        nodes = new double[order];
        weights = new double[order];
        for (int i = 0; i < order; i++) {
            double x = Math.cos(Math.PI * (i + 0.75) / (order + 0.5));
            double slope = 0;
            for (int step = 0; step < 50; step++) {
                double before = 1;
                double value = x;
                for (int k = 2; k <= order; k++) {
                    double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
                    before = value;
                    value = next;
                }
                slope = order * (x * value - before) / (x * x - 1);
                x -= value / slope;
            }
            nodes[i] = x;
            weights[i] = 2 / ((1 - x * x) * slope * slope);
        }
    }

    double integrate(double from, double to, DoubleUnaryOperator f) {
        double sum = 0;
        for (int i = 0; i < nodes.length; i++) {
            sum += weights[i] * f.applyAsDouble(0.5 * (from + to) + 0.5 * (to - from) * nodes[i]);
        }
        return 0.5 * (to - from) * sum;
    }
}
