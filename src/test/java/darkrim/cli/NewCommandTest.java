package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutSchema;
import darkrim.present.Ink;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.io.PipedReader;
import java.io.PipedWriter;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A first layout from options or answers, and what is refused. */
class NewCommandTest {
    private static final List<String> MOSAIC = List.of(
            "--columns",
            "2",
            "--rows",
            "2",
            "--pixels",
            "2048",
            "--pixel-pitch",
            "18",
            "--die-margin",
            "0.6",
            "--spacing",
            "40.2",
            "--pupil-distance",
            "320");

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("first.yaml");
    }

    /** Runs the command where nobody can be asked. */
    private Run alone(List<String> options, String... more) {
        return run(Optional::empty, Watch.NONE, options, more);
    }

    private Run answered(String answers, String... options) {
        return run(() -> Optional.of(Answers.from(new StringReader(answers))), Watch.NONE, List.of(), options);
    }

    private Run run(Supplier<Optional<Answers>> person, Watch watch, List<String> options, String... more) {
        List<String> words = new ArrayList<>(List.of(file.toString()));
        words.addAll(options);
        words.addAll(List.of(more));
        StringWriter output = new StringWriter();
        StringWriter errors = new StringWriter();
        Surroundings surroundings =
                new Surroundings(OutputWriter.to(output), new PrintWriter(errors), Ink.PLAIN, () -> watch);
        int code = NewCommand.line(surroundings, person).execute(words.toArray(String[]::new));
        return new Run(code, output.toString(), errors.toString());
    }

    @Test
    void optionsAreEnoughAndTheLayoutHasNoFinding() throws IOException {
        Run run = alone(MOSAIC, "--f-number", "7", "--edge-height", "2.4", "--title", "Ours: a \"new\" one");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).isEmpty();
        assertThat(run.output()).contains("Feasible: h = 2.4 mm is within N (d - 2t) = 3.304 mm.");
        assertThat(LayoutReader.read(file).findings()).isEmpty();
        assertThat(LayoutReader.read(file).layout().orElseThrow().title()).isEqualTo("Ours: a \"new\" one");
        Run again = alone(MOSAIC, "--f-number", "7", "--edge-height", "3");
        assertThat(again.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(again.errors()).contains("there is such a file already; --overwrite replaces it");
        assertThat(Files.readString(file)).contains("edge_height: 2.4 ");
        assertThat(alone(MOSAIC, "--f-number", "7", "--edge-height", "3", "--overwrite")
                        .code())
                .isZero();
        assertThat(Files.readString(file)).contains("edge_height: 3 ");
    }

    @Test
    void wishesThatConflictAreToldAndWrittenAllTheSame() {
        Run run = alone(MOSAIC, "--pupil-diameter", "80", "--edge-height", "3");
        assertThat(run.code()).isZero();
        assertThat(run.output())
                .contains("CONFLICT: No opening can do both")
                .contains("N (d - 2t) = 4 (0.672 - 2 x 0.1) = 1.888 mm");
        assertThat(LayoutReader.read(file).hasErrors()).isFalse();
    }

    @Test
    void theReturnKeyTakesWhatIsSuggested() throws IOException {
        Run run = answered("\n".repeat(13), "--schema");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).contains("Pixel pitch, um [18]: ").doesNotContain("Between the middles");
        assertThat(LayoutReader.read(file).findings()).isEmpty();
        assertThat(Files.readString(file)).startsWith("# yaml-language-server: $schema=layout.schema.json\n");
        assertThat(folder.resolve("layout.schema.json")).hasContent(LayoutSchema.text());
    }

    @Test
    void theTitleIsAskedLastUnlessAnOptionSaysIt() {
        Run run = answered("\n".repeat(12) + " Dusk camera \n");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).endsWith("Title [First baffle]: ");
        assertThat(LayoutReader.read(file).layout().orElseThrow().title()).isEqualTo("Dusk camera");
        Run said = answered("\n".repeat(13), "--title", "Dawn camera", "--overwrite");
        assertThat(said.code()).as(said.errors()).isZero();
        assertThat(said.errors()).doesNotContain("Title");
        assertThat(LayoutReader.read(file).layout().orElseThrow().title()).isEqualTo("Dawn camera");
    }

    @Test
    void aTitleThatNoLayoutMayHaveIsAskedAgain() {
        Run run = answered("\n".repeat(12) + "x".repeat(301) + "\nDusk camera\n");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).contains("expected a title of 1 to 300 characters");
        assertThat(LayoutReader.read(file).layout().orElseThrow().title()).isEqualTo("Dusk camera");
        Run said = alone(MOSAIC, "--f-number", "7", "--edge-height", "2.4", "--overwrite", "--title", "x".repeat(301));
        assertThat(said.code()).isEqualTo(2);
        assertThat(said.errors()).contains("--title: expected a title of 1 to 300 characters");
    }

    @Test
    void anOptionThatNoAnswerCanMendIsNamed() {
        Run run = answered("2\n".repeat(2) + "2048\n18\n0\n0.6\n", "--spacing", "10");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errors()).contains("; fixed by --spacing: to change that, end with Ctrl-C and begin again.");
    }

    @Test
    void whereNoBondWiresFitThatIsToldAndNothingUnusedIsWritten() throws Exception {
        List<String> three = new ArrayList<>(MOSAIC);
        three.set(three.indexOf("--rows") + 1, "3");
        Run run = alone(three, "--f-number", "7", "--edge-height", "2.4");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output()).contains("No bond wires are written");
        Findings findings = new Findings();
        PlacedScene.of(file, new Effort(1, Optional.empty(), Optional.empty()), findings, Watch.NONE);
        assertThat(findings.sorted()).isEmpty();
        assertThat(alone(MOSAIC, "--f-number", "7", "--edge-height", "2.4", "--overwrite")
                        .output())
                .doesNotContain("bond wires");
    }

    @Test
    void nonsenseIsAskedAgainWithWhatWasExpected() throws IOException {
        Run run = answered("two\n2\n\n2000000\n0x10\n1e3d\nNaN\n1024\n15um\n" + "\n".repeat(12));
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors())
                .contains("Detectors along x [1]:   expected a whole number from 1 to 100.\n")
                .containsPattern("(expected a whole number from 2 to 100000.\n.*){4}")
                .contains("Between the middles of neighbouring detectors, mm [18]: ");
        assertThat(Files.readString(file))
                .contains("grid: [2, 1]")
                .contains("pixel_pitch: 15 um")
                .contains("pixels: 1024");
    }

    @Test
    void diesThatOverlapAreRefusedWhereTheirStepIsAsked() throws IOException {
        Run run = answered("2\n1\n1024\n18\n\n0.6\n19\n20\n" + "\n".repeat(12));
        assertThat(run.code()).as(run.errors()).isZero();
        // 1024 x 0.018 + 2 x 0.6 = 19.632
        assertThat(run.errors()).containsOnlyOnce("the dies are 19.632 mm wide and stand 19 mm apart");
        assertThat(Files.readString(file)).containsPattern("(?m)^.*\\b20\\b");
    }

    /** Only the answer that does not go with those before is asked again; these are kept. */
    @Test
    void whatDoesNotGoTogetherIsAskedAgainAlone() throws IOException {
        // columns, rows, pixels, pitch; border: 512 leaves no pixel; margin; distance, f-number; field: 3 is within the
        // pixels; error;
        // edges: 200 is beyond half of 320; walls: 318 and 2 reach the pupil
        Run run = answered("1\n1\n1024\n18\n512\n8\n0.7\n320\n7\n3\n20\n0.1\n200\n2\n318\n30\n");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors())
                .containsOnlyOnce("the border of 512 reference pixels leaves none of 1024 pixels")
                .containsOnlyOnce("the lit field ends at 3 mm from the axis")
                .containsOnlyOnce("the edges stand at 200 mm")
                .containsOnlyOnce("the walls end at 320 mm, expected below the pupil at 320 mm.\n")
                .containsOnlyOnce("Detectors along x")
                .containsOnlyOnce("Pixel pitch");
        assertThat(Files.readString(file)).contains("pixels: 1024").contains("edge_height: 2 ");
    }

    @Test
    void aDistanceThatTheGivenPupilDoesNotFitIsAskedAgain() {
        // 40 / 100 is less than the least f-number, 0.5
        Run run = answered("1\n1\n1024\n18\n\n\n40\n400\n" + "\n".repeat(4), "--pupil-diameter", "100");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).containsOnlyOnce("--pupil-diameter: the f-number is 0.4, expected a number from 0.5");
    }

    @Test
    void optionsThatDoNotGoTogetherAreRefusedBeforeAnythingIsAsked() {
        Run run = answered(
                "", "--pixels", "100", "--reference-pixels", "50", "--pupil-distance", "1e3", "--edge-height", "501");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("leaves none of 100 pixels", "half way to the pupil, 500 mm")
                .doesNotContain("Detectors along x");
    }

    @Test
    void theNextCommandIsOneThatAShellUnderstands() {
        file = folder.resolve("it's first.yaml");
        Run run = alone(MOSAIC, "--f-number", "7", "--edge-height", "2.4");
        assertThat(run.output()).endsWith("Next: darkrim check '" + folder + "/it'\\''s first.yaml'\n");
    }

    @Test
    void answersThatEndLeaveNoFile() {
        Run run = answered("1\n1\n");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("the answers ended before the last question")
                .endsWith("darkrim: nothing was written.\n");
        assertThat(file).doesNotExist();
    }

    /** A person who types nothing, as a pipe that stays open. */
    @Test
    void whoeverStopsIsNotWaitedFor() throws IOException {
        try (PipedWriter silent = new PipedWriter();
                Reader listening = new PipedReader(silent)) {
            Watch stopped = new Quiet(() -> true);
            Run run = run(() -> Optional.of(Answers.from(listening)), stopped, List.of());
            assertThat(run.code()).isEqualTo(ExitCode.UNDECIDED);
            assertThat(run.errors()).endsWith("darkrim: stopped; nothing was written.\n");
            assertThat(file).doesNotExist();
        }
    }

    @Test
    void whereNobodyCanBeAskedAllThatIsMissingIsNamed() {
        Run run = alone(List.of("--columns", "2"), "--f-number", "7", "--pupil-diameter", "40");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("--f-number and --pupil-diameter say the same")
                .contains(
                        "options are missing: --pixels (",
                        "--pixel-pitch (",
                        "--spacing (",
                        "--pupil-distance (",
                        "--edge-height (")
                .doesNotContain("--rows");
        assertThat(file).doesNotExist();
    }

    @Test
    void whatCannotBeIsRefusedAllAtOnce() {
        List<String> near = new ArrayList<>(MOSAIC);
        near.set(near.indexOf("40.2"), "30");
        Run run = alone(near, "--f-number", "7", "--edge-height", "200", "--field-half-width", "3");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("expected at least 38.084 mm", "before the last pixel", "half way to the pupil");
        assertThat(alone(MOSAIC, "--pupil-diameter", "1e5", "--edge-height", "2")
                        .errors())
                .contains("the f-number is 0.0032");
        assertThat(file).doesNotExist();
    }
}
