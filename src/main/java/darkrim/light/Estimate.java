package darkrim.light;

/**
 * A sampled mean with what is known about its error.
 *
 * @param samples number of samples
 * @param mean their mean; 0 where there are none
 * @param variance of the mean, times the number of samples: for independent samples their variance (n - 1 in the denominator), for evenly spread ones
 *     less; 0 where there are fewer than two that are independent
 * @param largest no sample can be larger than this; samples are never negative
 * @param together how many samples depend on each other: their means are the independent samples; 1 where each is independent
 */
public record Estimate(long samples, double mean, double variance, double largest, int together) {
    /** Of independent samples. */
    public Estimate(long samples, double mean, double variance, double largest) {
        this(samples, mean, variance, largest, 1);
    }

    /**
     * Of independent samples of which most may be 0, from their sums; no sums are kept for those.
     *
     * @param samples number of samples, the zeros among them
     * @param sum of the samples
     * @param squares sum of their squares
     * @param largest no sample can be larger
     */
    static Estimate ofSums(long samples, double sum, double squares, double largest) {
        double mean = sum / samples;
        double variance = samples < 2 ? 0 : Math.max(0, squares - samples * mean * mean) / (samples - 1);
        return new Estimate(samples, mean, variance, largest);
    }

    /** Number of independent samples: of groups of those that depend on each other. */
    public long independent() {
        return samples / together;
    }

    /** Nothing sampled yet. */
    public static Estimate none(double largest) {
        return new Estimate(0, 0, 0, largest);
    }

    /** Standard error of the mean; infinite where there are fewer than two samples. */
    public double standardError() {
        return independent() < 2 ? Double.POSITIVE_INFINITY : Math.sqrt(variance / samples);
    }

    /**
     * Both samples together, by the pairwise update of Chan, Golub, LeVeque, "Updating formulae and a pairwise algorithm for computing sample
     * variances", 1979.
     */
    public Estimate and(Estimate other) {
        if (other.samples == 0) {
            return this;
        }
        if (samples == 0) {
            return other;
        }
        long total = samples + other.samples;
        int group = Math.max(together, other.together);
        double apart = other.mean - mean;
        double squares = variance * (independent() - 1)
                + other.variance * (other.independent() - 1)
                + apart * apart * ((double) samples * other.samples / total);
        double merged = mean + apart * other.samples / total;
        return new Estimate(total, merged, squares / (total / group - 1), Math.max(largest, other.largest), group);
    }

    /** The estimate of the mean times a factor that is not negative. */
    public Estimate times(double factor) {
        return new Estimate(samples, mean * factor, variance * factor * factor, largest * factor, together);
    }
}
