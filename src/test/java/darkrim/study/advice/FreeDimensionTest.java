package darkrim.study.advice;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Dimension;
import darkrim.study.LayoutFamily;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** What counts as a change of 1, and how far a dimension may go. */
class FreeDimensionTest {
    private static FreeDimension dimension(String line) throws Exception {
        String text = """
                title: One plate
                dimensions:
                  size: %s
                beam:
                  pupil: {shape: disc, diameter: 40, distance: 200}
                parts:
                  screen: {kind: rectangle, width: 10, depth: 10}
                requirements:
                  dark: {surfaces: "screen/back", direct: none}
                """.formatted(line);
        Dimension named = LayoutFamily.of("plate.yaml", text.getBytes(StandardCharsets.UTF_8))
                .dimension("size")
                .orElseThrow();
        return FreeDimension.of(named);
    }

    @Test
    void aStatedToleranceIsTheScale() throws Exception {
        assertThat(dimension("{value: 37 mm, tolerance: 0.03}").scale()).isEqualTo(0.03);
        assertThat(dimension("{value: 37 mm, tolerance: {minus: 0.02, plus: 0.06}}")
                        .scale())
                .isEqualTo(0.04);
    }

    /** ISO 2768-1, class m, from memory: 0.1 mm up to 6 mm, 0.2 to 30, 0.3 to 120, 0.5 to 400; half a degree. */
    @Test
    void elseAGeneralToleranceForTheSizeIs() throws Exception {
        assertThat(dimension("1.2 mm").scale()).isEqualTo(0.1);
        assertThat(dimension("6 mm").scale()).isEqualTo(0.1);
        assertThat(dimension("6.1 mm").scale()).isEqualTo(0.2);
        assertThat(dimension("38.6 mm").scale()).isEqualTo(0.3);
        assertThat(dimension("-320 mm").scale()).isEqualTo(0.5);
        assertThat(dimension("0 deg").scale()).isEqualTo(0.5);
        assertThat(dimension("{value: 37 mm, tolerance: 0}").scale()).isEqualTo(0.3);
    }

    @Test
    void aLengthMayGoHalfOfItselfEitherWayAndAtLeastThreeMillimetres() throws Exception {
        assertThat(dimension("38 mm").least()).isEqualTo(19);
        assertThat(dimension("38 mm").most()).isEqualTo(57);
        assertThat(dimension("2 mm").least()).isEqualTo(0.1);
        assertThat(dimension("2 mm").most()).isEqualTo(5);
        assertThat(dimension("-2 mm").most()).isEqualTo(-0.1);
        assertThat(dimension("0 mm").least()).isEqualTo(-3);
        assertThat(dimension("4 deg").most()).isEqualTo(19);
    }
}
