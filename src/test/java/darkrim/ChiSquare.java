package darkrim;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Pearson's test of counts against what was expected of them. The seed of a test is fixed, so a right program passes for ever; the level
 * says how likely it was that a right program failed when the seed was chosen.
 */
public final class ChiSquare {
    /** Normal quantile of 1 - 1e-4: a right program failed once in ten thousand choices of the seed. */
    private static final double QUANTILE = 3.719;

    private ChiSquare() {}

    /**
     * Requires that counts fit equal chances at the level 1e-4.
     *
     * @param counts how often each cell was met; at least 10 each on average
     */
    public static void requireEven(long[] counts) {
        double all = 0;
        for (long count : counts) {
            all += count;
        }
        double expected = all / counts.length;
        assertThat(expected).as("counts in a cell").isGreaterThan(10);
        double sum = 0;
        for (long count : counts) {
            sum += (count - expected) * (count - expected) / expected;
        }
        assertThat(sum).as("chi-square of %d cells", counts.length).isLessThan(limit(counts.length - 1));
    }

    /**
     * Requires that counts fit given chances at the level 1e-4. Cells due less than 20 counts are taken together.
     *
     * @param counts how often each cell was met
     * @param chances the chance of each cell; they add up to 1
     * @param draws how many draws there were
     */
    public static void requireFit(long[] counts, double[] chances, long draws) {
        double sum = 0;
        double rareDue = 0;
        double rareMet = 0;
        int cells = 0;
        for (int i = 0; i < counts.length; i++) {
            double due = chances[i] * draws;
            if (due < 20) {
                rareDue += due;
                rareMet += counts[i];
            } else {
                sum += (counts[i] - due) * (counts[i] - due) / due;
                cells++;
            }
        }
        if (rareDue >= 20) {
            sum += (rareMet - rareDue) * (rareMet - rareDue) / rareDue;
            cells++;
        } else {
            // Too rare for chi-square: a Poisson count this far off has a chance below 1e-4.
            assertThat(rareMet).as("counts in rare cells").isLessThan(rareDue + 6 * Math.sqrt(rareDue) + 6);
        }
        assertThat(cells).as("cells").isGreaterThan(1);
        assertThat(sum).as("chi-square of %d cells", cells).isLessThan(limit(cells - 1));
    }

    /** Upper quantile of chi-square, Wilson and Hilferty, PNAS 17, 1931. */
    private static double limit(int degrees) {
        double spread = 2.0 / (9 * degrees);
        double root = 1 - spread + QUANTILE * Math.sqrt(spread);
        return degrees * root * root * root;
    }
}
