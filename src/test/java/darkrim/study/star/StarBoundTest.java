package darkrim.study.star;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.light.Estimate;
import darkrim.light.StarTally;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class StarBoundTest {
    private static StarPosition nothing(long samples, double reflected) {
        StarTally tally = new StarTally(List.of(), List.of(), new Estimate(samples, 0, 0, 1), new TreeMap<>());
        return new StarPosition(0, 0, tally, reflected);
    }

    /**
     * A spot that takes a share of the pupil just above the bound is missed by all samples with probability (1 - share)^n; looked at four times, with
     * twice the samples each time, a position leaves the zone with the stated risk at most.
     */
    @Test
    void allLooksTogetherKeepTheStatedConfidence() {
        StarBound bound = new StarBound(0.999);
        double risk = 0;
        for (long samples = 1_024; samples <= 8 * 1_024; samples *= 2) {
            double share = bound.upper(nothing(samples, 1));
            risk += Math.pow(1 - share, (double) samples);
        }
        assertThat(risk).isBetween(0.9e-3, 1e-3);
        assertThat(bound.upper(nothing(1_000, 0.04)) / bound.upper(nothing(1_000, 1)))
                .isCloseTo(0.04, within(1e-12));
        assertThat(bound.upper(nothing(1_000, 0))).isZero();
        assertThat(bound.upper(nothing(0, 0.5))).isEqualTo(1);
    }

    @Test
    void asManySamplesAsAreNeededAreEnough() {
        StarBound bound = new StarBound(0.99);
        for (double share : new double[] {1e-3, 7e-5}) {
            long needed = bound.needed(nothing(1, 0.5), share);
            assertThat(bound.upper(nothing(needed, 0.5))).isLessThanOrEqualTo(share * (1 + 1e-12));
            assertThat(bound.upper(nothing(needed - 1, 0.5))).isGreaterThan(share);
        }
    }
}
