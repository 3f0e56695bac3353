package darkrim.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitCircleTest {
    /** Two units in the last place of 1, and as much again for the rounding of the angle that StrictMath is given. */
    private static final double CLOSE = 0x1p-51;

    @Test
    void itAgreesWithTheLibrarysSineAndCosine() {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(3L);
        for (int i = 0; i < 200_000; i++) {
            double turn = random.nextDouble();
            double angle = 2 * Math.PI * turn;
            assertThat(UnitCircle.cosine(turn))
                    .as("cosine of %s", turn)
                    .isCloseTo(StrictMath.cos(angle), within(2 * CLOSE));
            assertThat(UnitCircle.sine(turn))
                    .as("sine of %s", turn)
                    .isCloseTo(StrictMath.sin(angle), within(2 * CLOSE));
        }
    }

    @Test
    void everyPointLiesOnTheCircle() {
        for (int i = 0; i <= 4096; i++) {
            double turn = i / 4096.0;
            double x = UnitCircle.cosine(turn);
            double y = UnitCircle.sine(turn);
            assertThat(x * x + y * y).isCloseTo(1, within(2 * CLOSE));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 0", "0.25, 0, 1", "0.5, -1, 0", "0.75, 0, -1", "1, 1, 0"})
    void quartersOfATurnAreExact(double turn, double cosine, double sine) {
        assertThat(UnitCircle.cosine(turn) + 0.0).isEqualTo(cosine);
        assertThat(UnitCircle.sine(turn) + 0.0).isEqualTo(sine);
    }
}
