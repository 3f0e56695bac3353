package darkrim.study.review;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.section.LayoutSection;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Where a review cuts a layout. */
class SectionChoiceTest {
    private static final String DETECTORS = """
            title: Two detectors
            finishes: {black: {diffuse: 0.04}}
            beam: {pupil: {shape: disc, diameter: 40, distance: 300}}
            parts:
              mosaic: {kind: detectors, grid: [2, 1], spacing: 40, pixels: 1000, pixel_pitch: 20 um, die: {margin: 1, thickness: 0.2}, finish: black}
            """;
    private static final String LID = """
              lid:
                kind: plate
                size: [100, 60]
                height: 3
                thickness: 1
                openings: {shape: rectangle, size: [21, 22], grid: [2, 1], spacing: 39}
                finish: black
            """;

    private static List<String> planes(String text) throws Exception {
        return SectionChoice.of(Check.of(
                        LayoutReader.read("cut.yaml", text.getBytes(StandardCharsets.UTF_8))
                                .layout()
                                .orElseThrow(),
                        new Findings(),
                        new Effort(1, Optional.of(20_000L), Optional.of(1L)),
                        Watch.NONE))
                .stream()
                .map(LayoutSection::plane)
                .map(plane -> plane.words())
                .toList();
    }

    @Test
    void withoutAnOpeningTheMiddleOfTheFirstDetectorIsCut() throws Exception {
        assertThat(planes(DETECTORS)).containsExactly("x = -20 mm", "y = 0 mm");
    }

    @Test
    void anOpeningIsCutThroughItsMiddle() throws Exception {
        assertThat(planes(DETECTORS + LID)).containsExactly("x = -19.5 mm", "y = 0 mm");
    }
}
