package darkrim.layout;

/**
 * How hard to look.
 *
 * @param seed seed of all random streams
 * @param confidence confidence of all sampled verdicts together, above 0.5 and below 1
 * @param mostSamples no more samples than this for the whole check
 */
public record SamplingSpec(long seed, double confidence, long mostSamples) {
    /** What holds where nothing is stated. */
    public static final SamplingSpec DEFAULT = new SamplingSpec(1, 0.999, 200_000_000L);
}
