package darkrim.layout;

/**
 * How far what is built may be from what is drawn.
 *
 * @param minus how far below, at least 0; mm, degrees or plain
 * @param plus how far above, at least 0
 * @param distribution how the deviations spread
 * @param sigmas for the normal distribution: how many standard deviations lie between the middle of the tolerance and an end
 */
public record Tolerance(double minus, double plus, Distribution distribution, double sigmas) {
    /** Standard deviations within a tolerance where nothing is stated: common practice, no source. */
    public static final double SIGMAS = 3;

    /** The same way up and down. */
    public static Tolerance within(double either, Distribution distribution, double sigmas) {
        return new Tolerance(either, either, distribution, sigmas);
    }

    /** Whether there is no deviation at all. */
    public boolean isNothing() {
        return minus == 0 && plus == 0;
    }
}
