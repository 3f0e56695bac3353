package darkrim.verdict;

/**
 * How sampling goes about it.
 *
 * @param firstBatches batches that a surface gets first, of each class of light
 * @param everySurface whether every surface is measured for the record, or only those that decide something
 * @param looks how often it is looked at, at most; from look to look the samples of what is undecided are doubled
 */
public record Plan(int firstBatches, boolean everySurface, int looks) {
    /** Everything is measured, and what is undecided is looked at until the budget ends. */
    public static final Plan FULL = new Plan(2, true, Integer.MAX_VALUE);

    /** Only what decides is measured, everywhere alike: what differs between two layouts is then not the number of samples. */
    public static Plan alike(int batches) {
        return new Plan(batches, false, 1);
    }

    /** How many batches hold a number of samples; at least one. */
    public static int batchesOf(long samples) {
        long batches = -Math.floorDiv(-samples, (long) Measurements.BATCH);
        return (int) Math.max(1, Math.min(Integer.MAX_VALUE, batches));
    }

    /** Checks the numbers. */
    public Plan {
        if (firstBatches < 1 || looks < 1) {
            throw new IllegalArgumentException("nothing would be measured");
        }
    }
}
