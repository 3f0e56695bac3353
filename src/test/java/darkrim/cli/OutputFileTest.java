package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFileTest {
    @TempDir
    private Path folder;

    private Path input;

    @BeforeEach
    void writeInput() throws IOException {
        input = Files.writeString(folder.resolve("in.yaml"), "title: in");
    }

    @Test
    void aNewFileIsWrittenAndNothingElseIsLeft() throws IOException {
        OutputFile file = new OutputFile("--json", folder.resolve("out.json"), false);
        assertThat(file.problem(input)).isEmpty();
        file.write("whole");
        assertThat(folder.resolve("out.json")).hasContent("whole");
        assertThat(names()).containsExactlyInAnyOrder("in.yaml", "out.json");
    }

    @Test
    void askingLeavesNothingBehind() throws IOException {
        assertThat(new OutputFile("--json", folder.resolve("out.json"), false).problem(input))
                .isEmpty();
        assertThat(names()).containsExactly("in.yaml");
    }

    @Test
    void aFileThatCameMeanwhileIsKept() throws IOException {
        OutputFile file = new OutputFile("--json", folder.resolve("out.json"), false);
        Files.writeString(folder.resolve("out.json"), "another's");
        assertThatThrownBy(() -> file.write("mine")).isInstanceOf(FileAlreadyExistsException.class);
        assertThat(folder.resolve("out.json")).hasContent("another's");
        assertThat(names()).containsExactlyInAnyOrder("in.yaml", "out.json");
    }

    @Test
    void whyAFileWasNotWrittenIsSaidWithWhatIsThereNow() throws IOException {
        Path out = folder.resolve("out.json");
        StringWriter said = new StringWriter();
        Files.writeString(out, "another's");
        assertThat(new OutputFile("--json", out, false).write("mine", new PrintWriter(said)))
                .isFalse();
        assertThat(said.toString())
                .isEqualToIgnoringNewLines("darkrim: --json " + out
                        + ": the file could not be written: there is such a file by now; it was left as it is.");
        assertThat(out).hasContent("another's");
        StringWriter gone = new StringWriter();
        Path nowhere = folder.resolve("none").resolve("out.json");
        assertThat(new OutputFile("--json", nowhere, false).write("mine", new PrintWriter(gone)))
                .isFalse();
        assertThat(gone.toString()).contains("; there is no such file now.").hasLineCount(1);
    }

    /** The names of fresh files are used again: none may be taken away from the writer that made it. */
    @Test
    void manyWritersOfOneFileDoNotDisturbOneAnother() throws Exception {
        Path out = folder.resolve("out.json");
        String[] contents = {"a".repeat(5_000), "b".repeat(5_000), "c".repeat(5_000), "d".repeat(5_000)};
        StringWriter said = new StringWriter();
        PrintWriter errors = new PrintWriter(said);
        ExecutorService writers = Executors.newFixedThreadPool(contents.length);
        try {
            List<Future<Integer>> failures = new ArrayList<>();
            for (String content : contents) {
                failures.add(writers.submit(() -> {
                    int failed = 0;
                    for (int i = 0; i < 200; i++) {
                        failed += new OutputFile("--json", out, true).write(content, errors) ? 0 : 1;
                    }
                    return failed;
                }));
            }
            for (Future<Integer> each : failures) {
                assertThat(each.get()).as(said::toString).isZero();
            }
        } finally {
            writers.shutdownNow();
        }
        assertThat(Files.readString(out)).isIn((Object[]) contents);
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(each -> each.getFileName().toString())).noneMatch(name -> name.endsWith(".part"));
        }
    }

    @Test
    void theLayoutIsNeverWrittenOver() throws IOException {
        assertThat(new OutputFile("--json", input, true).problem(input))
                .hasValue("is the layout file itself and would be lost");
        Path link = Files.createSymbolicLink(folder.resolve("link.json"), input);
        assertThat(new OutputFile("--json", link, true).problem(input))
                .hasValue("is the layout file itself and would be lost");
    }

    @Test
    void aFileThatTheLayoutReadsIsNotReplaced() throws IOException {
        Path mesh = Files.writeString(folder.resolve("lid.stl"), "mine");
        Path other = Files.writeString(folder.resolve("d.stl"), "free");
        Files.writeString(input, "parts:\n  lid: {kind: mesh, file: lid.stl}\n");
        assertThat(new OutputFile("-o", mesh, true).problem(input))
                .hasValue("is a file that in.yaml reads, or has the name of one; expected another name");
        assertThat(new OutputFile("-o", other, true).problem(input)).isEmpty();
        assertThat(mesh).hasContent("mine");
    }

    @Test
    void foldersDevicesAndLinksAreNotReplaced() throws IOException {
        assertThat(new OutputFile("--json", folder, true).problem(input)).hasValue("is a folder, expected a file name");
        Path link = Files.createSymbolicLink(folder.resolve("dangling"), folder.resolve("nowhere"));
        assertThat(new OutputFile("--json", link, true).problem(input)).hasValue("is not an ordinary file");
        if (Files.exists(Path.of("/dev/null"))) {
            assertThat(new OutputFile("--json", Path.of("/dev/null"), true).problem(input))
                    .hasValue("is not an ordinary file");
        }
    }

    @Test
    void aMissingFolderIsFoundBeforeTheWork() {
        Path missing = folder.resolve("none");
        assertThat(new OutputFile("--json", missing.resolve("out.json"), false).problem(input))
                .hasValue("there is no folder " + missing);
    }

    @Test
    void theNameOfAFolderKeepsToItsLine() {
        Path missing = folder.resolve("two\n\u001blines");
        assertThat(new OutputFile("--json", missing.resolve("out.json"), false).problem(input))
                .hasValue("there is no folder " + folder.resolve("two\u00b7\u00b7lines"));
    }

    @Test
    void aDashIsNotTakenForAFileName() {
        assertThat(new OutputFile("--json", Path.of("-"), false).problem(input))
                .hasValue("standard output holds the report, expected a file name");
    }

    @Test
    void oneFileUnderTwoNamesIsSeenThroughALinkedFolder() throws IOException {
        Path real = Files.createDirectory(folder.resolve("real"));
        Path linked = Files.createSymbolicLink(folder.resolve("linked"), real);
        StringWriter said = new StringWriter();
        OutputFile csv = new OutputFile("--csv", real.resolve("a"), false);
        OutputFile json = new OutputFile("--json", linked.resolve("a"), false);
        OutputFile chart = new OutputFile("--chart", linked.resolve("b"), false);
        assertThat(OutputFile.areUsable(List.of(csv, json, chart), List.of(input), new PrintWriter(said)))
                .isFalse();
        assertThat(said.toString())
                .isEqualToIgnoringNewLines("darkrim: --csv and --json name the same file " + real.resolve("a")
                        + ", expected two files; nothing was done.\n");
    }

    /** Processes that share a folder but not their numbers, as containers do, leave files that name the same process. */
    @Test
    void whatAnotherProcessOfThisNumberLeftIsNotInTheWay() throws IOException {
        Path left = folder.resolve(".out.json." + ProcessHandle.current().pid() + ".part");
        Files.writeString(left, "half");
        OutputFile file = new OutputFile("--json", folder.resolve("out.json"), false);
        assertThat(file.problem(input)).isEmpty();
        file.write("whole");
        assertThat(folder.resolve("out.json")).hasContent("whole");
    }

    private Stream<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).toList().stream();
        }
    }
}
