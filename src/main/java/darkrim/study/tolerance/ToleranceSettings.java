package darkrim.study.tolerance;

import java.util.Optional;

/**
 * How a tolerance study goes about it.
 *
 * @param builds number of sampled builds, at least 1
 * @param wantedYield share of builds that must pass, above 0 and below 1; without it the worst case is judged
 * @param withMargins whether the margins of every build are measured
 * @param threads number of threads; it never changes a result
 * @param seed seed instead of the layout's
 * @param batches batches of samples that each sampled number gets in each build
 */
public record ToleranceSettings(
        int builds, Optional<Double> wantedYield, boolean withMargins, int threads, Optional<Long> seed, int batches) {
    /** Builds where nothing is said. */
    public static final int BUILDS = 200;
    /** Batches of samples where nothing is said. */
    public static final int BATCHES = 4;

    /** The usual ones. */
    public static final ToleranceSettings DEFAULT = new ToleranceSettings(
            BUILDS, Optional.empty(), false, Runtime.getRuntime().availableProcessors(), Optional.empty(), BATCHES);

    /** Checks the numbers. */
    public ToleranceSettings {
        if (builds < 1
                || threads < 1
                || wantedYield.filter(share -> !(share > 0 && share < 1)).isPresent()) {
            throw new IllegalArgumentException("expected at least one build and thread, and a yield between 0 and 1");
        }
    }
}
