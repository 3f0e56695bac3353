package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.study.journal.CsvLine;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PixelViewCommandTest {
    private static final String LAYOUT = "geometries/nightglow-b.yaml";
    private static final String AT = "mosaic/die[1,2]/active:0.98,0.5";
    private static final Pattern COMMAND = Pattern.compile("java -jar target/darkrim.jar (pixel-view .*--at.*)\n");

    @TempDir
    Path folder;

    @Test
    void theTableAndTheDocumentHoldWhatIsSeen() throws Exception {
        Path csv = folder.resolve("seen.csv");
        Path json = folder.resolve("seen.json");
        Run run = Run.of(
                "pixel-view",
                LAYOUT,
                "--at",
                AT,
                "--at",
                "mosaic/die[1,1]/active",
                "--samples",
                "2e4",
                "--csv",
                csv.toString(),
                "--json",
                json.toString());
        assertThat(run.errors()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.output().lines()).allMatch(line -> line.length() <= 100);
        assertThat(run.output().replaceAll("\\s+", " "))
                .contains("What " + AT + " sees", "(the pupil)", "walls/inside/+x", "warm photons/s on its pixel");
        assertThat(StudySchema.problems("pixel.schema.json", json)).isEmpty();
        List<String> lines = Files.readAllLines(csv);
        int columns = CsvLine.fields(lines.get(0)).size();
        double sum = 0;
        for (String line : lines.subList(1, lines.size())) {
            List<String> fields = CsvLine.fields(line, columns);
            if (fields.get(0).equals(AT)) {
                sum += Double.parseDouble(fields.get(5));
            }
        }
        assertThat(sum).isCloseTo(Math.PI, within(1e-9));
    }

    @Test
    void aLayoutWithoutTemperaturesIsLookedAtAllTheSame() throws Exception {
        Path json = folder.resolve("seen.json");
        Run run = Run.of(
                "pixel-view", "geometries/nightglow-a.yaml", "--at", AT, "--samples", "1e4", "--json", json.toString());
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.output().replaceAll("\\s+", " "))
                .contains("says nothing of temperatures", "sr of surfaces that the beam strikes")
                .doesNotContain("photons/s");
        assertThat(StudySchema.problems("pixel.schema.json", json)).isEmpty();
    }

    @Test
    void whatDocsShowIsWhatTheProgramPrints() throws Exception {
        String page = Files.readString(Path.of("docs/pixel-view.md"));
        Matcher command = COMMAND.matcher(page);
        assertThat(command.find()).isTrue();
        Run run = Run.of(Stream.of(command.group(1).split(" ", -1))
                .map(word -> word.replace("'", ""))
                .toArray(String[]::new));
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(withoutVersion(page)).contains("```\n" + withoutVersion(run.output()) + "```\n");
    }

    /** The version of the program changes without any change of what is seen; a hash of the layout that is stale is a page that is stale. */
    private static String withoutVersion(String text) {
        return text.replaceAll("Darkrim [0-9][^,]*,", "Darkrim,");
    }

    @Test
    void outputsAreRefusedBeforeAnyWork() throws Exception {
        Path csv = Files.writeString(folder.resolve("mine.csv"), "mine");
        Run there = Run.of("pixel-view", LAYOUT, "--at", AT, "--csv", csv.toString());
        assertThat(there.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(there.errors()).contains("--csv", "there is such a file already");
        Run twice = Run.of(
                "pixel-view", LAYOUT, "--at", AT, "--overwrite", "--csv", csv.toString(), "--json", csv.toString());
        assertThat(twice.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(twice.errors()).startsWith("darkrim: --csv and --json name the same file ");
        assertThat(csv).hasContent("mine");
        assertThat(there.output() + twice.output()).isEmpty();
    }

    @Test
    void aPointThatDoesNotExistIsRefusedWithTheNearestNames() {
        Run run = Run.of("pixel-view", LAYOUT, "--at", "mosaic/die[1,2]/activ");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).startsWith("darkrim: --at: there is no surface 'mosaic/die[1,2]/activ'; the nearest");
        assertThat(run.output()).isEmpty();
    }

    @Test
    void aTemperatureRuleThatSelectsNothingIsAnErrorWithItsPlace() throws Exception {
        String text =
                Files.readString(Path.of(LAYOUT)).replace("\"walls/**\", temperature", "\"wals/**\", temperature");
        Path file = Files.writeString(folder.resolve("bad.yaml"), text);
        Run run = Run.of("pixel-view", file.toString(), "--at", AT);
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .containsPattern("bad\\.yaml:\\d+:\\d+: temperature rule: \"wals/\\*\\*\" selects no surface")
                .contains("[matches-nothing]")
                .doesNotContain("Exception");
    }

    @Test
    void stoppedWorkShowsWhatIsFinishedAndEndsWithTheCodeForIt() {
        Watch stopAtOnce = StoppingWatch.after(0);
        Run run = Run.watched(() -> stopAtOnce, "pixel-view", LAYOUT, "--at", AT);
        assertThat(run.code()).isEqualTo(ExitCode.UNDECIDED);
        assertThat(run.output()).contains("Stopped before any point was looked at.");
    }

    @Test
    void helpExplainsQuotesAndExitCodes() {
        Run run = Run.of("pixel-view", "--help");
        assertThat(run.code()).isZero();
        assertThat(run.output()).contains("single quotes", "Exit codes:", "--csv=FILE", "SURFACE[:u,v]");
    }
}
