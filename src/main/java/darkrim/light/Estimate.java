package darkrim.light;

/**
 * A sampled mean with what is known about its error.
 *
 * @param samples number of independent samples
 * @param mean their mean; 0 where there are none
 * @param variance their variance (n - 1 in the denominator); 0 where there are fewer than two
 * @param largest no sample can be larger than this; samples are never negative
 */
public record Estimate(long samples, double mean, double variance, double largest) {
    /** Nothing sampled yet. */
    public static Estimate none(double largest) {
        return new Estimate(0, 0, 0, largest);
    }

    /** Standard error of the mean; infinite where there are fewer than two samples. */
    public double standardError() {
        return samples < 2 ? Double.POSITIVE_INFINITY : Math.sqrt(variance / samples);
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
        double apart = other.mean - mean;
        double squares = variance * (samples - 1)
                + other.variance * (other.samples - 1)
                + apart * apart * ((double) samples * other.samples / total);
        double merged = mean + apart * other.samples / total;
        return new Estimate(total, merged, squares / (total - 1), Math.max(largest, other.largest));
    }

    /** The estimate of the mean times a factor that is not negative. */
    public Estimate times(double factor) {
        return new Estimate(samples, mean * factor, variance * factor * factor, largest * factor);
    }
}
