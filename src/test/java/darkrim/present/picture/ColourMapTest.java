package darkrim.present.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ColourMapTest {
    /** Steps of eight indices, so that rounding to 8 bits (half a unit, up to 0.6 in lightness) stays small beside a step. */
    private static final int STEP = 8;

    @Test
    void lightnessRisesInProportion() {
        double[] lightness = IntStream.range(0, ColourMap.SIZE)
                .mapToDouble(i -> SeenColour.lab(ColourMap.argb(i))[0])
                .toArray();
        for (int i = 1; i < lightness.length; i++) {
            assertThat(lightness[i]).isGreaterThan(lightness[i - 1]);
        }
        for (int i = 0; i < lightness.length; i++) {
            assertThat(lightness[i]).as("index %d", i).isCloseTo(15 + 80.0 * i / 255, within(1.0));
        }
    }

    /** Rounding to 8 bits moves either end of a step by up to 0.6, together a quarter of the mean step of about 5.2. */
    @Test
    void everyStepIsTheSameDifferenceOfColourButForRounding() {
        List<Double> steps = steps(null);
        double mean = steps.stream().mapToDouble(each -> each).average().orElseThrow();
        assertThat(mean).isGreaterThan(5);
        assertThat(steps).allSatisfy(step -> assertThat(step).isBetween(mean - 1.2, mean + 1.2));
    }

    @ParameterizedTest
    @ValueSource(strings = {"long", "middle", "short"})
    void anEyeThatLacksOneKindOfConeSeesTheSameOrder(String lacking) {
        double[][] cones = cones(lacking);
        double before = -1;
        for (int i = 0; i < ColourMap.SIZE; i += STEP) {
            double lightness = SeenColour.lab(SeenColour.without(cones, ColourMap.argb(i)))[0];
            assertThat(lightness).as("index %d", i).isGreaterThan(before);
            before = lightness;
        }
        // The least step that such an eye sees is still more than the just noticeable difference of about 1.
        assertThat(steps(cones)).allSatisfy(step -> assertThat(step).isGreaterThan(1));
    }

    @Test
    void theColoursForOutsideTheRangeAndForNothingKnownAreNoneOfTheMap() {
        int[] others = {ColourScale.BELOW, ColourScale.ABOVE, ColourScale.UNKNOWN};
        for (int other : others) {
            for (int i = 0; i < ColourMap.SIZE; i++) {
                assertThat(SeenColour.difference(other, ColourMap.argb(i)))
                        .as("index %d against %x", i, other)
                        .isGreaterThan(20);
            }
        }
        assertThat(SeenColour.lab(ColourScale.BELOW)[0]).isLessThan(SeenColour.lab(ColourMap.argb(0))[0]);
        assertThat(SeenColour.lab(ColourScale.ABOVE)[0])
                .isGreaterThan(SeenColour.lab(ColourMap.argb(ColourMap.SIZE - 1))[0]);
    }

    @Test
    void sharesOutsideAreTheEnds() {
        assertThat(ColourMap.argb(-0.5)).isEqualTo(ColourMap.argb(0));
        assertThat(ColourMap.argb(1.5)).isEqualTo(ColourMap.argb(ColourMap.SIZE - 1));
        assertThat(ColourMap.argb(0.5)).isEqualTo(ColourMap.argb(128));
    }

    private static List<Double> steps(double[][] cones) {
        return IntStream.iterate(STEP, i -> i < ColourMap.SIZE, i -> i + STEP)
                .mapToObj(i -> SeenColour.difference(seen(cones, i - STEP), seen(cones, i)))
                .toList();
    }

    private static int seen(double[][] cones, int index) {
        return cones == null ? ColourMap.argb(index) : SeenColour.without(cones, ColourMap.argb(index));
    }

    private static double[][] cones(String lacking) {
        return switch (lacking) {
            case "long" -> SeenColour.NO_LONG;
            case "middle" -> SeenColour.NO_MIDDLE;
            default -> SeenColour.NO_SHORT;
        };
    }

    private static org.assertj.core.data.Offset<Double> within(double offset) {
        return org.assertj.core.data.Offset.offset(offset);
    }
}
