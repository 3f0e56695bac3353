package darkrim.material;

/**
 * Silicon. From 124 K up the integral of alpha(T) = (3.725 {1 - exp[-5.88e-3 (T - 124)]} + 5.548e-4 T) 1e-6 /K (Okada and Tokumaru, Journal of
 * Applied Physics 56, 314, 1984; from memory). Below, where silicon grows a little as it gets colder, straight lines through figures of Ekin,
 * Experimental Techniques for Low-Temperature Measurements, 2006, appendix 6.4 (from memory, two digits).
 */
record SiliconFit() implements Contraction {
    private static final double JOINT = 124;
    private static final double HIGHEST = 700;
    private static final double LIMIT = 3.725e-6;
    private static final double RATE = 5.88e-3;
    private static final double SLOPE = 5.548e-10;
    /** The figures have two digits of which the second may be off by one. */
    private static final double STATED = 0.05;

    private static final double[] COLD = {4, 40, 77, JOINT};
    private static final double[] COLD_VALUES = {22e-5, 22e-5, 23e-5, above(JOINT)};

    @Override
    public double lowest() {
        return COLD[0];
    }

    @Override
    public double highest() {
        return HIGHEST;
    }

    @Override
    public double at(double kelvin) {
        if (kelvin >= JOINT) {
            return above(kelvin);
        }
        int next = 1;
        while (COLD[next] < kelvin) {
            next++;
        }
        double share = (kelvin - COLD[next - 1]) / (COLD[next] - COLD[next - 1]);
        return COLD_VALUES[next - 1] + share * (COLD_VALUES[next] - COLD_VALUES[next - 1]);
    }

    /** The closed integral from a temperature to the reference. */
    private static double above(double kelvin) {
        return antiderivative(REFERENCE) - antiderivative(kelvin);
    }

    private static double antiderivative(double kelvin) {
        return LIMIT * (kelvin + StrictMath.exp(-RATE * (kelvin - JOINT)) / RATE) + SLOPE / 2 * kelvin * kelvin;
    }

    @Override
    public double accuracy(double kelvin) {
        return STATED;
    }
}
