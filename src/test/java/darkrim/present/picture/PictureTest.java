package darkrim.present.picture;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.scene.Scene;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Verdict;
import java.awt.Font;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PictureTest {
    private static final PictureText TEXT = new PictureText(
            "A layout with a title that is rather long for a small picture, revision B",
            "Direct light. Seen from azimuth -60, elevation 40 deg.",
            List.of(
                    "A foot that says how the colours are to be read, and goes on for longer than a line of a small picture.",
                    "file"));

    private static BufferedImage image(byte[] png) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    @Test
    void aPictureHasItsSizeAndItsColours() throws IOException {
        Scene scene = PictureScenes.block();
        Subject subject = PictureScenes.subject(
                scene, surface -> 0.01 * (surface + 1), Map.of(5, Verdict.FAIL, 0, Verdict.PASS), Optional.empty());
        byte[] png = new ScenePicture(subject, TEXT)
                .png(new View(ViewDirection.CORNER, false, subject.corners(), 1), 480, 320, 2);
        BufferedImage image = image(png);
        assertThat(image.getWidth()).isEqualTo(480);
        assertThat(image.getHeight()).isEqualTo(320);
        // The three faces that are seen from the corner, the line and letter of a failure.
        for (String face : List.of("block/+x", "block/-y", "block/+z")) {
            int number = scene.surface(face).orElseThrow().index();
            assertThat(pixels(image, PictureScenes.SCALE.argb(0.01 * (number + 1))))
                    .as(face)
                    .isGreaterThan(500);
        }
        assertThat(pixels(image, VerdictMark.of(Verdict.FAIL).argb())).isGreaterThan(30);
    }

    /** A temporary file is closed by the platform when the program is asked to stop, while pictures are still drawn. */
    @Test
    void noTemporaryFileIsWritten(@TempDir Path folder) throws IOException {
        ImageIO.setCacheDirectory(folder.toFile());
        byte[] png;
        try {
            Files.delete(folder);
            png = new Sheet(40, 30).png();
        } finally {
            Files.createDirectories(folder);
            ImageIO.setCacheDirectory(null);
        }
        assertThat(image(png).getWidth()).isEqualTo(40);
    }

    @Test
    void theVerdictOfAFaceThatIsNotSeenIsNotDrawn() throws IOException {
        Scene scene = PictureScenes.block();
        int below = scene.surface("block/-z").orElseThrow().index();
        int top = scene.surface("block/+z").orElseThrow().index();
        for (int face : new int[] {below, top}) {
            Subject subject =
                    PictureScenes.subject(scene, surface -> 1, Map.of(face, Verdict.UNDECIDED), Optional.empty());
            Camera camera = Camera.parallel(ViewDirection.TOP, subject.corners(), 1.5);
            RayImage image = RayImage.of(subject, camera, 150, 100, 3, 2);
            BufferedImage paper = new BufferedImage(150, 100, BufferedImage.TYPE_INT_RGB);
            SeenSurfaces seen = new SeenSurfaces(image, 6);
            new VerdictOutlines(subject, camera, seen, paper.createGraphics(), 1).paint();
            new VerdictLetters(paper.createGraphics(), 16, 1).paint(subject.verdicts(), seen);
            assertThat(pixels(paper, VerdictMark.of(Verdict.UNDECIDED).argb()) > 0)
                    .isEqualTo(face == top);
        }
    }

    @Test
    void theSameBytesComeFromAnyNumberOfThreads() {
        Subject subject = PictureScenes.subject(
                PictureScenes.block(), surface -> 0.1, Map.of(5, Verdict.PASS), Optional.of(new Section(0, 1, true)));
        View view = new View(ViewDirection.CORNER, true, subject.corners(), 1);
        assertThat(new ScenePicture(subject, TEXT).png(view, 500, 400, 4))
                .isEqualTo(new ScenePicture(subject, TEXT).png(view, 500, 400, 1));
    }

    @Test
    void aMapHasExactlyTheColoursOfItsCells() throws IOException {
        Scene scene = PictureScenes.floor();
        SurfaceCells cells = SurfaceCells.of(scene, scene.surfaces().get(0), 4);
        SurfaceMap map = PictureScenes.known(cells, cell -> 0.002 * (cell + 1));
        MapPicture picture = new MapPicture(map, LightKind.ONCE_REFLECTED, PictureScenes.SCALE, 1);
        BufferedImage image = image(picture.png(TEXT, 800, 500));
        int[] counts = new int[8];
        for (int cell = 0; cell < 8; cell++) {
            counts[cell] = pixels(image, PictureScenes.SCALE.argb(0.002 * (cell + 1)));
        }
        // Equal cells take equal areas, but for the frame and a row or column of rounding.
        for (int count : counts) {
            assertThat(count).isGreaterThan(2000).isBetween(counts[0] * 9 / 10, counts[0] * 11 / 10);
        }
        assertThat(picture.summary()).isEqualTo("mean 0.00900 +- 0, cells 0.002 to 0.016");
    }

    @Test
    void theBorderOfAFaceIsItsOutline() {
        Scene scene = PictureScenes.floor();
        List<Vector3D[]> border = VerdictOutlines.border(scene, scene.surfaces().get(0));
        assertThat(border).hasSize(4);
        assertThat(border.stream()
                        .mapToDouble(side -> side[0].distance(side[1]))
                        .sum())
                .isEqualTo(60);
    }

    @Test
    void linesFitTheirWidthAndNothingIsLost() {
        Sheet sheet = new Sheet(480, 320);
        Font font = Sheet.font(Font.PLAIN, 11);
        String text = "some words and_one_that_is_far_too_long_for_a_line_of_this_width and more";
        List<String> lines = sheet.lines(text, font, 120);
        assertThat(lines)
                .allSatisfy(
                        line -> assertThat(sheet.graphics().getFontMetrics(font).stringWidth(line))
                                .isLessThanOrEqualTo(120));
        assertThat(String.join("", lines).replace(" ", "")).isEqualTo(text.replace(" ", ""));
    }

    @Test
    void titleAndFootLeaveRoomForThePictureAndKeepOffIt() {
        for (int[] size : new int[][] {{480, 320}, {800, 500}, {1600, 1000}, {3840, 2160}}) {
            Rectangle room = new Sheet(size[0], size[1]).write(TEXT, 20, 100);
            assertThat(room.height).isGreaterThan(size[1] / 2);
            assertThat(room.width).isGreaterThan(size[0] / 2);
            assertThat(room.y).isGreaterThan(30);
        }
    }

    private static int pixels(BufferedImage image, int argb) {
        int count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (image.getRGB(x, y) | 0xff000000) == argb ? 1 : 0;
            }
        }
        return count;
    }
}
