package darkrim.present.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.section.CutBody;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.SectionPlane;
import darkrim.verdict.Watch;
import java.awt.image.BufferedImage;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SectionSheetTest {
    private static final SectionSheet.Imprint IMPRINT = new SectionSheet.Imprint("test", 1, Optional.empty());
    private static final Effort PROOFS = new Effort(2, Optional.empty(), Optional.of(1L));

    /** Checks of shipped layouts, each done once: sections only read them. */
    private static final Map<String, CheckResult> CHECKED = new HashMap<>();

    private static LayoutSection section;

    @BeforeAll
    static void draw() throws Exception {
        section = of("nightglow-b", SectionPlane.square(0, 20.1));
    }

    private static LayoutSection of(String layout, SectionPlane plane) throws Exception {
        CheckResult result = CHECKED.get(layout);
        if (result == null) {
            result = Check.of(Path.of("geometries/" + layout + ".yaml"), PROOFS, Watch.NONE);
            CHECKED.put(layout, result);
        }
        return LayoutSection.of(result, plane);
    }

    private static List<Mark.Words> words(List<Mark> marks) {
        List<Mark.Words> found = new ArrayList<>();
        for (Mark mark : marks) {
            if (mark instanceof Mark.Words words) {
                found.add(words);
            } else if (mark instanceof Mark.Clipped clipped) {
                found.addAll(words(clipped.marks()));
            }
        }
        return found;
    }

    @ParameterizedTest
    @CsvSource({
        "nightglow-b, 0, 20.1",
        "nightglow-a, 1, -20.1",
        "dusk-tube, 0, 0",
        "aurora-tube, 1, 0.1",
        "nightglow-b, 2, 2",
        "part-window, 0, 0"
    })
    void wordsStandInsideTheSheetAndOnNoOthers(String layout, int axis, double place) throws Exception {
        List<Mark.Words> words = words(SectionSheet.of(of(layout, SectionPlane.square(axis, place)), IMPRINT)
                .marks());
        assertThat(words).hasSizeGreaterThan(10);
        Box sheet = new Box(10, 10, 400, 277);
        for (int i = 0; i < words.size(); i++) {
            Box box = words.get(i).box();
            assertThat(sheet.holds(box)).as(words.get(i).text()).isTrue();
            for (Mark.Words other : words.subList(0, i)) {
                assertThat(box.overlaps(other.box()))
                        .as(words.get(i) + " on " + other)
                        .isFalse();
            }
        }
    }

    @Test
    void theSvgIsDrawnByAnotherProgramAndIsTrueToScale() throws Exception {
        String svg = SvgSheet.of(SectionSheet.of(section, IMPRINT), "a <b> & \"c\"");
        assertThat(svg)
                .contains("width=\"420mm\"", "viewBox=\"0 0 420 297\"", "a &lt;b&gt; &amp;")
                .doesNotContain("<b>");
        Picture transcoder = new Picture();
        transcoder.addTranscodingHint(ImageTranscoder.KEY_WIDTH, 840f);
        transcoder.transcode(new TranscoderInput(new StringReader(svg)), new TranscoderOutput());
        BufferedImage picture = transcoder.picture;
        assertThat(picture.getWidth()).isEqualTo(840);
        assertThat(colours(picture)).isGreaterThan(20);
    }

    /** Keeps what is drawn. */
    private static final class Picture extends ImageTranscoder {
        private BufferedImage picture;

        @Override
        public BufferedImage createImage(int width, int height) {
            return new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        }

        @Override
        public void writeImage(BufferedImage image, TranscoderOutput output) {
            picture = image;
        }
    }

    private static long colours(BufferedImage picture) {
        int[] all = picture.getRGB(0, 0, picture.getWidth(), picture.getHeight(), null, 0, picture.getWidth());
        return java.util.Arrays.stream(all).distinct().count();
    }

    @Test
    void thePdfIsASheetOfA3WithItsWordsAndTheSameBytesEachTime() throws Exception {
        byte[] pdf = PdfSheet.of(SectionSheet.of(section, IMPRINT), "title");
        assertThat(PdfSheet.of(SectionSheet.of(section, IMPRINT), "title")).isEqualTo(pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getPage(0).getMediaBox().getWidth() * 25.4 / 72).isCloseTo(420, within(1e-3));
            assertThat(document.getPage(0).getMediaBox().getHeight() * 25.4 / 72)
                    .isCloseTo(297, within(1e-3));
            assertThat(new PDFTextStripper().getText(document))
                    .contains(
                            "Night-glow camera, focal-plane baffle", "Revision B", "Section x = 20.1 mm", "light ends");
            assertThat(colours(new PDFRenderer(document).renderImageWithDPI(0, 60)))
                    .isGreaterThan(20);
        }
    }

    /** The lid is 130 mm wide: at 2:1 it takes 260 mm of paper. */
    @Test
    void thePartsAreDrawnAtTheScaleThatIsWritten() {
        List<Mark> marks = SectionSheet.of(section, IMPRINT).marks();
        double widest = marks.stream()
                .filter(Mark.Clipped.class::isInstance)
                .flatMap(mark -> ((Mark.Clipped) mark).marks().stream())
                .filter(Mark.Area.class::isInstance)
                .mapToDouble(mark -> width((Mark.Area) mark))
                .filter(width -> width < 300)
                .max()
                .orElseThrow();
        assertThat(words(marks)).anyMatch(words -> words.text().startsWith("Parts at 2:1"));
        double right = section.bounds().orElseThrow()[2];
        assertThat(right).isCloseTo(65, within(1e-9));
        assertThat(widest).isCloseTo(2 * 130, within(1e-9));
    }

    private static double width(Mark.Area area) {
        double[] x = area.rings().stream()
                .flatMap(List::stream)
                .mapToDouble(Vector2D::getX)
                .sorted()
                .toArray();
        return x[x.length - 1] - x[0];
    }

    @Test
    void wordsOfALayoutCannotActInAnyFormat() throws Exception {
        String text = """
                title: "%%c <script> \\u00e9 ^J {\\\\P"
                units: {length: mm}
                finishes: {black: {diffuse: 0.04}}
                beam: {pupil: {shape: disc, diameter: 40, distance: 300}}
                parts:
                  block: {kind: block, width: 10, depth: 6, height: 4, finish: black}
                """;
        CheckResult result = Check.of(
                LayoutReader.read("odd.yaml", text.getBytes(StandardCharsets.UTF_8))
                        .layout()
                        .orElseThrow(),
                new Findings(),
                PROOFS,
                Watch.NONE);
        LayoutSection odd = LayoutSection.of(result, SectionPlane.square(0, 0));
        String svg = SvgSheet.of(SectionSheet.of(odd, IMPRINT), odd.layout().title());
        assertThat(svg).contains("&lt;script").doesNotContain("<script");
        String dxf = DxfSection.of(odd, IMPRINT);
        assertThat(dxf).contains("% %c <script> ? ^ J").matches("[\\x20-\\x7e\\n]*");
        assertThat(PdfSheet.of(SectionSheet.of(odd, IMPRINT), odd.layout().title()))
                .isNotEmpty();
    }

    @Test
    void layersOfPartsWithTheSameBeginningAreTold() {
        String longName = "PART-ABCDEFGHIJKLMNOPQRSTUVWXYZABCDEF";
        String first = DxfText.layer(longName, List.of());
        assertThat(first).hasSize(31);
        assertThat(DxfText.layer(longName + "G", List.of(first)))
                .hasSizeLessThanOrEqualTo(31)
                .isNotEqualTo(first);
        assertThat(DxfText.layer("PART-\u00e9 x", List.of())).isEqualTo("PART-__X");
    }

    @Test
    void anotherReaderFindsTheCutAreaOfEachPartInTheDxf() throws Exception {
        Path file = Files.createTempFile("darkrim", ".dxf");
        try {
            Files.writeString(file, DxfSection.of(section, IMPRINT));
            String script = """
                import sys, ezdxf
                d = ezdxf.readfile(sys.argv[1])
                assert not d.audit().errors
                s = {}
                for p in d.modelspace().query('POLYLINE'):
                  v = [(q.dxf.location.x, q.dxf.location.y) for q in p.vertices]
                  a = sum(v[i-1][0]*v[i][1]-v[i][0]*v[i-1][1] for i in range(len(v)))/2
                  assert p.is_closed
                  s[p.dxf.layer] = s.get(p.dxf.layer, 0) + a
                for l in sorted(s): print(l, repr(s[l]))
                print('RAYS', len(d.modelspace().query('LINE[layer=="RAYS-LIGHT-ENDS"]')))
                """;
            String[] lines =
                    darkrim.Outside.python("ezdxf", script, file.toString()).split("\n", -1);
            for (String part : List.of("lid", "mosaic", "walls")) {
                double area = section.bodies().stream()
                        .filter(body -> body.part().equals(part))
                        .mapToDouble(CutBody::area)
                        .sum();
                String layer = "PART-" + part.toUpperCase(java.util.Locale.ROOT) + " ";
                double read = java.util.Arrays.stream(lines)
                        .filter(line -> line.startsWith(layer))
                        .mapToDouble(line -> Double.parseDouble(line.substring(layer.length())))
                        .findFirst()
                        .orElseThrow();
                assertThat(read).isCloseTo(area, within(1e-9 * area));
            }
            assertThat(lines).contains("RAYS 4");
        } finally {
            Files.delete(file);
        }
    }
}
