package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures, maps and exports in the light of a source beside the beam. */
class SourceLightCommandsTest {
    @TempDir
    Path folder;

    private Run run;

    private String layout() throws Exception {
        return Files.writeString(at("ridge.yaml"), RidgeLayout.TEXT).toString();
    }

    private Path at(String name) {
        return folder.resolve(name);
    }

    private double drawnMean(String light) throws Exception {
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
        run = Run.of(command);
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.DONE);
        Matcher mean = Pattern.compile(
                        "light of moon on pixels/front: mean \\(?([-0-9.]+) \\+- [0-9.]+(?:\\)(e-[0-9]+))?, cells")
                .matcher(run.output());
        assertThat(mean.find()).as(run.output()).isTrue();
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
        Matcher drawn = Pattern.compile("mean (.*), cells").matcher(run.output());
        assertThat(drawn.find()).isTrue();
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
        run = Run.of(command);
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.DONE);
        assertThat(run.output())
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
        run = Run.of(command);
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.DONE);
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
        String none = at("a.vtu").toString();
        run = Run.of("export", layout(), "--source", "sun", "--light", "none", "-o", none);
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("--source says whose light is written");
        run = Run.of("export", layout(), "--source", "sun", "--samples", "10", "-o", none);
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("named 'sun', expected moon", "--samples is about a check of the beam");
        assertThat(at("a.vtu")).doesNotExist();
    }

    @Test
    void aSourceThatIsNotThereIsRefusedWithThoseThatAre() throws Exception {
        String file = at("moon.png").toString();
        run = Run.of("draw", layout(), "-o", file, "--source", "guide");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("no source of kind 'distant' named 'guide', expected moon; nothing was drawn");
        run = Run.of("draw", layout(), "-o", file, "--source", "moon", "--light", "none", "--samples", "10");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .contains("expected --light direct, reflected or total", "--samples are about a check of the beam");
        assertThat(at("moon.png")).doesNotExist();
    }
}
