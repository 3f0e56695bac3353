package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Results;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrawCommandTest {
    @TempDir
    Path folder;

    private Path layout;
    private Path picture;

    @BeforeEach
    void writeLayout() throws IOException {
        layout = folder.resolve("slit.yaml");
        picture = folder.resolve("a.png");
        Files.writeString(
                layout,
                Results.yaml(
                        "",
                        "dark: {surfaces: \"screen/back\", direct: none}",
                        "lit: {surfaces: \"screen/front\", direct: none}"));
    }

    private Run draw(String... options) {
        List<String> words =
                new ArrayList<>(List.of("draw", layout.toString(), "-o", picture.toString(), "--size", "480x320"));
        words.addAll(List.of("--samples", "1e5"));
        words.addAll(List.of(options));
        return Run.of(words.toArray(String[]::new));
    }

    private BufferedImage drawn() throws IOException {
        return ImageIO.read(picture.toFile());
    }

    @Test
    void partsAreDrawn() throws IOException {
        Run run = draw(
                "--light", "total", "--perspective", "--section", "y=0", "--cells-along", "6", "--date", "2026-03-31");
        assertThat(run.errors()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.output())
                .isEqualTo("Drawn into " + picture
                        + ": Direct and once-reflected light. Seen from azimuth -60, elevation 40 deg, in perspective,"
                        + " cut at y = 0 mm." + System.lineSeparator());
        assertThat(drawn().getWidth()).isEqualTo(480);
        assertThat(drawn().getHeight()).isEqualTo(320);
    }

    @Test
    void aRayOfLightIsDrawnToASurface() throws IOException {
        assertThat(draw("--light", "none").code()).isZero();
        int before = blue();
        Run run = draw("--light", "none", "--path", "right/back", "--overwrite");
        assertThat(run.output()).endsWith(" Ray to right/back." + System.lineSeparator());
        assertThat(before).isZero();
        assertThat(blue()).isPositive();
    }

    /** Pixels in the colour of rays. */
    private int blue() throws IOException {
        BufferedImage image = drawn();
        int count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (image.getRGB(x, y) & 0xffffff) == 0x66e0ff ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void aFlatMapIsDrawn() throws IOException {
        Run run = draw("--detector", "screen/front", "--scale", "linear", "--range", "0..2");
        assertThat(run.errors()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        // The slit of 4 mm in front of a screen of 30 mm: about a seventh of it, less the slope of the penumbra.
        assertThat(run.output()).matches("(?s)Drawn into .*: Direct light on screen/front: mean 0\\.1[0-9]+ \\+- .*");
        assertThat(drawn().getWidth()).isEqualTo(480);
    }

    @Test
    void allThatIsWrongWithOptionsIsSaidAtOnce() {
        Run words = draw("--light", "green", "--range", "1", "--angle", "x", "--no-such", "--threads", "0");
        assertThat(words.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(words.errors())
                .contains(
                        "--light: expected direct, reflected, total or none, got 'green'",
                        "--range",
                        "--angle",
                        "'--no-such'",
                        "--threads")
                .doesNotContain("Missing");
        Run names = draw("--hide", "none-such", "--path", "nowhere", "--range", "0..1", "--angle", "20");
        assertThat(names.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(names.errors()).contains("none-such", "--path: ", "--range begins at 0", "--angle says");
        assertThat(picture).doesNotExist();
    }

    /** An option without effect would be taken for one that had some. */
    @Test
    void whatIsForPicturesOfPartsIsRefusedWithOthers() {
        Run map = draw("--detector", "screen/front", "--section", "y=0", "--from", "top", "--hide", "left/**");
        assertThat(map.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(map.errors())
                .contains("--from, --section, --hide are for pictures of parts, expected none with --detector");
        Run sight = draw("--seen-from", "screen/front", "--hide", "left/**", "--magnify", "2");
        assertThat(sight.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(sight.errors()).contains("--magnify is for pictures of parts, expected none with --seen-from");
        assertThat(picture).doesNotExist();
    }

    @Test
    void theMapOfANarrowSurfaceIsStretchedAndSaysSo() throws IOException {
        Files.writeString(layout, Files.readString(layout).replaceFirst("(screen: .*width: )[0-9.]+", "$1" + "0.5"));
        Run run = draw("--detector", "screen/front");
        assertThat(run.errors()).isEmpty();
        // A depth of 10 mm: 20 times the width, of which about a sixth is shown.
        assertThat(run.output()).contains("The surface is narrow: its width is drawn 3 times as large.");
    }

    @Test
    void whatAPointSeesIsDrawn() throws IOException {
        Run run = draw("--seen-from", "screen/front:0.5,0.5", "--angle", "45", "--cell-samples", "16");
        assertThat(run.errors()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(drawn().getHeight()).isEqualTo(320);
    }

    @Test
    void theSameBytesComeFromAnyNumberOfThreads() throws IOException {
        assertThat(draw("--threads", "1", "--light", "reflected").code()).isZero();
        byte[] one = Files.readAllBytes(picture);
        assertThat(draw("--threads", "4", "--light", "reflected", "--overwrite").code())
                .isZero();
        assertThat(Files.readAllBytes(picture)).isEqualTo(one);
    }

    @Test
    void aResultThatWasKeptIsDrawnAsACheckIs() throws IOException {
        Path kept = folder.resolve("slit.json");
        Run check =
                Run.of("check", layout.toString(), "--json", kept.toString(), "--samples", "1e5", "--margins", "none");
        assertThat(check.code()).as(check.errors()).isEqualTo(ExitCode.FAIL);
        String[] look = {"--light", "total", "--path", "right/back"};
        assertThat(draw(look).code()).isZero();
        BufferedImage checked = drawn();
        Run run = Run.of(
                "draw",
                layout.toString(),
                kept.toString(),
                "-o",
                picture.toString(),
                "--overwrite",
                "--size",
                "480x320",
                "--light",
                "total",
                "--path",
                "right/back");
        assertThat(run.code()).as(run.errors()).isZero();
        BufferedImage read = drawn();
        for (int y = 0; y < read.getHeight(); y++) {
            for (int x = 0; x < read.getWidth(); x++) {
                assertThat(read.getRGB(x, y)).isEqualTo(checked.getRGB(x, y));
            }
        }
    }

    @Test
    void aResultOfSomethingElseIsRefused() throws IOException {
        Path kept = folder.resolve("slit.json");
        assertThat(Run.of(
                                "check",
                                layout.toString(),
                                "--json",
                                kept.toString(),
                                "--samples",
                                "1e4",
                                "--margins",
                                "none")
                        .code())
                .isEqualTo(ExitCode.FAIL);
        Files.writeString(layout, Files.readString(layout).replace("4 mm", "5 mm"));
        assertRefused(kept, "this is the result of another layout");
        Files.writeString(kept, "{\"format_version\": 1}");
        assertRefused(kept, "of format version 1");
        Files.writeString(kept, "{");
        assertRefused(kept, "the file is not JSON");
        assertRefused(folder.resolve("none.json"), "the file cannot be read");
        Run seed = draw(kept.toString(), "--seed", "3");
        assertThat(seed.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(seed.errors()).contains("--seed and --samples are for a check, which RESULT replaces");
    }

    private void assertRefused(Path kept, String message) {
        Run run = Run.of("draw", layout.toString(), kept.toString(), "-o", picture.toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("darkrim: " + kept + ": ", message).doesNotContain("Exception");
        assertThat(picture).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--only nothing/**           | --only: 'nothing/**' selects no surface",
                "--about x{                  | --about: pattern 'x{'",
                "--cells /                   | --cells: '/' selects no surface",
                "--only left --hide left     | --only and --hide leave no surface, expected one at least; nothing was drawn.",
                "--section y=900 --from front | --section cuts all parts away that would be drawn, expected a plane that leaves some; nothing was drawn.",
                "--detector screen           | --detector: there is no surface 'screen'",
                "--seen-from lift            | --seen-from: there is no surface 'lift'",
                "--seen-from screen/front:2,0| is no point",
                "--range 0..1                | --range begins at 0, which a logarithmic scale cannot show",
                "--range 2..1                | the lesser first, such as 1e-6..1, got '2..1'",
                "--range 1                   | the lesser first, such as 1e-6..1, got '1'",
                "--size 100x100              | expected width and height in pixels, from 480x320 to 8000x8000",
                "--from above                | --from: expected corner, top, bottom, front, back, left or right",
                "--from 10,95                | such as -60,40, got '10,95'",
                "--section w=3               | such as y=0, got 'w=3'",
                "--section x=1e999           | such as y=0, got 'x=1e999'",
                "--light infrared            | --light: expected direct, reflected, total or none, got 'infrared'",
                "--scale cubic               | --scale: expected log or linear, got 'cubic'",
                "--magnify 0                 | expected a factor from 0.1 to 1000, got '0'",
                "--angle 45                  | --angle says how much a point sees",
                "--angle 91 --seen-from left/front | expected an angle from 0.1 to 90 degrees",
                "--date today                | expected a date as YYYY-MM-DD, such as 2026-03-31, got 'today'",
                "--detector left/front --seen-from left/front | two pictures",
                "--detector left/front --light none | --light none is for pictures of parts",
                "--path lift                 | --path: there is no surface 'lift'",
            })
    void whatCannotBeDrawnIsRefusedBeforeAnyWork(String options, String message) {
        Run run = draw(options.strip().split(" +", -1));
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains(message).doesNotContain("Exception");
        assertThat(run.output()).isEmpty();
        assertThat(picture).doesNotExist();
    }

    @Test
    void aFileThatIsNoPictureIsRefused() {
        Run run =
                Run.of("draw", layout.toString(), "-o", folder.resolve("a.jpg").toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("expected a name that ends in .png");
    }

    @Test
    void nothingIsWrittenForALayoutWithErrors() throws IOException {
        Files.writeString(layout, "title: nothing\nbaem: 3\n");
        Run run = draw();
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("slit.yaml:2:1: ");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).containsExactly(layout);
        }
    }

    @Test
    void workThatIsStoppedSaysSo() {
        Watch stop = StoppingWatch.after(0);
        Run run = Run.watched(() -> stop, "draw", layout.toString(), "-o", picture.toString(), "--size", "480x320");
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.UNDECIDED);
        assertThat(picture).exists();
    }
}
