package darkrim.material;

/**
 * How much shorter a material is at a temperature than at {@link #REFERENCE}: (L293 - L) / L293, positive where it has shrunk. Alike in all
 * directions. Immutable.
 */
public sealed interface Contraction permits PolynomialFit, ExpansionFit, SiliconFit, ContractionTable {
    /** Where the contraction is 0, K. */
    double REFERENCE = 293;

    /** Least temperature at which it is known, K. */
    double lowest();

    /** Greatest temperature at which it is known, K. */
    double highest();

    /**
     * The contraction at a temperature.
     *
     * @param kelvin temperature, K, from {@link #lowest()} to {@link #highest()}
     */
    double at(double kelvin);

    /**
     * How well it is known, as a share of itself.
     *
     * @param kelvin temperature, K
     * @return NaN where that is not stated
     */
    double accuracy(double kelvin);

    /** Whether it is known at a temperature, K. */
    default boolean covers(double kelvin) {
        return kelvin >= lowest() && kelvin <= highest();
    }

    /**
     * How much shorter it gets from one temperature to another, as a share of its length at the first; exactly 0 where the two are the same.
     *
     * @param from first temperature, K
     * @param to second temperature, K
     * @throws IllegalArgumentException if it is not known at one of them
     */
    default double between(double from, double to) {
        if (!covers(from) || !covers(to)) {
            throw new IllegalArgumentException("known from " + lowest() + " to " + highest() + " K only");
        }
        // A fit need not go through 0 at the reference: what is left there is within its accuracy and counts as 0.
        double first = from == REFERENCE ? 0 : at(from);
        double second = to == REFERENCE ? 0 : at(to);
        return from == to ? 0 : (second - first) / (1 - first);
    }
}
