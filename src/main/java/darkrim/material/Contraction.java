package darkrim.material;

/**
 * How much shorter a material is at a temperature than at {@link #REFERENCE}: (L293 - L) / L293, positive where it has shrunk; of a table of
 * the user's than a length of the user's choice. Alike in all directions. Immutable.
 */
public sealed interface Contraction permits PolynomialFit, ExpansionFit, SiliconFit, ContractionTable {
    /** Where the contraction of the program's own materials is 0, K. */
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
        double first = at(from);
        return from == to ? 0 : (at(to) - first) / (1 - first);
    }
}
