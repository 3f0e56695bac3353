package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ToleranceCommandTest {
    /** One edge over a screen: dark with the edge below -2.3; twice the tolerance would light it. */
    private static final String LAYOUT = """
            title: One edge
            dimensions:
              edge: {value: -2.6, tolerance: TOLERANCE}
            beam:
              pupil: {shape: rectangle, width: 10, height: 10, distance: 100}
            parts:
              screen: {kind: rectangle, width: 4, depth: 4}
              baffle: {kind: rectangle, width: 60, depth: 60, at: [edge + 30, 0, 10], KEYS}
            requirements:
              dark: {surfaces: screen/front, direct: none}
              dim: {surfaces: screen/front, direct: {at_most: 0.5}}
              whole: {surfaces: baffle/front, pupil_seen: {at_least: 0.9}}
            """;

    @TempDir
    Path folder;

    private final StringWriter output = new StringWriter();
    private final StringWriter errors = new StringWriter();
    private Path layout;

    @BeforeEach
    void write() throws IOException {
        layout = layout("0.2", "repeat: {count: [1, 1], step: [0, 0]}");
    }

    private Path layout(String tolerance, String keys) throws IOException {
        return Files.writeString(
                folder.resolve("edge.yaml"),
                LAYOUT.replace("TOLERANCE", tolerance).replace("KEYS", keys));
    }

    private int run(Object... arguments) {
        String[] words = java.util.Arrays.stream(arguments).map(String::valueOf).toArray(String[]::new);
        return Main.run(
                new Surroundings(OutputWriter.to(output), new PrintWriter(errors), Ink.PLAIN, () -> Watch.NONE), words);
    }

    @Test
    void aWorstCaseThatHoldsPasses() {
        assertThat(run("tolerance", layout, "--builds", 5)).isEqualTo(ExitCode.PASS);
        assertThat(output.toString())
                .contains("PASS: every requirement holds in the worst case", "edge          +-0.2 mm  uniform")
                // In the plane 10 / 9 of 0.3 mm as drawn, of 0.1 mm at the worst; square to the line of light 0.9997 of
                // that.
                .containsPattern("dark +0\\.333 +0\\.111 +PASS")
                .contains("5 of 5 builds pass: the yield is from ");
        assertThat(output.toString().lines()).allMatch(line -> line.length() <= 100);
    }

    @Test
    void aWorstCaseThatDoesNotHoldFails() throws IOException {
        assertThat(run("tolerance", layout("0.4", ""), "--builds", 5)).isEqualTo(ExitCode.FAIL);
        assertThat(output.toString())
                .contains("FAIL: within the tolerances dark does not hold.", "dark: -0.112 at screen/front");
    }

    @Test
    void aYieldIsProvedMissedOrLeftOpen() throws IOException {
        // Beyond -2.3 lie 1/8 of the builds of a uniform edge from -3.0 to -2.2.
        layout("0.4", "");
        assertThat(run("tolerance", layout, "--builds", 100, "--yield", "0.5")).isEqualTo(ExitCode.PASS);
        assertThat(output.toString()).contains("Loosest tolerances", "50 may fail");
        assertThat(run("tolerance", layout, "--builds", 200, "--yield", "99%")).isEqualTo(ExitCode.FAIL);
        assertThat(run("tolerance", layout, "--builds", 20, "--yield", "0.9")).isEqualTo(ExitCode.UNDECIDED);
        assertThat(output.toString()).contains("can show that.");
    }

    @Test
    void theDocumentFitsItsSchemaAndTheTableHasALineForEachBuild() throws IOException {
        Path json = folder.resolve("t.json");
        Path csv = folder.resolve("t.csv");
        layout("{minus: 0.1, plus: 0.5}", "placement_tolerance: {tilt: [0, 0, 1], distribution: normal}");
        run("tolerance", layout, "--builds", 6, "--yield", "0.5", "--build-margins", "--json", json, "--csv", csv);
        String text = Files.readString(json);
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(Path.of("docs/tolerance.schema.json")), InputFormat.JSON)
                        .validate(text, InputFormat.JSON))
                .isEmpty();
        JsonNode document = JsonMapper.shared().readTree(text);
        assertThat(document.get("contributors").get(1).get("name").asString()).isEqualTo("baffle tilt z");
        List<String> lines = Files.readAllLines(csv);
        assertThat(lines).hasSize(7);
        assertThat(lines.get(0))
                .isEqualTo("build,verdict,edge deviation [mm],baffle tilt z deviation [deg],"
                        + "dark,dark value [relative irradiance],dark at least [relative irradiance],"
                        + "dark at most [relative irradiance],dark margin [mm],dark margin is,"
                        + "dim,dim value [relative irradiance],dim at least [relative irradiance],"
                        + "dim at most [relative irradiance],dim margin [relative irradiance],dim margin is,"
                        + "whole,whole value [share of pupil],whole at least [share of pupil],"
                        + "whole at most [share of pupil],whole margin [mm],whole margin is,"
                        + "cannot be built because,warnings");
        assertThat(lines.get(1).split(",", -1)).hasSameSizeAs(lines.get(0).split(",", -1));
        // The margin of direct light is exact: the edge is nearer than where the search ends.
        assertThat(lines.subList(1, 7))
                .allSatisfy(line -> assertThat(line.split(",", -1)[9]).isEqualTo("exact"));
        assertThat(lines.get(1)).startsWith("1,");
    }

    @Test
    void aStoppedStudyKeepsWhatIsFinishedWritesNoFileAndGoesOn() throws IOException {
        Path json = folder.resolve("t.json");
        Path whole = folder.resolve("whole.json");
        layout("0.1", "");
        run("tolerance", layout, "--builds", 40, "--json", whole);
        String[] words = {"tolerance", layout.toString(), "--builds", "40", "--json", json.toString()};
        Run stopped = Run.watched(() -> new StopAfter("checking builds", 9), words);
        assertThat(stopped.code()).as("what passes so far is not decided").isEqualTo(ExitCode.UNDECIDED);
        assertThat(stopped.errors())
                .containsPattern("stopped after [1-9]\\d* looks, which are kept in .*t\\.json\\.part");
        assertThat(json).doesNotExist();
        assertThat(Run.of(words).code()).isEqualTo(ExitCode.PASS);
        assertThat(json).hasSameBinaryContentAs(whole);
        assertThat(folder.resolve("t.json.part")).doesNotExist();
    }

    /** Stops once a step is so far. */
    private static final class StopAfter implements Watch {
        private final String step;
        private final long after;
        private volatile boolean stop;

        StopAfter(String step, long after) {
            this.step = step;
            this.after = after;
        }

        @Override
        public void progress(String current, long done, long most) {
            stop |= current.equals(step) && done >= after;
        }

        @Override
        public boolean stop() {
            return stop;
        }
    }

    @Test
    void theChartShowsEachRequirementsMarginsOnTheirSideOfTheLimit() throws IOException {
        Path svg = folder.resolve("t.svg");
        Path png = folder.resolve("t.png");
        run("tolerance", layout, "--builds", 5, "--build-margins", "--chart", svg);
        assertThat(Files.readString(svg))
                .contains("One edge", "dark", "5 of 5 builds pass", "as drawn", "worst case", "at 3 sigma", "100 %");
        layout("0.4", "");
        run("tolerance", layout, "--builds", 5, "--chart", png);
        BufferedImage picture = ImageIO.read(png.toFile());
        // The plot of the first requirement, by the layout of the sheet: what fails is red and lies left of the limit.
        int limit = firstColumn(picture, 0xdcefdc, 230, 700);
        int worst = firstColumn(picture, 0xb03010, 230, 700);
        int drawn = firstColumn(picture, 0x1f4e79, limit, 700);
        assertThat(worst).isBetween(230, limit - 1);
        assertThat(drawn).isBetween(limit, 699);
        run("tolerance", layout("0.2", ""), "--builds", 5, "--chart", png, "--overwrite");
        assertThat(firstColumn(ImageIO.read(png.toFile()), 0xb03010, 230, 700)).isEqualTo(700);
        assertThat(run("tolerance", layout, "--chart", folder.resolve("t.gif"))).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains("expected a name that ends in .svg or .png");
    }

    /** The first column of the rows of the first requirement's marks in which there is a colour; the end if in none. */
    private static int firstColumn(BufferedImage picture, int colour, int from, int end) {
        for (int x = from; x < end; x++) {
            for (int y = 155; y < 215; y++) {
                if ((picture.getRGB(x, y) & 0xffffff) == colour) {
                    return x;
                }
            }
        }
        return end;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --yield 1        | expected a share above 0 and below 1, such as 0.99 or 99%, got '1'
            --yield most     | expected a share above 0 and below 1, such as 0.99 or 99%, got 'most'
            --yield NaN      | expected a share above 0 and below 1, such as 0.99 or 99%, got 'NaN'
            --builds 0       | expected a whole number from 1 to 1000000, got '0'
            --builds 1e12    | expected a whole number from 1 to 1000000, got '1e12'
            --bilds 5        | there is no option '--bilds', did you mean '--builds'?
            """)
    void aWrongOptionIsExplained(String options, String expected) {
        int space = options.indexOf(' ');
        assertThat(run("tolerance", layout, options.substring(0, space), options.substring(space + 1)))
                .isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains(expected);
        assertThat(output.toString()).isEmpty();
    }

    @Test
    void oneFileForTwoOutputsIsRefused() {
        Path file = folder.resolve("both");
        assertThat(run("tolerance", layout, "--json", file, "--csv", file)).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains("--json and --csv name the same file");
        assertThat(file).doesNotExist();
    }

    @Test
    void aLayoutWithoutTolerancesIsRefused() throws IOException {
        Files.writeString(layout, Files.readString(layout).replace("{value: -2.6, tolerance: 0.2}", "-2.6"));
        assertThat(run("tolerance", layout)).isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains("the layout states no tolerance, expected the key 'tolerance'");
    }
}
