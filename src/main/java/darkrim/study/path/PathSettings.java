package darkrim.study.path;

/**
 * What is asked of a study of light paths.
 *
 * @param most how many reflections are followed, 1 to {@link #MOST}
 * @param top how many paths of each order are described for each receiver, at least 1
 */
public record PathSettings(int most, int top) {
    /** Light is followed through no more reflections than this. */
    public static final int MOST = 8;

    /** Samples of each receiver where no number is asked for. */
    public static final long SAMPLES = 200_000;

    /** Requires numbers in their ranges. */
    public PathSettings {
        if (most < 1 || most > MOST || top < 1) {
            throw new IllegalArgumentException(most + " reflections, " + top + " paths");
        }
    }
}
