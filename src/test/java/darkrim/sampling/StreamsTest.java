package darkrim.sampling;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.ChiSquare;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.junit.jupiter.api.Test;

/** Streams depend on seed, name and batch, on all of them, and on nothing else. All seeds are fixed. */
class StreamsTest {
    @Test
    void theSameUnitGetsTheSameNumbersOnAnyThread() {
        List<Long> here = firstOf(new Streams(42), 64);
        List<Long> there = IntStream.range(0, 64)
                .parallel()
                .mapToObj(batch ->
                        new Streams(42).stream("mosaic/die[1,1]/active", batch).nextLong())
                .toList();
        assertThat(there).isEqualTo(here);
    }

    /**
     * Expected numbers: xoshiro256++, SplitMix64 and FNV-1a written out in another language. Kept to the last bit: a change here changes
     * every result that was ever reported with its seed.
     */
    @Test
    void theFirstNumbersAreTheseForEver() {
        UniformRandomProvider stream = new Streams(1).stream("lid/land", 7);
        assertThat(List.of(stream.nextLong(), stream.nextLong()))
                .isEqualTo(List.of(-5028479318846745174L, -1028379708495977557L));
    }

    @Test
    void noTwoUnitsStartAlike() {
        Set<Long> starts = new HashSet<>();
        int units = 0;
        for (long seed = 0; seed < 5; seed++) {
            for (String name : List.of("", "a", "b", "ab", "ba", "lid/wall/+x", "lid/wall/-x")) {
                for (long batch = -1; batch < 2000; batch++) {
                    starts.add(new Streams(seed).stream(name, batch).nextLong());
                    units++;
                }
            }
        }
        // Two of 70,000 would meet by chance once in 7e9 programs.
        assertThat(starts).hasSize(units);
    }

    /** Chi-square at level 1e-4. */
    @Test
    void oneStreamIsEven() {
        UniformRandomProvider stream = new Streams(3).stream("even", 0);
        long[] counts = new long[64];
        for (int i = 0; i < 100_000; i++) {
            counts[8 * (int) (8 * stream.nextDouble()) + (int) (8 * stream.nextDouble())]++;
        }
        ChiSquare.requireEven(counts);
    }

    /** Chi-square at level 1e-4, over the first numbers of many batches: what a batch of few rays sees. */
    @Test
    void theFirstNumbersOfBatchesAreEven() {
        long[] counts = new long[64];
        for (int batch = 0; batch < 50_000; batch++) {
            UniformRandomProvider stream = new Streams(3).stream("even", batch);
            counts[8 * (int) (8 * stream.nextDouble()) + (int) (8 * stream.nextDouble())]++;
        }
        ChiSquare.requireEven(counts);
    }

    /** Each of 200 correlations of 10,000 pairs beyond 4.5 standard deviations has a chance of 7e-6: 1.4e-3 in all. */
    @Test
    void neighbouringUnitsAreNotCorrelated() {
        int pairs = 10_000;
        for (int k = 0; k < 100; k++) {
            UniformRandomProvider a = new Streams(5).stream("a", k);
            UniformRandomProvider nextBatch = new Streams(5).stream("a", k + 1);
            UniformRandomProvider otherName = new Streams(5).stream("b", k);
            double byBatch = 0;
            double byName = 0;
            for (int i = 0; i < pairs; i++) {
                double x = a.nextDouble() - 0.5;
                byBatch += x * (nextBatch.nextDouble() - 0.5);
                byName += x * (otherName.nextDouble() - 0.5);
            }
            // The product of two such has the standard deviation 1/12.
            double limit = 4.5 / 12 * Math.sqrt(pairs);
            assertThat(Math.abs(byBatch)).isLessThan(limit);
            assertThat(Math.abs(byName)).isLessThan(limit);
        }
    }

    private static List<Long> firstOf(Streams streams, int batches) {
        return IntStream.range(0, batches)
                .mapToObj(
                        batch -> streams.stream("mosaic/die[1,1]/active", batch).nextLong())
                .toList();
    }
}
