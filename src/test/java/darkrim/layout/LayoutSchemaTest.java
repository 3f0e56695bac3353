package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The published schema says what the reader does. */
class LayoutSchemaTest {
    private static final Path PUBLISHED = Path.of("docs/layout.schema.json");

    static Stream<Path> validLayouts() throws IOException {
        return Stream.concat(yaml(Path.of("src/test/resources/layouts")), yaml(Path.of("geometries")));
    }

    private static Stream<Path> yaml(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return Stream.empty();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList().stream();
        }
    }

    /** Run with {@code -Dwrite.schema=true} after a change of the table of keys. */
    @Test
    void theSchemaInTheDocsIsTheOneOfTheTableOfKeys() throws IOException {
        if (Boolean.getBoolean("write.schema")) {
            Files.writeString(PUBLISHED, LayoutSchema.text());
        }
        assertThat(Files.readString(PUBLISHED)).isEqualTo(LayoutSchema.text());
    }

    @ParameterizedTest
    @MethodSource("validLayouts")
    void whatTheReaderAcceptsTheSchemaAccepts(Path file) throws IOException {
        assertThat(LayoutReader.read(file).hasErrors()).isFalse();
        assertThat(SchemaCheck.problems(Files.readString(file))).isEmpty();
    }
}
