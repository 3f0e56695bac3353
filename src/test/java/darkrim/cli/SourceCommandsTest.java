package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The commands about sources beside the beam. */
class SourceCommandsTest {
    private static final String RIDGE = """
            title: Ridge
            finishes: {white: {diffuse: 0.5, source: "invented"}}
            beam: {pupil: {shape: disc, diameter: 45, distance: 320}}
            sources:
              guide: {kind: star, at: [3.256, 0.2], flux: 1e-9}
              moon: {kind: distant, off_axis: 40, azimuth: 180, diameter: 0.53, irradiance: 1e-3}
            parts:
              pixels: {kind: rectangle, width: 6, depth: 6}
              ridge: {kind: block, width: 0.1, depth: 5, height: 0.15, at: [3.3, 0, 0], finish: white}
            requirements: {dark: {surfaces: "pixels/back", direct: none}}
            """;

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
        Files.writeString(file, RIDGE);
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

    private double drawnMean(String light) throws Exception {
        output.getBuffer().setLength(0);
        String[] command = {
            "draw",
            layout(),
            "-o",
            at("moon.png").toString(),
            "--overwrite",
            "--detector",
            "pixels/front",
            "--source",
            "moon",
            "--light",
            light,
            "--size",
            "640x400",
            "--threads",
            "1"
        };
        assertThat(run(command)).as(errors.toString()).isEqualTo(ExitCode.DONE);
        Matcher mean = Pattern.compile(
                        "light of moon on pixels/front: mean \\(?([-0-9.]+) \\+- [0-9.]+(?:\\)(e-[0-9]+))?, cells")
                .matcher(output.toString());
        assertThat(mean.find()).as(output.toString()).isTrue();
        return Double.parseDouble(mean.group(1) + (mean.group(2) == null ? "" : mean.group(2)));
    }

    /**
     * The pixels lie flat under a body at 40 deg: cos 40 deg of its irradiance. The face of the ridge gets sin 40 deg and sends half of it; the
     * share of that on the strip of the pixels follows from Hottel's crossed strings, for a ridge without ends: of this one, 12 times as long as it is away, a little is lost.
     */
    @Test
    void aPictureShowsTheLightOfASourceRelativeToItsIrradiance() throws Exception {
        assertThat(drawnMean("direct")).isCloseTo(StrictMath.cos(Math.toRadians(40)), within(1e-3));
        double height = 0.15;
        double near = 0.25;
        double far = 6.25;
        double share = (Math.hypot(near, height) + far - Math.hypot(far, height) - near) / (2 * height);
        double endless = 0.5 * StrictMath.sin(Math.toRadians(40)) * share * height * 5 / 36;
        assertThat(drawnMean("reflected")).isBetween(0.85 * endless, 1.02 * endless);
    }

    /** The map of a table is, number for number, that of the picture: as many samples of as many cells. */
    @Test
    void mapsOfASourceAreThoseOfThePicture() throws Exception {
        drawnMean("direct");
        Matcher drawn = Pattern.compile("mean (.*), cells").matcher(output.toString());
        assertThat(drawn.find()).isTrue();
        output.getBuffer().setLength(0);
        String[] command = {
            "maps",
            layout(),
            "--onto",
            "pixels/front",
            "--source",
            "moon",
            "--light",
            "direct",
            "--cells-along",
            "24",
            "--cell-samples",
            "512",
            "-o",
            at("moon.csv").toString()
        };
        assertThat(run(command)).as(errors.toString()).isEqualTo(ExitCode.DONE);
        assertThat(output.toString())
                .contains(drawn.group(1), "Relative irradiance 1 is what moon gives a plane that faces it");
    }

    /** What faces the body gets all of its light, what lies under it at 40 deg the cosine; no verdict comes with it. */
    @Test
    void aSceneIsExportedInTheLightOfASource() throws Exception {
        String[] command = {
            "export",
            layout(),
            "--source",
            "moon",
            "--only",
            "pixels/**",
            "--only",
            "ridge/-x",
            "-o",
            at("moon.csv").toString(),
            "-o",
            at("moon.glb").toString()
        };
        assertThat(run(command)).as(errors.toString()).isEqualTo(ExitCode.DONE);
        double[] expected = {StrictMath.cos(Math.toRadians(40)), StrictMath.sin(Math.toRadians(40))};
        String[] names = {"pixels/front", "ridge/-x"};
        for (int i = 0; i < names.length; i++) {
            String name = names[i];
            CSVRecord line = MapsCommandTest.records(at("moon.csv")).stream()
                    .filter(each -> each.get("surface").equals(name))
                    .findFirst()
                    .orElseThrow();
            assertThat(Double.parseDouble(line.get("direct light"))).isCloseTo(expected[i], within(2e-3));
            assertThat(line.get("verdict on light")).isEmpty();
        }
        assertThat(run(
                        "export",
                        layout(),
                        "--source",
                        "sun",
                        "--samples",
                        "10",
                        "-o",
                        at("a.vtu").toString()))
                .isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString()).contains("named 'sun', expected moon", "--samples is about a check of the beam");
        assertThat(at("a.vtu")).doesNotExist();
    }

    @Test
    void aSourceThatIsNotThereIsRefusedWithThoseThatAre() throws Exception {
        String file = at("moon.png").toString();
        assertThat(run("draw", layout(), "-o", file, "--source", "guide")).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run("draw", layout(), "-o", file, "--source", "moon", "--light", "none", "--samples", "10"))
                .isEqualTo(ExitCode.UNUSABLE);
        assertThat(errors.toString())
                .contains(
                        "no source of kind 'distant' named 'guide', expected moon; nothing was drawn",
                        "expected --light direct, reflected or total",
                        "--samples are about a check of the beam");
        assertThat(at("moon.png")).doesNotExist();
    }
}
