package darkrim.verdict;

/**
 * How sampling goes about it.
 *
 * @param firstBatches batches that a surface gets first, of each class of light
 * @param measured what is measured
 * @param looks how often it is looked at, at most; from look to look the samples of what is undecided are doubled
 */
public record Plan(int firstBatches, Measured measured, int looks) {
    /** What is measured. */
    public enum Measured {
        /** Only what sampling must decide. */
        UNDECIDED,
        /** Every value that a requirement asks for, unless it is known to be 0; the mean of each batch is kept. */
        VALUES,
        /** Every surface, for the record. */
        EVERYTHING
    }

    /** Everything is measured, and what is undecided is looked at until the budget ends. */
    public static final Plan FULL = new Plan(2, Measured.EVERYTHING, Integer.MAX_VALUE);

    /** Each surface is looked at once, for those who want what is proved: sampled numbers are then worth little. */
    public static final Plan ONCE = new Plan(2, Measured.EVERYTHING, 1);

    /** Only what decides is measured, everywhere alike: what differs between two layouts is then not the number of samples. */
    public static Plan alike(int batches) {
        return new Plan(batches, Measured.UNDECIDED, 1);
    }

    /** Every value is measured, everywhere alike, so that curves can be drawn and two layouts compared batch by batch. */
    public static Plan values(int batches) {
        return new Plan(batches, Measured.VALUES, 1);
    }

    /** How many batches hold a number of samples; at least one. */
    public static int batchesOf(long samples) {
        long batches = -Math.floorDiv(-samples, (long) Measurements.BATCH);
        return (int) Math.max(1, Math.min(Integer.MAX_VALUE, batches));
    }

    /** How many samples some batches hold. */
    public static long samplesOf(int batches) {
        return (long) batches * Measurements.BATCH;
    }

    /** Checks the numbers. */
    public Plan {
        if (firstBatches < 1 || looks < 1) {
            throw new IllegalArgumentException("nothing would be measured");
        }
    }
}
