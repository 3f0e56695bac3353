package darkrim.study.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that will take the name of another when they are whole. */
class FreshFileTest {
    @TempDir
    Path folder;

    private List<Path> all() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    private Path aged(Path file, Duration age) throws IOException {
        FileTime now = Files.getLastModifiedTime(file);
        return Files.setLastModifiedTime(file, FileTime.from(now.toInstant().minus(age)));
    }

    /** Numbers of processes would not do: containers that share a folder count from 1, each for itself. */
    @Test
    void twoOfOneProcessForOneFileAreTwo() throws IOException {
        Path file = folder.resolve("out.json");
        Path one = FreshFile.beside(file);
        Path other = FreshFile.beside(file);
        assertThat(all()).containsExactlyInAnyOrder(one, other);
        assertThat(List.of(one, other))
                .allSatisfy(each -> assertThat(each.getFileName()).asString().matches("\\.out\\.json\\.[01]\\.part"));
    }

    @Test
    void whatAWriterLeftThatWasKilledGoesWithTheNextOfTheSameFile() throws IOException {
        Path file = folder.resolve("out.json");
        Path left = aged(FreshFile.beside(file), Duration.ofMinutes(61));
        Path atWork = aged(FreshFile.beside(folder.resolve("out.csv")), Duration.ofDays(3));
        assertThat(left).exists();
        Path young = aged(FreshFile.beside(file), Duration.ofMinutes(59));
        assertThat(left).doesNotExist();
        Path fresh = FreshFile.beside(file);
        // Those of another file are left to its own writers.
        assertThat(all()).containsExactlyInAnyOrder(atWork, young, fresh);
    }

    @Test
    void nothingElseThatIsOldIsTaken() throws IOException {
        List<Path> others = Stream.of(
                        "out.json",
                        "out.json.part",
                        ".out.json.part",
                        ".out.json.0.parts",
                        ".out.json.01234567890.part",
                        ".out.json.a.part",
                        ".outXjson.0.part")
                .map(folder::resolve)
                .toList();
        for (Path each : others) {
            aged(Files.writeString(each, "mine"), Duration.ofDays(400));
        }
        Path named = Files.createDirectory(folder.resolve(".out.json.0.part"));
        aged(named, Duration.ofDays(400));
        Path fresh = FreshFile.beside(folder.resolve("out.json"));
        assertThat(all()).containsAll(others).contains(named, fresh).hasSize(others.size() + 2);
    }

    @Test
    void withoutAFolderThereIsNone() {
        assertThatThrownBy(() -> FreshFile.beside(folder.resolve("none").resolve("out.json")))
                .isInstanceOf(NoSuchFileException.class);
    }
}
