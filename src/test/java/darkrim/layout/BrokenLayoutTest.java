package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Files with one mistake each, or several. The first line of a file says what is wrong with it; the comments at its
 * end are the findings that are expected, all of them and word for word.
 */
class BrokenLayoutTest {
    private static final Path FOLDER = Path.of("src/test/resources/broken");
    private static final String EXPECTED = "# expected:";

    /** Mistakes in the keys and the kinds of values, which the JSON Schema sees as well. */
    private static final Set<String> OF_STRUCTURE = Set.of(
            "unknown-key",
            "missing-key",
            "wrong-type",
            "unknown-word",
            "one-of",
            "list-length",
            "count",
            "whole",
            "unit",
            "unknown-unit");

    static Stream<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.sorted().toList().stream();
        }
    }

    private static LayoutReading read(Path file) throws IOException {
        return LayoutReader.read("f", Files.readAllBytes(file));
    }

    @Test
    void thereAreAtLeastTwoHundredOfThem() throws IOException {
        assertThat(files()).hasSizeGreaterThanOrEqualTo(200);
    }

    @ParameterizedTest
    @MethodSource("files")
    void exactlyTheExpectedFindingsAreReported(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
        List<String> expected = lines.subList(lines.indexOf(EXPECTED) + 1, lines.size()).stream()
                .map(line -> "f:" + line.substring(1).strip())
                .toList();
        assertThat(expected).isNotEmpty();
        assertThat(read(file).findings()).map(Finding::toString).containsExactlyElementsOf(expected);
    }

    /** What is wrong is half of a message; the other half is what to do. */
    @ParameterizedTest
    @MethodSource("files")
    void everyFindingSaysWhatWasExpected(Path file) throws IOException {
        assertThat(read(file).findings())
                .allSatisfy(finding -> assertThat(finding.message())
                        .containsPattern("expected|did you mean|: give |give it a unit|use measured values"));
    }

    @ParameterizedTest
    @MethodSource("files")
    void theSchemaRefusesEveryMistakeOfStructureAndNoLayoutWithoutErrors(Path file) throws IOException {
        LayoutReading reading = read(file);
        boolean ofStructure = reading.findings().stream().map(Finding::code).anyMatch(OF_STRUCTURE::contains);
        if (ofStructure) {
            assertThat(SchemaCheck.problems(Files.readString(file))).isNotEmpty();
        } else if (!reading.hasErrors()) {
            assertThat(SchemaCheck.problems(Files.readString(file))).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void onlyALayoutWithErrorsIsPartial(Path file) throws IOException {
        LayoutReading reading = read(file);
        assertThat(reading.partsComplete() || reading.hasErrors()).isTrue();
        assertThat(reading.layout().isPresent() || reading.hasErrors()).isTrue();
    }

    @Test
    void aPartWithAnErrorIsLeftOutAndTheRestIsHandedOver() throws IOException {
        LayoutReading reading = read(FOLDER.resolve("key-beginning.yaml"));
        assertThat(reading.partsComplete()).isFalse();
        Layout partial = reading.layout().orElseThrow();
        assertThat(partial.parts()).extracting(Part::name).containsExactly("mosaic", "walls");
        assertThat(partial.requirements()).hasSize(3);
    }

    @Test
    void anErrorOutsideThePartsLeavesThemComplete() throws IOException {
        LayoutReading reading = read(FOLDER.resolve("missing-pupil.yaml"));
        assertThat(reading.hasErrors()).isTrue();
        assertThat(reading.partsComplete()).isTrue();
        assertThat(reading.layout().orElseThrow().parts()).hasSize(3);
    }
}
