package darkrim.study.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.layout.Quantity;
import darkrim.study.LayoutFamily;
import darkrim.study.UnusableStudy;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is typed for a dimension. */
class VariationReaderTest {
    private static final LayoutFamily SLIT = Sweeps.slit("dark: {surfaces: screen, direct: none}");
    /** The same in inches and radians, with an angle and a plain number. */
    private static final LayoutFamily INCHES = Sweeps.family("""
            title: Units
            units: {length: in, angle: rad}
            dimensions: {slit: 0.2, turn: 0.1, count: 2}
            beam:
              pupil: {shape: disc, diameter: 1, distance: 8}
            parts:
              screen: {kind: rectangle, width: slit, depth: slit * count, turn: [{about: z, by: turn}]}
            requirements:
              dark: {surfaces: screen, direct: none}
            """);

    private static Variation read(LayoutFamily family, String text) throws UnusableStudy {
        return new VariationReader(family).read(text);
    }

    @Test
    void aRangeWithAStepHasBothEndsAndNoRoundingGrows() throws UnusableStudy {
        Variation range = read(SLIT, "slit = 0.1 to 1.0 step 0.1");
        assertThat(range.kind()).isEqualTo(Quantity.LENGTH);
        assertThat(range.values())
                .isEqualTo(IntStream.rangeClosed(1, 10).mapToObj(i -> i / 10.0).toList());
    }

    @Test
    void aStepThatDoesNotMeetTheEndStopsBeforeIt() throws UnusableStudy {
        assertThat(read(SLIT, "slit = 1 to 2 step 0.4").values()).containsExactly(1.0, 1.4, 1.8);
    }

    @Test
    void aListIsSorted() throws UnusableStudy {
        assertThat(read(SLIT, "slit=3, 1,2 mm").values()).containsExactly(1.0, 2.0, 3.0);
    }

    @Test
    void unitsAreThoseOfTheFileUnlessTheyAreWritten() throws UnusableStudy {
        // 25.4 mm to the inch; 180 / pi degrees to the radian; a number has no unit
        assertThat(read(INCHES, "slit = 1, 2").values()).containsExactly(25.4, 50.8);
        assertThat(read(INCHES, "slit = 1 mm to 2 cm step 0.5 in").values()).containsExactly(1.0, 13.7);
        assertThat(read(INCHES, "turn = 1 to 2").from().doubleValue()).isEqualTo(Math.toDegrees(1));
        assertThat(read(INCHES, "count = 1, 2").values()).containsExactly(1.0, 2.0);
    }

    @Test
    void twoWaysToSayTheSameAreTheSameStudy() throws UnusableStudy {
        assertThat(read(SLIT, "slit=0.1 cm to 20e-1mm STEP .50").toString())
                .isEqualTo(read(SLIT, "slit = 1 mm to 2 mm step 0.5 mm").toString())
                .isEqualTo("slit = 1 mm to 2 mm step 0.5 mm");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "slitt = 1 to 2 step 1 | there is no dimension 'slitt' in slit.yaml, did you mean 'slit'?",
                "slit 1 | cannot read 'slit 1', expected 'NAME = A to B step S' or 'NAME = A, B, C'",
                "slit = | a value of 'slit' is missing, expected 'NAME = A to B step S' or 'NAME = A, B, C'",
                "slit = 1 to step 2 | a value of 'slit' is missing",
                "slit = 37 to | a value of 'slit' is missing, expected 'NAME = A to B step S'",
                "slit = to 37 | a value of 'slit' is missing",
                "slit = 1 to 2 step | a value of 'slit' is missing",
                "slit = one | cannot read 'one' as a value of 'slit'",
                "slit = 2 to 1 step 1 | the range of 'slit' runs backwards, expected the smaller value first: 1 to 2",
                "slit = 2 to 20 mm step 30 | the step of 'slit' is longer than its range",
                "slit = 2 to 0.2 cm step 1 | the range of 'slit' is empty: it begins where it ends",
                "slit = 1 to 2 step 0 | the step of 'slit' is 0, expected more than 0",
                "slit = 1 to 2 step -1 | the step of 'slit' is negative, expected more than 0",
                "slit = 1 deg, 2 | 'deg' is no unit for 'slit', which is a length, expected mm, um, cm, m or in",
                "slit = 1 furlong | 'furlong' is no unit for 'slit'",
                "slit = 1, 0.1 cm | 'slit' is to be 0.1 cm twice",
                "slit = 1e300 | '1e300' is no sensible value of 'slit'",
                "slit = 1 to 2 step 1e-300 | '1e-300' is no sensible value of 'slit'",
            })
    void whatIsWrongIsSaid(String text, String message) {
        assertThatThrownBy(() -> read(SLIT, text))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageStartingWith(message);
    }

    @Test
    void anAngleOrANumberIsNoLength() {
        assertThatThrownBy(() -> read(INCHES, "turn = 1 mm, 2 mm")).hasMessageContaining("which is an angle");
        assertThatThrownBy(() -> read(INCHES, "count = 1 mm")).hasMessageContaining("a plain number, expected no unit");
    }
}
