package darkrim.study.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.study.LayoutFamily;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Which dimensions advice may change. */
class FreeDimensionsTest {
    private static LayoutFamily family(String dimensions) throws Exception {
        String text = """
                title: One plate
                dimensions:
                %s
                beam:
                  pupil: {shape: disc, diameter: 40, distance: 200}
                parts:
                  screen: {kind: rectangle, width: 10, depth: 10}
                requirements:
                  dark: {surfaces: "screen/back", direct: none}
                """.formatted(dimensions.indent(2));
        return LayoutFamily.of("plate.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    private static AdviceSettings settings(Set<String> keep) {
        return new AdviceSettings(keep, Map.of(), 1, Optional.empty(), Optional.empty());
    }

    private static List<String> free(String dimensions) throws Exception {
        return FreeDimensions.of(family(dimensions), settings(Set.of())).stream()
                .map(FreeDimension::name)
                .toList();
    }

    @Test
    void plainValuesAreInWhateverFormTheFileMayHaveThem() throws Exception {
        assertThat(free("a: 37\nb: 3.7 cm\nc: 40\u00b5m\nd: 40 \u03bcm\ne: -.5\nf: +5.e-1 deg\ng: 1e-2"))
                .containsExactly("a", "b", "c", "d", "e", "f", "g");
    }

    @Test
    void whatIsReckonedFromOthersIsNot() throws Exception {
        // The name of a dimension may look like the end of a number.
        assertThat(free("e5: 5\na: e5\nb: 2 * e5\nc: -e5")).containsExactly("e5");
    }

    @Test
    void ofSeveralUnknownNamesTheSameOneIsToldEveryTime() throws Exception {
        LayoutFamily family = family("a: 1");
        assertThatThrownBy(() -> FreeDimensions.of(family, settings(Set.of("q", "n", "p", "m", "r", "o", "t", "s"))))
                .isInstanceOf(UnusableAdvice.class)
                .hasMessageStartingWith("there is no dimension 'm'");
    }
}
