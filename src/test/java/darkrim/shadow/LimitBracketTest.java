package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LimitBracketTest {
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.003, 0.01, 0.0101, 0.7, 12, 19.999})
    void aLimitLiesBetweenTheTwoDistances(double limit) {
        for (LimitBracket found : new LimitBracket[] {
            LimitBracket.fromZero(at -> at <= limit, 20),
            LimitBracket.around(limit + 1e-7, at -> at <= limit, 20),
            LimitBracket.around(limit - 1e-7, at -> at <= limit, 20),
            LimitBracket.around(5, at -> at <= limit, 20),
            LimitBracket.around(-3, at -> at <= limit, 20),
            LimitBracket.around(70, at -> at <= limit, 20)
        }) {
            assertThat(found.isCapped()).isFalse();
            assertThat(found.low()).isBetween(0.0, limit);
            assertThat(found.high()).isGreaterThan(limit - (limit == 0 ? 1 : 0)).isLessThanOrEqualTo(20);
            LimitBracket narrow = found.narrowed(at -> at <= limit, 1e-9, 0, 0.5);
            assertThat(narrow.high() - narrow.low()).isBetween(0.0, 1e-9);
            assertThat(narrow.low()).isLessThanOrEqualTo(limit);
            assertThat(narrow.low()).isCloseTo(limit, within(1e-9));
            // As a share of the limit, looking early in the interval.
            LimitBracket rough = found.narrowed(at -> at <= limit, 1e-9, 1e-3, 0.2);
            assertThat(rough.low()).isLessThanOrEqualTo(limit);
            assertThat(rough.high() - rough.low()).isLessThanOrEqualTo(Math.max(1e-9, 1e-3 * rough.high()));
        }
    }

    @Test
    void aGoodGuessIsTrustedToWithinTwoMillionths() {
        LimitBracket beyond = LimitBracket.around(3, at -> at <= 3 + 1e-6, 20);
        assertThat(beyond.low()).isEqualTo(3);
        assertThat(beyond.high()).isCloseTo(3 + 2e-6, within(1e-12));
        LimitBracket before = LimitBracket.around(3, at -> at <= 3 - 1e-6, 20);
        assertThat(before.high()).isEqualTo(3);
        assertThat(before.low()).isCloseTo(3 - 2e-6, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"20, 25", "20, 20", "0.005, 1", "0.01, 1"})
    void whatHoldsAtTheFarthestHasNoLimit(double farthest, double limit) {
        LimitBracket[] all = {
            LimitBracket.fromZero(at -> at <= limit, farthest),
            LimitBracket.around(0.004, at -> at <= limit, farthest),
            LimitBracket.around(99, at -> at <= limit, farthest)
        };
        for (LimitBracket found : all) {
            assertThat(found.isCapped()).isTrue();
            assertThat(found.low()).isEqualTo(farthest);
            assertThat(found.narrowed(at -> false, 1e-9, 0, 0.5)).isEqualTo(found);
        }
    }

    @Test
    void whatHoldsNowhereHasTheLimitZero() {
        LimitBracket nowhere = LimitBracket.around(0, at -> false, 20);
        assertThat(nowhere.low()).isZero();
        assertThat(nowhere.high()).isZero();
        assertThat(LimitBracket.fromZero(at -> false, 20).low()).isZero();
    }

    /** Nothing is asked beyond the farthest, or below 0. */
    @Test
    void nothingIsAskedBeyondTheEnds() {
        for (double guess : new double[] {-5, 0, 3, 9}) {
            LimitBracket.around(guess, at -> isInRange(at, 8) && at < 7.9, 8);
            LimitBracket.around(guess, at -> isInRange(at, 8) && at < 1e-4, 8);
            LimitBracket.around(guess, at -> isInRange(at, 8), 8);
        }
        LimitBracket.fromZero(at -> isInRange(at, 8), 8);
    }

    private static boolean isInRange(double at, double farthest) {
        assertThat(at).isBetween(0.0, farthest);
        return true;
    }
}
