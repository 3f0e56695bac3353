package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Results;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command sweep. */
class SweepCommandTest {
    @TempDir
    private Path folder;

    private Path layout;

    @BeforeEach
    void write() throws Exception {
        layout = folder.resolve("slit.yaml");
        Files.writeString(layout, Results.yaml("", "mean: {surfaces: screen/front, direct: {at_most: 0.08}}"));
    }

    private String[] command(String name, String... more) {
        List<String> words = new ArrayList<>(List.of(
                "sweep", layout.toString(), "--vary", "slit = 1 to 6 step 1", "--samples", "2e4", "--margins", "none"));
        words.addAll(List.of("--csv", path(name, "csv"), "--json", path(name, "json"), "--chart", path(name, "svg")));
        words.addAll(List.of(more));
        return words.toArray(String[]::new);
    }

    private String path(String name, String ending) {
        return folder.resolve(name + "." + ending).toString();
    }

    private byte[] bytes(String file) throws Exception {
        return Files.readAllBytes(folder.resolve(file));
    }

    @Test
    void aSweepWritesAllItsFilesAndLeavesNoJournal() throws Exception {
        Run run = Run.of(command("a"));
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.DONE);
        assertThat(run.output()).contains("Of 6 points, ");
        assertThat(Files.readString(folder.resolve("a.csv"))).hasLineCount(7);
        try (var files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("slit.yaml", "a.csv", "a.json", "a.svg");
        }
    }

    @Test
    void aSweepThatIsStoppedAnywhereGoesOnAndEndsWithTheSameBytes() throws Exception {
        assertThat(Run.of(command("whole", "--refine", "0.3")).code()).isZero();
        for (int after = 1; after < 8; after++) {
            Files.deleteIfExists(folder.resolve("b.csv"));
            Files.deleteIfExists(folder.resolve("b.json"));
            Files.deleteIfExists(folder.resolve("b.svg"));
            Run stopped = Run.watched(stoppingAfter(after), command("b", "--refine", "0.3"));
            assertThat(stopped.code()).isEqualTo(ExitCode.UNDECIDED);
            assertThat(stopped.errors()).contains("the same command goes on from there");
            assertThat(stopped.output()).contains("Stopped before the end.");
            assertThat(folder.resolve("b.csv")).doesNotExist();
            assertThat(Run.of(command("b", "--refine", "0.3", "--threads", "1")).code())
                    .isZero();
            assertThat(bytes("b.csv")).isEqualTo(bytes("whole.csv"));
            assertThat(bytes("b.json")).isEqualTo(bytes("whole.json"));
            assertThat(bytes("b.svg")).isEqualTo(bytes("whole.svg"));
            assertThat(folder.resolve("b.csv.part")).doesNotExist();
        }
    }

    private static java.util.function.Supplier<Watch> stoppingAfter(int points) {
        AtomicInteger finished = new AtomicInteger();
        return () -> new Watch() {
            @Override
            public void progress(String step, long done, long most) {
                finished.set((int) done);
            }

            @Override
            public boolean stop() {
                return finished.get() >= points;
            }
        };
    }

    @Test
    void filesThatWereWrittenJustBeforeAKillAreReplaced() throws Exception {
        assertThat(Run.of(command("whole")).code()).isZero();
        Run.watched(stoppingAfter(5), command("c"));
        Files.writeString(folder.resolve("c.csv"), "written by the run that was killed");
        assertThat(Run.watched(stoppingAfter(100), command("c")).code()).isZero();
        assertThat(bytes("c.csv")).isEqualTo(bytes("whole.csv"));
    }

    @Test
    void theJournalOfAnotherStudyIsRefused() throws Exception {
        Run.watched(stoppingAfter(2), command("d"));
        byte[] journal = bytes("d.csv.part");
        Run other = Run.of(command("d", "--seed", "7"));
        assertThat(other.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(other.errors()).contains("d.csv.part belongs to another study (seed 1)");
        Files.writeString(layout, Files.readString(layout) + "# changed\n");
        Run changed = Run.of(command("d", "--overwrite"));
        assertThat(changed.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(changed.errors()).contains("belongs to another study (layout SHA-256");
        assertThat(bytes("d.csv.part")).isEqualTo(journal);
    }

    @Test
    void aFileThatIsThereStaysUnlessItMayBeReplaced() throws Exception {
        Files.writeString(folder.resolve("e.json"), "kept");
        Run refused = Run.of(command("e"));
        assertThat(refused.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(refused.errors()).contains("there is such a file already; --overwrite replaces it");
        assertThat(folder.resolve("e.json")).hasContent("kept");
        assertThat(folder.resolve("e.csv.part")).doesNotExist();
        assertThat(Run.of(command("e", "--overwrite")).code()).isZero();
    }

    @Test
    void twoOutputsInOneFileAreRefused() {
        Run run = Run.of(
                "sweep", layout.toString(), "--vary", "slit=1,2", "--csv", path("f", "x"), "--json", path("f", "x"));
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("--csv and --json name the same file");
    }

    @Test
    void anOutputInThePlaceOfTheJournalIsRefused() throws Exception {
        Path kept = Files.writeString(folder.resolve("g.csv.part"), "kept");
        Run run = Run.of(
                "sweep",
                layout.toString(),
                "--vary",
                "slit=1,2",
                "--csv",
                path("g", "csv"),
                "--json",
                folder.resolve(".").resolve("g.csv.part").toString(),
                "--overwrite");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("g.csv.part: has the name of the file that keeps what is finished until the study ends")
                .hasLineCount(1);
        assertThat(kept).hasContent("kept");
        assertThat(folder.resolve("g.csv")).doesNotExist();
    }

    @Test
    void wrongUseIsSaidInALine() {
        Run none = Run.of("sweep", layout.toString());
        assertThat(none.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(none.errors()).contains("--vary");
        Run unknown = Run.of("sweep", layout.toString(), "--vary", "slitt = 1, 2");
        assertThat(unknown.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(unknown.errors())
                .contains("there is no dimension 'slitt'", "did you mean 'slit'?")
                .hasLineCount(1);
        Run margins = Run.of("sweep", layout.toString(), "--vary", "slit = 1, 2", "--margins", "all");
        assertThat(margins.errors()).contains("--margins: expected least or none, got 'all'");
    }

    @Test
    void aLayoutWithErrorsIsRefused() throws Exception {
        Files.writeString(layout, "title: 3\n");
        Run run = Run.of("sweep", layout.toString(), "--vary", "slit = 1, 2");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("in the layout; nothing was checked.");
    }
}
