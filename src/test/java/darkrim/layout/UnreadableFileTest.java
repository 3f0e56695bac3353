package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are no text, too large, or not there are findings, not exceptions. */
class UnreadableFileTest {
    @TempDir
    private Path folder;

    private static Finding only(LayoutReading reading) {
        assertThat(reading.layout()).isEmpty();
        assertThat(reading.partsComplete()).isFalse();
        assertThat(reading.findings()).hasSize(1);
        return reading.findings().get(0);
    }

    @Test
    void aMissingFileIsAFindingWithItsName() {
        Finding finding = only(LayoutReader.read(Path.of("no-such-folder/x.yaml")));
        assertThat(finding.toString()).isEqualTo("no-such-folder/x.yaml: there is no such file [unreadable]");
    }

    @Test
    void aFolderIsAFinding() {
        assertThat(only(LayoutReader.read(folder)).message()).isEqualTo("is a folder, expected a layout file");
    }

    @Test
    void anEmptyFileIsAFinding() throws IOException {
        Path file = Files.createFile(folder.resolve("empty.yaml"));
        assertThat(only(LayoutReader.read(file)).message()).isEqualTo("the file is empty, expected a layout");
    }

    @Test
    void aFileThatIsNotUtf8IsAFindingWithThePlaceOfTheByte() {
        byte[] latin = "title: Gr\u00f6\u00dfe\n".getBytes(StandardCharsets.ISO_8859_1);
        assertThat(only(LayoutReader.read("f", latin)).toString())
                .isEqualTo(
                        "f:1:10: the file is not text in UTF-8, byte 10 of the file is wrong, expected it saved as UTF-8 [not-text]");
    }

    @Test
    void aFileWithANullByteIsAFinding() {
        assertThat(only(LayoutReader.read("f", "title: x\nbe\0am: y\n".getBytes(StandardCharsets.UTF_8)))
                        .toString())
                .isEqualTo("f:2:3: the character U+0000 has no place in a YAML text, expected it left out [not-text]");
    }

    @Test
    void randomBytesAreAFinding() {
        Random random = new Random(20);
        for (int i = 0; i < 200; i++) {
            byte[] bytes = new byte[1 + random.nextInt(300)];
            random.nextBytes(bytes);
            assertThat(LayoutReader.read("f", bytes).hasErrors()).isTrue();
        }
    }

    @Test
    void aHugeFileIsRefusedWithoutBeingReadWhole() throws IOException {
        Path file = folder.resolve("huge.yaml");
        Files.writeString(file, "# " + "x".repeat(5 << 20));
        assertThat(only(LayoutReader.read(file)).code()).isEqualTo("too-large");
    }

    @Test
    void findingsBeyondFiveHundredAreCounted() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 700; i++) {
            text.append("key").append(i).append(": 1\n");
        }
        LayoutReading reading = LayoutReader.read("f", text.toString().getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).hasSize(501);
        // 700 unknown keys and four missing ones: title, beam, parts, requirements.
        assertThat(reading.findings())
                .last()
                .extracting(Finding::message)
                .asString()
                .startsWith("204 further");
    }
}
