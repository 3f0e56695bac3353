package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The studies of sources beside the beam: stars, and bodies far away. */
class SourceCommandsTest {
    @TempDir
    Path folder;

    private final StringWriter output = new StringWriter();
    private final StringWriter errors = new StringWriter();

    private int run(Watch watch, String... arguments) {
        return Main.run(
                new Surroundings(OutputWriter.to(output), new PrintWriter(errors), Ink.PLAIN, () -> watch), arguments);
    }

    private int run(String... arguments) {
        return run(Watch.NONE, arguments);
    }

    private String layout() throws Exception {
        Path file = folder.resolve("ridge.yaml");
        Files.writeString(file, RidgeLayout.TEXT);
        return file.toString();
    }

    private Path at(String name) {
        return folder.resolve(name);
    }

    @Test
    void aScanIsToldDrawnAndWritten() throws Exception {
        String layout = layout();
        String[] command = {
            "star-scan",
            layout,
            "--onto",
            "pixels/front",
            "--within",
            "2..4,-3..3",
            "--picture",
            at("a.png").toString(),
            "--csv",
            at("a.csv").toString(),
            "--json",
            at("a.json").toString(),
            "--date",
            "2026-03-31",
            "--overwrite"
        };
        assertThat(run(command)).as(errors.toString()).isEqualTo(ExitCode.DONE);
        assertThat(output.toString())
                .contains("The brightest position", "ridge/-x", "Stars of the layout", "guide", "mm2  holes")
                .doesNotContain("CAUTION");
        assertThat(output.toString().lines()).allMatch(line -> line.length() <= 100);
        assertThat(ImageIO.read(at("a.png").toFile()).getWidth()).isEqualTo(1300);
        assertThat(StudySchema.problems("star-scan.schema.json", at("a.json"))).isEmpty();
        JsonNode json = JsonMapper.builder().build().readTree(Files.readString(at("a.json")));
        assertThat(json.get("avoidance_zone").get("pieces").size()).isPositive();
        assertThat(json.get("stars").get(0).get("share").asDouble()).isGreaterThan(1e-3);
        List<String> lines = Files.readAllLines(at("a.csv"));
        assertThat(lines.get(0)).startsWith("x [mm],y [mm],").endsWith("image on pixels/front");
        int columns = lines.get(0).split(",", -1).length;
        assertThat(lines).allMatch(line -> line.split(",", -1).length == columns);
        assertThat(lines).anyMatch(line -> line.contains(",proved,"));

        byte[] first = Files.readAllBytes(at("a.png"));
        assertThat(run(command)).isEqualTo(ExitCode.DONE);
        assertThat(Files.readAllBytes(at("a.png"))).isEqualTo(first);
    }

    @Test
    void aScanThatIsStoppedKeepsWhatItHas() throws Exception {
        AtomicBoolean started = new AtomicBoolean();
        Watch soon = new Watch() {
            @Override
            public void progress(String step, long done, long most) {
                started.compareAndSet(false, step.startsWith("stars"));
            }

            @Override
            public boolean stop() {
                return started.get();
            }
        };
        assertThat(run(
                        soon,
                        "star-scan",
                        layout(),
                        "--onto",
                        "pixels/front",
                        "--csv",
                        at("a.csv").toString(),
                        "--json",
                        at("a.json").toString()))
                .isEqualTo(ExitCode.UNDECIDED);
        assertThat(StudySchema.problems("star-scan.schema.json", at("a.json"))).isEmpty();
        assertThat(output.toString()).contains("stopped before its end");
        assertThat(Files.readAllLines(at("a.csv"))).hasSizeGreaterThan(2);
    }

    @Test
    void aCurveIsToldDrawnAndWritten() throws Exception {
        assertThat(run(
                        "rejection",
                        layout(),
                        "--onto",
                        "pixels/front",
                        "--source",
                        "moon",
                        "--angles",
                        "20 to 60 step 20",
                        "--azimuth",
                        "180",
                        "--azimuth",
                        "90",
                        "--samples",
                        "1e4",
                        "--chart",
                        at("a.svg").toString(),
                        "--csv",
                        at("a.csv").toString(),
                        "--json",
                        at("a.json").toString()))
                .as(errors.toString())
                .isEqualTo(ExitCode.DONE);
        assertThat(output.toString()).contains("Azimuth 180 deg", "Azimuth 90 deg", "W/m2", "twice reflected");
        assertThat(output.toString().lines()).allMatch(line -> line.length() <= 100);
        assertThat(Files.readString(at("a.svg"))).contains("<svg");
        assertThat(Files.readAllLines(at("a.csv"))).hasSize(1 + 2 * 3 * 3);
        assertThat(StudySchema.problems("rejection.schema.json", at("a.json"))).isEmpty();
        JsonNode json = JsonMapper.builder().build().readTree(Files.readString(at("a.json")));
        assertThat(json.get("points").size()).isEqualTo(6);
        assertThat(json.get("points").get(0).get("orders").get(0).get("value").asDouble())
                .isBetween(0.92, 0.95);
    }

    @Test
    void whatCannotBeUsedIsRefusedBeforeAnyWork() throws Exception {
        String layout = layout();
        for (List<String> wrong : List.of(
                List.of("star-scan", layout, "--within", "3..2,0..1"),
                List.of("star-scan", layout, "--within", "left"),
                List.of("star-scan", layout, "--level", "0"),
                List.of("star-scan", layout, "--finest", "-1"),
                List.of("star-scan", layout, "--onto", "nothing"),
                List.of("star-scan", layout, "--defocus", "400", "--onto", "pixels/front"),
                List.of("star-scan", layout, "--picture", at("a.gif").toString()),
                List.of("rejection", layout, "--angles", "95"),
                List.of("rejection", layout, "--angles", "9 to 3 step 1"),
                List.of("rejection", layout, "--angles", "1.2.3"),
                List.of("rejection", layout, "--source", "sun"),
                List.of("rejection", layout, "--diameter", "0"),
                List.of("rejection", layout, "--chart", at("a.gif").toString()),
                List.of("rejection", layout, "--onto", "pixels/front", "--csv", layout))) {
            errors.getBuffer().setLength(0);
            assertThat(run(wrong.toArray(String[]::new))).as(wrong.toString()).isEqualTo(ExitCode.UNUSABLE);
            assertThat(errors.toString())
                    .as(wrong.toString())
                    .startsWith("darkrim: ")
                    .doesNotContain("Exception");
        }
        assertThat(at("a.gif")).doesNotExist();
    }
}
