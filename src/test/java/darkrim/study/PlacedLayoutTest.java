package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.layout.PlacedLayouts;
import darkrim.present.Ink;
import darkrim.present.TextReport;
import darkrim.present.json.JsonResult;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A check finds all that is doubtful about how parts lie, word for word; what is wrong ends it. */
class PlacedLayoutTest {
    private static final Effort LITTLE = new Effort(1, Optional.empty(), Optional.of(200_000L));

    static Stream<Path> files() throws IOException {
        return PlacedLayouts.files().stream();
    }

    private static List<Finding> findings(Path file) {
        try {
            return Check.of(file, LITTLE, Watch.NONE).warnings();
        } catch (UnusableInput unusable) {
            return unusable.findings();
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void exactlyTheExpectedFindingsAreReported(Path file) throws IOException {
        assertThat(LayoutReader.read(file).findings()).isEmpty();
        List<String> expected = PlacedLayouts.expected(file);
        assertThat(expected).isNotEmpty();
        assertThat(findings(file))
                .map(finding ->
                        finding.toString().substring(finding.place().file().length() + 1))
                .containsExactlyElementsOf(expected);
    }

    @Test
    void aSheetOnAFaceIsRefusedByBothJobs() {
        Path file = Path.of("src/test/resources/placed/sheet-in-contact.yaml");
        assertThatThrownBy(() -> Check.of(file, LITTLE, Watch.NONE)).isInstanceOf(UnusableInput.class);
        assertThatThrownBy(() -> PointSight.of(file, "base/+z", 0.5, 0.5, LITTLE, Watch.NONE))
                .isInstanceOf(UnusableInput.class);
    }

    @Test
    void anOpeningBeyondThePupilOrAroundTheDieGetsNoFeasibilityLine() throws UnusableInput {
        for (String name : List.of("beyond-pupil", "no-feasibility-line")) {
            Path file = Path.of("src/test/resources/placed", name + ".yaml");
            assertThat(Check.of(file, LITTLE, Watch.NONE).feasibility())
                    .as(name)
                    .isEmpty();
        }
    }

    /** The pupil that stands in for one that did not read lies at 1 mm: no part is to be told to lie beyond it. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "beam: {pupil: {shape: disc, diameter: 4, distance: 20}, field: {shape: disc, diameter: 3, at_height: 30}}",
                "beam: {pupil: {shape: disc, diameter: 50, distance: 20, tilt: [89, 0]}}",
                "beam: {pupil: {shape: disc, diameter: four, distance: 20}}"
            })
    void aBeamThatDidNotReadBringsNoWarningOfItsPlane(String beam, @TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("layout.yaml"), """
                title: t
                %s
                parts:
                  box: {kind: block, width: 1, depth: 1, height: 5}
                requirements:
                  dark: {surfaces: "box/-z", direct: none}
                """.formatted(beam));
        assertThat(findings(file)).hasSize(1).extracting(Finding::code).doesNotContain("beyond-pupil");
    }

    @Test
    void theWarningStandsInTheTextReportAndInTheJson() throws UnusableInput {
        CheckResult result = Check.of(Path.of("src/test/resources/placed/parts-overlap.yaml"), LITTLE, Watch.NONE);
        String text = new TextReport("0", Ink.PLAIN, false).of(result).replaceAll("\\s+", " ");
        assertThat(text)
                .contains("Warnings")
                .contains("parts sensor and shelf run into one another: sensor/die and shelf at ");
        assertThat(JsonResult.of(result, "0")).contains("parts-overlap").contains("sensor/die and shelf at ");
    }
}
