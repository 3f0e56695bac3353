package darkrim.present.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.present.picture.ColourScale.Spacing;
import darkrim.present.picture.ColourScale.Tick;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ColourScaleTest {
    private static ColourScale log(double least, double most) {
        return new ColourScale(Spacing.LOGARITHMIC, least, most, "irradiance", "W/m2");
    }

    private static ColourScale linear(double least, double most) {
        return new ColourScale(Spacing.LINEAR, least, most, "relative irradiance", "");
    }

    @Test
    void equalRatiosAreEqualStepsOnALogarithmicScale() {
        ColourScale scale = log(1e-6, 1);
        for (int power = -6; power <= 0; power++) {
            assertThat(scale.share(StrictMath.pow(10, power))).isCloseTo((power + 6) / 6.0, within(1e-12));
        }
        assertThat(scale.argb(1e-3)).isEqualTo(ColourMap.argb(0.5));
    }

    @Test
    void equalDifferencesAreEqualStepsOnALinearScale() {
        ColourScale scale = linear(0.5, 2.5);
        assertThat(scale.share(1.0)).isEqualTo(0.25);
        assertThat(scale.argb(2.5)).isEqualTo(ColourMap.argb(ColourMap.SIZE - 1));
    }

    @Test
    void whatIsOutsideOrUnknownHasItsOwnColour() {
        ColourScale scale = log(1e-6, 1);
        assertThat(scale.argb(0)).isEqualTo(ColourScale.BELOW);
        assertThat(scale.argb(9.9e-7)).isEqualTo(ColourScale.BELOW);
        assertThat(scale.argb(1.001)).isEqualTo(ColourScale.ABOVE);
        assertThat(scale.argb(Double.NaN)).isEqualTo(ColourScale.UNKNOWN);
        assertThat(scale.argb(-1)).isEqualTo(ColourScale.BELOW);
        assertThat(linear(0, 1).argb(0)).isEqualTo(ColourMap.argb(0));
        assertThat(linear(0, 1).argb(Double.NaN)).isEqualTo(ColourScale.UNKNOWN);
        assertThat(linear(0, 1).argb(Double.POSITIVE_INFINITY)).isEqualTo(ColourScale.ABOVE);
    }

    @Test
    void thePaletteHoldsTheColourOfEveryValue() {
        int[] palette = ColourScale.palette();
        for (double value : new double[] {0, 1e-7, 1e-6, 3e-4, 1, 2, Double.NaN}) {
            assertThat(palette[log(1e-6, 1).index(value)])
                    .isEqualTo(log(1e-6, 1).argb(value));
        }
    }

    @Test
    void theRangeFoundByItselfHoldsAllValuesAndHardlyMore() {
        ColourScale scale = ColourScale.around(Spacing.LOGARITHMIC, DoubleStream.of(0, 3e-5, 0.7), "x", "");
        assertThat(scale.least()).isEqualTo(1e-5);
        assertThat(scale.most()).isEqualTo(0.8);
        assertThat(ColourScale.around(Spacing.LINEAR, DoubleStream.of(0, 3e-5, 0.37), "x", "")
                        .most())
                .isEqualTo(0.4);
        assertThat(ColourScale.around(Spacing.LINEAR, DoubleStream.of(1.005), "x", "")
                        .most())
                .isEqualTo(1.2);
    }

    @Test
    void theRangeFoundByItselfHasSixDecadesAtMostAndOneAtLeast() {
        ColourScale wide = ColourScale.around(Spacing.LOGARITHMIC, DoubleStream.of(1e-20, 1), "x", "");
        assertThat(wide.least()).isEqualTo(1e-6);
        ColourScale point = ColourScale.around(Spacing.LOGARITHMIC, DoubleStream.of(1), "x", "");
        assertThat(point.least()).isEqualTo(0.1);
        assertThat(point.most()).isEqualTo(1);
        ColourScale alike = ColourScale.around(Spacing.LOGARITHMIC, DoubleStream.of(1.002, 1.01), "x", "");
        assertThat(alike.least()).isEqualTo(0.1);
        assertThat(alike.most()).isEqualTo(1.2);
        ColourScale nothing = ColourScale.around(Spacing.LOGARITHMIC, DoubleStream.of(0, Double.NaN), "x", "");
        assertThat(nothing.most()).isEqualTo(1);
    }

    @Test
    void decadesAreLabelledWithinTheRoomThereIs() {
        assertThat(labels(log(1e-6, 1).ticks(10))).containsExactly("1e-6", "1e-5", "1e-4", "0.001", "0.01", "0.1", "1");
        assertThat(labels(log(1e-6, 1).ticks(4))).containsExactly("1e-6", "1e-4", "0.01", "1");
        assertThat(labels(log(0.2, 0.8).ticks(10))).containsExactly("0.2", "0.5");
        assertThat(labels(log(1, 1.2).ticks(6))).containsExactly("1", "1.05", "1.1", "1.15", "1.2");
        assertThat(labels(log(0.3, 0.9).ticks(5))).containsExactly("0.4", "0.6", "0.8");
    }

    @Test
    void linearMarksAreRoundAndWithinTheRange() {
        assertThat(labels(linear(0, 1).ticks(6))).containsExactly("0", "0.2", "0.4", "0.6", "0.8", "1");
        assertThat(labels(linear(0.3, 0.92).ticks(5))).containsExactly("0.4", "0.6", "0.8");
    }

    @Test
    void marksStandWhereTheirValueHasItsColour() {
        for (ColourScale scale : List.of(log(2e-7, 0.3), linear(-1, 7))) {
            double before = -1;
            for (Tick tick : scale.ticks(6)) {
                assertThat(tick.share()).isBetween(0.0, 1.0).isGreaterThan(before);
                assertThat(scale.share(tick.value())).isEqualTo(tick.share());
                if (!tick.label().isEmpty()) {
                    assertThat(Double.parseDouble(tick.label())).isEqualTo(tick.value());
                }
                before = tick.share();
            }
        }
    }

    @Test
    void whatIsNoRangeIsRefused() {
        assertThatThrownBy(() -> log(0, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> linear(1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> linear(0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void theTitleNamesTheUnitWhereThereIsOne() {
        assertThat(log(1e-6, 1).title()).isEqualTo("irradiance, W/m2");
        assertThat(linear(0, 1).title()).isEqualTo("relative irradiance");
    }

    @ParameterizedTest
    @EnumSource(Verdict.class)
    void theLetterOfAVerdictCanBeReadOnItsPlate(Verdict verdict) {
        VerdictMark mark = VerdictMark.of(verdict);
        assertThat(SeenColour.contrast(mark.argb(), VerdictMark.LETTER)).isGreaterThanOrEqualTo(4.5);
        assertThat(mark.word()).startsWithIgnoringCase(String.valueOf(mark.letter()));
        assertThat(mark.word()).isEqualToIgnoringCase(verdict.name());
    }

    @Test
    void noTwoVerdictsShareALetterOrALine() {
        List<VerdictMark> marks =
                List.of(Verdict.values()).stream().map(VerdictMark::of).toList();
        assertThat(marks.stream().map(VerdictMark::letter)).doesNotHaveDuplicates();
        assertThat(marks.stream().map(VerdictMark::dashes)).doesNotHaveDuplicates();
    }

    private static List<String> labels(List<Tick> ticks) {
        return ticks.stream().map(Tick::label).filter(label -> !label.isEmpty()).toList();
    }
}
