package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import darkrim.present.Results;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are not what they should be, and names that mean something to a terminal, a page or a spreadsheet. */
class HostileFileTest {
    /** Clears the screen and sets the title of the window, were it let through. */
    private static final String ESCAPES = "\u001b[2J\u001b]0;x\u0007";

    @TempDir
    private Path folder;

    private Path layout(String name, String yaml) throws IOException {
        return Files.writeString(folder.resolve(name), yaml);
    }

    private Path pipe(String name) throws Exception {
        Path pipe = folder.resolve(name);
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "no mkfifo");
        assertThat(new ProcessBuilder("/usr/bin/mkfifo", pipe.toString())
                        .start()
                        .waitFor())
                .isZero();
        return pipe;
    }

    private static Run soon(String... arguments) {
        return assertTimeoutPreemptively(Duration.ofSeconds(30), () -> Run.of(arguments));
    }

    @Test
    void aPipeOrADeviceIsNoResult() throws Exception {
        Path layout = layout("slit.yaml", Results.yaml("", "dark: {surfaces: screen/back, direct: none}"));
        for (Path result : List.of(pipe("result.json"), Path.of("/dev/zero"))) {
            Path picture = folder.resolve("out.png");
            Run run = soon("draw", layout.toString(), result.toString(), "--output", picture.toString());
            assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.UNUSABLE);
            assertThat(run.errors()).contains("the file is not an ordinary one").hasLineCount(1);
            assertThat(picture).doesNotExist();
        }
    }

    @Test
    void aPipeInThePlaceOfAJournalIsRefused() throws Exception {
        Path layout = layout("slit.yaml", Results.yaml("", "dark: {surfaces: screen/back, direct: none}"));
        pipe("out.csv.part");
        Run run = soon(
                "sweep",
                layout.toString(),
                "--vary",
                "slit = 1 to 2 step 1",
                "--csv",
                folder.resolve("out.csv").toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("is not an ordinary file").hasLineCount(1);
        assertThat(folder.resolve("out.csv")).doesNotExist();
    }

    @Test
    void aNameThatIsAFormulaStaysTextInASpreadsheet() throws IOException {
        String named = Results.yaml("", "\"=cmd|' !A0\": {surfaces: \"@SUM(A1)/back\", direct: none}")
                .replace("screen:", "\"@SUM(A1)\":")
                .replace("screen/front", "@SUM(A1)/front");
        Path layout = layout("slit.yaml", named);
        Path table = folder.resolve("out.csv");
        Run run = soon(
                "sweep",
                layout.toString(),
                "--vary",
                "slit = 1 to 2 step 1",
                "--csv",
                table.toString(),
                "--margins",
                "none");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(table).content().contains("'=cmd|' !A0 verdict").doesNotContainPattern("(^|[,\"\n])[=@]");
    }

    @Test
    void namesOfFilesDoNothingToATerminal() throws IOException {
        String text = Results.yaml("", "dark: {surfaces: screen/back, direct: none}");
        Path good = layout("good" + ESCAPES + ".yaml", text);
        Path bad = layout("bad" + ESCAPES + ".yaml", text.replace("diameter", "diametre"));
        Path twice = layout("a\nb.yaml", text);
        for (List<String> words : List.of(
                List.of("check", good.toString()),
                List.of("check", bad.toString()),
                List.of("check", twice.toString()),
                List.of("sweep", bad.toString(), "--vary", "slit = 1 to 2 step 1"),
                List.of("sweep", good.toString(), "--vary", "slit = 1 to 2 step 1", "--margins", "none"),
                List.of(
                        "check",
                        good.toString(),
                        "--json",
                        folder.resolve("no" + ESCAPES + "/x.json").toString()),
                List.of("check", good.toString(), "--no-such" + ESCAPES))) {
            StringWriter output = new StringWriter();
            StringWriter errors = new StringWriter();
            Surroundings surroundings = new Surroundings(
                    OutputWriter.to(output),
                    new PrintWriter(new VisibleWriter(errors)),
                    darkrim.present.Ink.PLAIN,
                    () -> darkrim.verdict.Watch.NONE);
            Main.run(surroundings, words.toArray(String[]::new));
            assertThat(output.toString() + errors).doesNotContain("\u001b").doesNotContain("\u0007");
            assertThat(output.toString() + errors).doesNotContain("a\nb.yaml");
        }
    }

    @Test
    void aNameThatIsNoneOfAFileIsRefusedInPlainWords() {
        Run run = soon("check", "a\0b.yaml");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("is not the name of a file here").doesNotContain("Exception");
    }

    @Test
    void whatIsShownKeepsItsLinesAndLetters() {
        StringWriter shown = new StringWriter();
        PrintWriter writer = new PrintWriter(new VisibleWriter(shown));
        writer.print("a\tb\r\nc\rd\n\u00e4\ud83d\ude00\u001b[1m\u202e");
        writer.print('\u0007');
        writer.flush();
        assertThat(shown).hasToString("a\tb\r\nc\u00b7d\n\u00e4\ud83d\ude00\u00b7[1m\u00b7\u00b7");
    }
}
