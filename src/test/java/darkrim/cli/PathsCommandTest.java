package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

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

class PathsCommandTest {
    private static final String LAYOUT = "geometries/nightglow-b.yaml";
    private static final Pattern COMMAND = Pattern.compile("java -jar target/darkrim.jar (paths .*)\n");

    @TempDir
    Path folder;

    @Test
    void bothFilesHoldWhatTheReportShows() throws Exception {
        Path json = folder.resolve("p.json");
        Path csv = folder.resolve("p.csv");
        Run run = Run.of(
                "paths",
                LAYOUT,
                "--reflections",
                "2",
                "--top",
                "2",
                "--samples",
                "2e4",
                "--json",
                json.toString(),
                "--csv",
                csv.toString());
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output())
                .contains("mosaic/die[2,2]/active\n---", "twice reflected", "3 times reflected, left out");
        assertThat(run.output().lines()).allMatch(line -> line.length() <= 100);
        assertThat(StudySchema.problems("paths.schema.json", json)).isEmpty();
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines).hasSize(1 + 4 * 2 * 2);
        assertThat(lines.get(0)).startsWith("receiver,reflections,kind,via,by,");
        assertThat(lines.get(1)).contains("mosaic/die[1,1]/active", "lid/opening[1,1]/");
    }

    @Test
    void aFileThatIsThereIsReplacedOnlyWhenAsked() throws Exception {
        Path csv = Files.writeString(folder.resolve("p.csv"), "mine");
        String[] arguments = {
            "paths", LAYOUT, "--onto", "mosaic/die[1,1]/active", "--samples", "1e3", "--csv", csv.toString()
        };
        Run refused = Run.of(arguments);
        assertThat(refused.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(refused.errors()).contains("--overwrite replaces it");
        assertThat(csv).hasContent("mine");
        Run done = Run.of(
                Stream.concat(Stream.of(arguments), Stream.of("--overwrite")).toArray(String[]::new));
        assertThat(done.code()).isZero();
        assertThat(csv).content().startsWith("receiver,");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.toList()).isEqualTo(List.of(csv));
        }
    }

    @Test
    void whatCannotBeUsedIsRefusedAndNothingWritten() throws Exception {
        Path csv = folder.resolve("p.csv");
        assertRefused("selects no surface", "paths", LAYOUT, "--onto", "lift/**", "--csv", csv.toString());
        assertRefused("pattern", "paths", LAYOUT, "--onto", "{a", "--csv", csv.toString());
        assertRefused("--onto is missing", "paths", "geometries/part-disc.yaml", "--csv", csv.toString());
        assertRefused("from 1 to 8, got '9'", "paths", LAYOUT, "--reflections", "9");
        assertRefused("from 1 to 8, got '0'", "paths", LAYOUT, "--reflections", "0");
        assertRefused("--top", "paths", LAYOUT, "--top", "none");
        assertRefused("such as 2e8, got '0'", "paths", LAYOUT, "--samples", "0");
        assertRefused("name the same file", "paths", LAYOUT, "--csv", csv.toString(), "--json", csv.toString());
        assertRefused("none.yaml", "paths", folder.resolve("none.yaml").toString());
        Path bad = Files.writeString(folder.resolve("bad.yaml"), "title: x\nbeam: {}\n");
        assertRefused("bad.yaml:2:", "paths", bad.toString());
        assertThat(csv).doesNotExist();
    }

    private static void assertRefused(String why, String... arguments) {
        Run run = Run.of(arguments);
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains(why).doesNotContain("Exception");
        assertThat(run.output()).isEmpty();
    }

    @Test
    void stoppedWorkEndsWithTheCodeForItAndWritesNoFile() {
        Path csv = folder.resolve("p.csv");
        Watch stop = StoppingWatch.after(0);
        Run run = Run.watched(() -> stop, "paths", LAYOUT, "--csv", csv.toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNDECIDED);
        assertThat(run.output()).contains("The work was stopped");
        assertThat(csv).doesNotExist();
    }

    @Test
    void aSurfaceThatNoLightReachesIsSaidToGetNone() throws Exception {
        Run run = Run.of("paths", LAYOUT, "--onto", "mosaic/die[1,1]/carrier/bottom", "--samples", "1e3");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output()).contains("none seen").contains("No light was found that is reflected more often.");
    }

    /** What docs/paths.md shows is what the program prints. */
    @Test
    void thePageShowsWhatTheProgramPrints() throws Exception {
        String page = Files.readString(Path.of("docs/paths.md"));
        Matcher command = COMMAND.matcher(page);
        assertThat(command.find()).isTrue();
        Run run = Run.of(ShellWords.of(command.group(1)));
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(withoutVersion(page)).contains("```\n" + withoutVersion(run.output()) + "```\n");
    }

    /** The version of the program changes without any change of the light; a hash of the layout that is stale is a page that is stale. */
    private static String withoutVersion(String text) {
        return text.replaceAll("Darkrim [0-9][^,]*,", "Darkrim,");
    }

    @Test
    void helpExplainsQuotesAndExitCodes() {
        Run run = Run.of("paths", "--help");
        assertThat(run.code()).isZero();
        assertThat(run.output()).contains("single quotes", "Exit codes:", "--reflections=N", "--onto=PATTERN");
    }
}
