package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.light.Estimate;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ConfidenceSequenceTest {
    @Test
    void theBoundsShareTheRiskOfTheoremFourOfMaurerAndPontilAmongThreeEvents() {
        // Maurer and Pontil 2009, theorem 4, one side: sqrt(2 V ln(2/d)/n) + 7 ln(2/d)/(3(n-1)), of two events of d/2
        // each.
        // Both sides are three events of d/3 each (Bennett above, Bennett below, variance): one side with 2 d/3 for d.
        // At
        // the first look d = risk/2.
        Estimate estimate = new Estimate(1000, 0.3, 0.04, 1);
        double logarithm = Math.log(2 / (0.005 * 2 / 3));
        double expected = Math.sqrt(2 * 0.04 * logarithm / 1000) + 7 * logarithm / (3 * 999);
        assertThat(new ConfidenceSequence(0.01).width(estimate, 1)).isCloseTo(expected, within(1e-15));
    }

    @Test
    void zeroHitsNeverProveZero() {
        ConfidenceSequence sequence = new ConfidenceSequence(0.001);
        for (long n = 2; n < 1L << 40; n *= 16) {
            assertThat(sequence.upper(new Estimate(n, 0, 0, 1), 1)).isPositive();
        }
        // The rule of three bounds the share of hits by 3/n at 95 %; a bound that may be looked at again cannot be
        // tighter.
        assertThat(sequence.upper(new Estimate(1_000_000, 0, 0, 1), 1)).isGreaterThan(3e-6);
    }

    @Test
    void anEmptySampleSaysNothing() {
        ConfidenceSequence sequence = new ConfidenceSequence(0.001);
        assertThat(sequence.lower(Estimate.none(2), 1)).isZero();
        assertThat(sequence.upper(Estimate.none(2), 1)).isEqualTo(2);
    }

    @Test
    void aRiskOutsideZeroToOneIsRefused() {
        assertThatThrownBy(() -> new ConfidenceSequence(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ConfidenceSequence(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    /**
     * Looks ten times at rare events and counts how often the true mean ever leaves the bounds, on either side. With risk 0.1 at most 10 % of
     * 2,000 runs may; 261 runs is 4.5 standard deviations (13.4 runs) above that: true bounds fail here in less than 1e-5 of all seeds.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.01, 0.2, 0.5})
    void theTrueMeanStaysInsideAtEveryLook(double mean) {
        ConfidenceSequence sequence = new ConfidenceSequence(0.1);
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(7L);
        int left = 0;
        for (int run = 0; run < 2000; run++) {
            long samples = 0;
            long hits = 0;
            boolean outside = false;
            for (int look = 1; look <= 10; look++) {
                for (long next = 16L << (look - 1); samples < next; samples++) {
                    hits += random.nextDouble() < mean ? 1 : 0;
                }
                double share = (double) hits / samples;
                Estimate estimate = new Estimate(samples, share, share * (1 - share) * samples / (samples - 1), 1);
                outside |= mean < sequence.lower(estimate, look) || mean > sequence.upper(estimate, look);
            }
            left += outside ? 1 : 0;
        }
        assertThat(left).isLessThan(261);
    }
}
