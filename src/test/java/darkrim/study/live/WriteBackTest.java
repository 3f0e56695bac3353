package darkrim.study.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.DimensionEdit.Formulas;
import darkrim.layout.RefusedEdit;
import darkrim.study.LayoutFamily;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Values go back into the file, all of them or none. */
class WriteBackTest {
    @TempDir
    Path folder;

    private Path file;
    private LayoutFamily family;

    @BeforeEach
    void aLayoutFile() throws IOException, UnusableInput {
        file = Files.writeString(folder.resolve("edge.yaml"), DraggedEdge.TEXT);
        family = LayoutFamily.of(file);
    }

    private void nothingWasWritten() throws IOException {
        assertThat(file).hasContent(DraggedEdge.TEXT);
        onlyTheFileIsThere();
    }

    private void onlyTheFileIsThere() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).containsExactly(file);
        }
    }

    @Test
    void severalValuesGoIntoTheFileAtOnceAndAllElseStays() throws IOException, RefusedEdit, UnusableInput {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-r--"));
        LayoutFamily written = WriteBack.into(file, family, Map.of("edge", -3.25, "far", 70.5), Formulas.REFUSE);
        String expected = DraggedEdge.TEXT.replace("-4 mm", "-3.25 mm").replace("value: 60,", "value: 70.5,");
        assertThat(Files.readString(file)).isEqualTo(expected);
        assertThat(Files.getPosixFilePermissions(file)).isEqualTo(PosixFilePermissions.fromString("rw-rw-r--"));
        onlyTheFileIsThere();
        assertThat(written.content()).isEqualTo(Files.readAllBytes(file));
        // And once more, from what it handed over.
        WriteBack.into(file, written, Map.of("edge", -4.0, "far", 60.0), Formulas.REFUSE);
        nothingWasWritten();
    }

    @Test
    void aLinkStaysALink() throws IOException, RefusedEdit, UnusableInput {
        Path link = Files.createSymbolicLink(folder.resolve("link.yaml"), file);
        WriteBack.into(link, LayoutFamily.of(link), Map.of("edge", -3.0), Formulas.REFUSE);
        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(Files.readString(file)).contains("edge: -3 mm    # of the baffle");
    }

    @Test
    void aFileThatChangedSinceItWasReadIsNotTouched() throws IOException {
        String other = DraggedEdge.TEXT + "# a word of somebody else\n";
        Files.writeString(file, other);
        assertThatThrownBy(() -> WriteBack.into(file, family, Map.of("edge", -3.0), Formulas.REFUSE))
                .isInstanceOf(RefusedEdit.class)
                .hasMessageEndingWith("the file has changed since it was read; read it again, nothing was written");
        assertThat(file).hasContent(other);
        onlyTheFileIsThere();
    }

    @Test
    void oneValueThatIsRefusedKeepsBackAll() throws IOException {
        assertThatThrownBy(() -> WriteBack.into(file, family, Map.of("edge", -3.0, "at", 1.0), Formulas.REFUSE))
                .isInstanceOf(RefusedEdit.class)
                .hasMessageContaining("'at' is the formula 'edge + far / 2'");
        assertThatThrownBy(() -> WriteBack.into(file, family, Map.of("edge", -3.0, "far", -1.0), Formulas.REFUSE))
                .isInstanceOf(RefusedEdit.class)
                .hasMessageContaining("'far' gives -1 mm");
        nothingWasWritten();
    }

    @Test
    void aFileThatIsGoneIsNotMadeAnew() throws IOException {
        Files.delete(file);
        assertThatThrownBy(() -> WriteBack.into(file, family, Map.of("edge", -3.0), Formulas.REFUSE))
                .isInstanceOf(IOException.class);
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).isEmpty();
        }
    }
}
