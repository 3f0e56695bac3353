package darkrim.light;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Sums of what came to each cell of a map by samples that are drawn over the whole receiver: one that falls in a cell counts there as often as
 * there are cells, all others as 0 (Horvitz and Thompson, "A generalization of sampling without replacement from a finite universe", 1952). Cells
 * are of equal area. Mutable, one for each batch.
 */
final class MapSums {
    private final double[] sum;
    private final double[] squares;

    MapSums(int cells) {
        sum = new double[cells];
        squares = new double[cells];
    }

    /** Adds what one sample got at a cell; less than 0 for no cell. */
    void add(int cell, double value) {
        if (cell >= 0 && value > 0) {
            double counted = value * sum.length;
            sum[cell] += counted;
            squares[cell] += counted * counted;
        }
    }

    /**
     * Means over all samples.
     *
     * @param largest no sample of the whole receiver is larger
     */
    List<Estimate> estimates(long samples, double largest) {
        return IntStream.range(0, sum.length)
                .mapToObj(cell -> Estimate.ofSums(samples, sum[cell], squares[cell], largest * sum.length))
                .toList();
    }
}
