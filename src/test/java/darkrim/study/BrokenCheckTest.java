package darkrim.study;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A check of a broken layout ends in findings: what could be read of it is placed, to say what else is wrong, and must not break the program. */
class BrokenCheckTest {
    private static final Effort LEAST = new Effort(1, Optional.empty(), Optional.of(1L), MarginScope.NONE);

    /** Those with a mistake; some hold warnings only. */
    static Stream<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/test/resources/broken"))) {
            return files.sorted().toList().stream()
                    .filter(file -> LayoutReader.read(file).hasErrors());
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void itsFindingsAreAllThatComes(Path file) {
        assertThatThrownBy(() -> Check.coldAndWarm(file, LEAST, Watch.NONE)).isInstanceOf(UnusableInput.class);
    }
}
