package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.study.Effort;
import darkrim.study.PointSight;
import darkrim.verdict.Watch;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class PupilDrawingTest {
    private static final Effort FEW = new Effort(2, Optional.empty(), Optional.of(10_000L));
    private static final Pattern STEP = Pattern.compile("([MLAZ])([^MLAZ]*)");

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "geometries/nightglow-a.yaml, 'mosaic/die[1,1]/edge/+x', 0.5, 0.5",
        "geometries/nightglow-a.yaml, 'mosaic/die[1,1]/active', 0.5, 0.5",
        "geometries/nightglow-b.yaml, 'mosaic/die[1,1]/rim/+x', 0.5, 0.5",
        "geometries/nightglow-b.yaml, 'mosaic/die[1,1]/rim/+x', 0.2, 0.8",
        "geometries/part-disc.yaml, behind/front, 0.05, 0.4",
        "geometries/part-disc.yaml, behind/front, 0.31, 0.4",
        "geometries/part-rectangle.yaml, screen/front, 0.45, 0.9",
        "polygon, screen/front, 0.6, 0.5",
        "polygon, screen/front, 0.9, 0.1",
    })
    void theFilledAreaIsTheExactShareOfTheOutline(String file, String surface, double u, double v) throws Exception {
        PointSight sight = PointSight.of(
                file.equals("polygon") ? polygon("plain") : Path.of(file), surface, u, v, FEW, Watch.NONE);
        Document drawing = parse(new PupilDrawing("test").of(sight));
        double whole = area(path(drawing, "pupil"));
        assertThat(Math.abs(whole))
                .isCloseTo(sight.scene().beam().pupil().outline().area(), within(1e-6 * Math.abs(whole)));
        double exact = sight.view().areaFraction();
        String seen = path(drawing, "seen");
        double got = seen.isEmpty() ? 0 : area(seen) / Math.abs(whole);
        // Nothing in it is approximated but by rounding.
        assertThat(got).isCloseTo(exact, within(1e-6 * exact));
    }

    @Test
    void whatIsSeenAndHiddenIsToldApartWithoutColour() throws Exception {
        PointSight sight = PointSight.of(
                Path.of("geometries/nightglow-a.yaml"), "mosaic/die[1,1]/edge/+x", 0.5, 0.5, FEW, Watch.NONE);
        Document drawing = parse(new PupilDrawing("test").of(sight));
        assertThat(element(drawing, "pupil").getAttribute("fill")).isEqualTo("url(#dots)");
        assertThat(element(drawing, "lit").getAttribute("fill")).isEqualTo("url(#hatch)");
        assertThat(element(drawing, "seen").getAttribute("fill")).isEqualTo("#f5c542");
        assertThat(element(drawing, "hatch").getTagName()).isEqualTo("pattern");
        assertThat(drawing.getDocumentElement().getTextContent())
                .contains(
                        "Night-glow camera, focal-plane baffle, revision A",
                        "mosaic/die[1,1]/edge/+x at 0.5,0.5",
                        "point (-1.068, -20.1, -0.075) mm, facing +x",
                        "sees 42.4 % of the pupil",
                        "hidden by parts: 9.94 %",
                        "behind the surface: 47.6 %",
                        "lid/opening[1,1]/wall/+x",
                        "x in the plane of the pupil, mm");
    }

    @Test
    void markupInALayoutStaysText() throws Exception {
        String hostile = "</text><script>alert(1)</script> & ]]> \\\" '";
        PointSight sight = PointSight.of(polygon(hostile), "screen/front", 0.6, 0.5, FEW, Watch.NONE);
        String text = new PupilDrawing("test").of(sight);
        Document drawing = parse(text);
        assertThat(drawing.getElementsByTagName("script").getLength()).isZero();
        assertThat(drawing.getDocumentElement().getTextContent()).contains("</text><script>alert(1)");
        assertThat(text).doesNotContain("<script", "href", "<!DOCTYPE", "<image", "<style");
        assertThat(text.replace("http://www.w3.org/2000/svg", "")).doesNotContain("//");
    }

    @Test
    void lettersThatActOnAReaderBecomeQuestionMarks() {
        // A character that XML forbids, one that turns the direction of writing, half of a pair.
        String text =
                new Svg(10, 10).words("text", "a\u0001b\u202ec\ud800d\uffff").end();
        assertThat(text).contains("<text>a?b?c?d?</text>");
    }

    @ParameterizedTest
    @CsvSource({"0.3, 0.5", "0.5, 0.5", "0.51, 1", "3.1, 5", "7, 10", "0.0011, 0.002"})
    void ticksStandAtRoundNumbers(double least, double step) {
        assertThat(PlotAxes.step(least)).isCloseTo(step, within(1e-15));
    }

    private Path polygon(String title) throws Exception {
        return Files.writeString(folder.resolve("layout.yaml"), """
                title: "TITLE"
                revision: R&D
                beam:
                  pupil:
                    shape: polygon
                    corners: [[-12, -5], [14, -9], [16, 8], [2, 3], [-6, 12]]
                    distance: 200
                    tilt: [10, 5]
                parts:
                  screen: {kind: rectangle, width: 30, depth: 10, turn: {about: z, by: 30}}
                  flag: {kind: disc, diameter: 6, at: [2, 1, 60]}
                  right: {kind: rectangle, width: 20, depth: 20, at: [13, 0, 8]}
                requirements:
                  dim: {surfaces: "screen/front", direct: {at_most: 1, per: surface}}
                """.replace("TITLE", title));
    }

    private static Document parse(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static Element element(Document drawing, String id) {
        NodeList all = drawing.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            if (((Element) all.item(i)).getAttribute("id").equals(id)) {
                return (Element) all.item(i);
            }
        }
        return drawing.createElement("absent");
    }

    private static String path(Document drawing, String id) {
        return element(drawing, id).getAttribute("d");
    }

    /** Signed area of path data: shoelace for the chords, a segment of a circle for each arc. */
    private static double area(String data) {
        double sum = 0;
        double startX = 0;
        double startY = 0;
        double x = 0;
        double y = 0;
        Matcher steps = STEP.matcher(data);
        while (steps.find()) {
            String[] numbers = steps.group(2).strip().split("[ ,]+", -1);
            int last = numbers.length - 1;
            boolean closes = steps.group(1).equals("Z");
            double toX = closes ? startX : Double.parseDouble(numbers[last - 1]);
            double toY = closes ? startY : Double.parseDouble(numbers[last]);
            if (steps.group(1).equals("M")) {
                startX = toX;
                startY = toY;
            } else {
                sum += (x * toY - toX * y) / 2;
            }
            if (steps.group(1).equals("A")) {
                assertThat(numbers[3]).as("the smaller arc").isEqualTo("0");
                double radius = Double.parseDouble(numbers[0]);
                double turn = 2 * Math.asin(Math.min(1, Math.hypot(toX - x, toY - y) / (2 * radius)));
                double segment = radius * radius * (turn - Math.sin(turn)) / 2;
                sum += numbers[4].equals("1") ? segment : -segment;
            }
            x = toX;
            y = toY;
        }
        return sum;
    }
}
