package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code darkrim advise} as the user sees it. */
class AdviseCommandTest {
    /** Light reaches out to (a H + r h) / (H - h) = 33.3 mm; the strip begins at 30 mm. */
    private static final String LAYOUT = """
            title: One opening
            dimensions:
              side: 40 mm
              height: 50 mm
              half: side / 2
            beam:
              pupil: {shape: rectangle, width: 40, height: 40, distance: 200}
            parts:
              plate:
                kind: plate
                size: 400
                height: height - 0.001
                thickness: 0.001
                openings: {shape: rectangle, size: 2 * half}
              strip: {kind: rectangle, width: 10, depth: 4, at: [35, 0, 0]}
            requirements:
              strip-dark: {surfaces: "strip/front", direct: none}
            """;

    @TempDir
    private Path folder;

    private String layout;

    @BeforeEach
    void write() throws Exception {
        layout = Files.writeString(folder.resolve("opening.yaml"), LAYOUT).toString();
    }

    @Test
    void changesAreProposedInWordsAndInADocumentThatFitsItsSchema() throws Exception {
        Path json = folder.resolve("advice.json");
        Run run = Run.of("advise", layout, "--keep", "height", "--json", json.toString());
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(inOneLine(run.output()))
                .contains("With the values proposed below the layout passes a full check.")
                // a = 17.5: (17.5 * 200 + 20 * 50) / 150 = 30; the next round value on the dark side.
                .contains("side 40 mm 34.9 mm -5.1 mm");
        assertThat(run.output().lines()).allMatch(line -> line.length() <= 100);
        assertThat(StudySchema.problems("advice.schema.json", json)).isEmpty();
    }

    /** Read by another library. */
    @Test
    void theSmallestChangesAreATableToo() throws Exception {
        Path csv = folder.resolve("advice.csv");
        Run run = Run.of("advise", layout, "--keep", "height", "--csv", csv.toString());
        assertThat(run.code()).as(run.errors()).isZero();
        CSVRecord change = MapsCommandTest.records(csv).stream()
                .filter(each -> each.get("dimension").equals("side"))
                .findFirst()
                .orElseThrow();
        assertThat(change.get("requirement")).isEqualTo("strip-dark");
        assertThat(change.get("unit")).isEqualTo("mm");
        assertThat(Double.parseDouble(change.get("from"))).isEqualTo(40);
        // Half an opening of 17.5 mm puts the end of the light at 30 mm, as above: 35 mm, less what is lost by rounding
        // to the dark side.
        assertThat(Double.parseDouble(change.get("to"))).isBetween(34.8, 35.0);
        assertThat(Double.parseDouble(change.get("change")))
                .isCloseTo(Double.parseDouble(change.get("to")) - 40, within(1e-12));
    }

    private static String inOneLine(String text) {
        return text.replaceAll("\\s+", " ");
    }

    @Test
    void whereNothingPassesTheExitCodeSaysSo() {
        Run run = Run.of("advise", layout, "--keep", "height", "--range", "side = 38 to 42 mm");
        assertThat(run.code()).isEqualTo(ExitCode.FAIL);
        assertThat(inOneLine(run.output())).contains("WARNING: nothing within the ranges makes 'strip-dark' hold");
    }

    @Test
    void wrongUseIsRefusedInPlainWords() {
        assertRefused("there is no dimension 'hight' in ", "--keep", "hight");
        assertRefused("'half' is a formula, side / 2", "--range", "half = 10 to 30");
        assertRefused("the range of 'side' runs backwards", "--range", "side = 50 to 30");
        assertRefused(
                "cannot read 'wide' as a value of 'side', expected 'NAME = LEAST to MOST'", "--range", "side=wide");
        assertRefused("is no range, expected 'NAME = LEAST to MOST'", "--range", "side = 30, 35");
        assertRefused("'deg' is no unit for 'side'", "--range", "side = 30 deg to 45 deg");
        assertRefused(
                "the range of 'side' is given twice", "--range", "side = 30 to 45", "--range", "side = 3 cm to 5 cm");
        assertRefused("there is no dimension 'sied'", "--range", "sied = 30 to 45");
        assertRefused("there is no option '--kep'", "--kep", "side");
        assertRefused("every dimension that could change is kept", "--keep", "side", "--keep", "height");
    }

    private void assertRefused(String words, String... options) {
        String[] all = new String[options.length + 2];
        all[0] = "advise";
        all[1] = layout;
        System.arraycopy(options, 0, all, 2, options.length);
        Run run = Run.of(all);
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains(words).doesNotContain("Exception");
        assertThat(run.output()).isEmpty();
    }

    @Test
    void aLayoutWithoutDimensionsIsRefused() throws Exception {
        String bare = LAYOUT.replaceFirst("(?s)dimensions:.*?beam:", "beam:")
                .replace("2 * half", "40")
                .replace("height - 0.001", "49.999");
        Run run = Run.of("advise", Files.writeString(Path.of(layout), bare).toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("the layout has no dimension that could change")
                .doesNotContain("Exception");
    }

    @Test
    void whatHoldsAlreadyNeedsNoChange() throws Exception {
        Path json = folder.resolve("advice.json");
        Files.writeString(Path.of(layout), LAYOUT.replace("side: 40", "side: 34"));
        Run run = Run.of("advise", layout, "--json", json.toString());
        assertThat(run.code()).isZero();
        assertThat(run.output()).contains("Every requirement holds: nothing needs to change.");
        assertThat(StudySchema.problems("advice.schema.json", json)).isEmpty();
    }

    /** The strip ends where the plate can no longer be built: an opening as wide as the plate. */
    @Test
    void valuesThatCannotBeBuiltAreLeftOut() {
        Run run = Run.of("advise", layout, "--keep", "height", "--range", "side = 1 to 600");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(inOneLine(run.output())).contains("side 40 mm 34.9 mm -5.1 mm");
    }

    @Test
    void stoppedAtOnceItShowsWhatItHas() {
        Run run = Run.watched(() -> new StopAt(""), "advise", layout);
        assertThat(run.code()).isEqualTo(ExitCode.UNDECIDED);
        assertThat(run.output()).contains("Stopped before there was a proposal.");
    }

    @Test
    void stoppedAfterTheProposalItKeepsIt() {
        Run run = Run.watched(() -> new StopAt("looking at what each change does"), "advise", layout);
        assertThat(run.code()).isEqualTo(ExitCode.UNDECIDED);
        assertThat(run.output()).contains("Proposal: the smallest change of all dimensions together");
    }

    /** Asks to stop from a step on; from the beginning if it is nameless. */
    private static final class StopAt implements Watch {
        private final String step;
        private volatile boolean stop;

        private StopAt(String step) {
            this.step = step;
            stop = step.isEmpty();
        }

        @Override
        public void progress(String now, long done, long most) {
            stop |= now.equals(step);
        }

        @Override
        public boolean stop() {
            return stop;
        }
    }
}
