package darkrim.cli;

import static darkrim.cli.ReportRun.NEW_YEAR;
import static darkrim.cli.ReportRun.report;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import darkrim.Outside;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** {@code darkrim report} as the user sees it: a small layout with a title that would like to be markup. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportCommandTest {
    private static final String TITLE = "<script>alert(1)</script> & \"x\" \u03b1 \u00b1 0.1 \u2014 end";

    private static final String ESCAPED = "&lt;script&gt;alert(1)&lt;/script&gt; &amp; ";

    /** A checker that knows the standard of HTML, by its version in the registry of node. */
    private static final String HTML_CHECKER = "html-validate@9.7.1";

    @TempDir
    private static Path folder;

    private Path layout;

    private Path before;

    private Run first;

    private String html;

    @BeforeAll
    void aReviewOfBothKinds() throws IOException {
        String small = Files.readString(Path.of("src/test/resources/layouts/small.yaml"))
                .replace("One die behind one opening", "'" + TITLE + "'")
                .replace("thickness: 1\n", "thickness: 1\n    finish: dull\n");
        String yaml = small + "  clean: {surfaces: 'detector/die/active', once_reflected: {at_most: 1.0e-9}}\n"
                + "finishes: {dull: {diffuse: 0.3, source: 'measured <b>in 2026</b>'}}\nplacement_error: 0.05\n";
        layout = Files.writeString(folder.resolve("small.yaml"), yaml);
        before = Files.writeString(folder.resolve("before.yaml"), yaml.replace("size: 10.6", "size: 10.5"));
        first = report(
                NEW_YEAR, layout, "-o", at("a.html"), "-o", at("a.pdf"), "--against", before, "--samples", "2e6");
        html = Files.readString(folder.resolve("a.html"));
    }

    private static Path at(String name) {
        return folder.resolve(name);
    }

    private static Document parsed(String page) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
    }

    /** What stands before the first chapter. */
    private static String firstPage(String page) {
        return page.substring(page.indexOf("<body>"), page.indexOf("<section"));
    }

    @Test
    void theExitCodeIsThatOfTheCheck() {
        assertThat(first.code()).as(first.errors()).isEqualTo(ExitCode.FAIL);
        assertThat(first.output()).startsWith("FAIL: the review is in ").contains("a.html and ");
    }

    @Test
    void theFirstPageHasTheVerdictAndEveryRequirement() {
        assertThat(firstPage(html))
                .contains("2026-01-01")
                .contains("\u25b2 FAIL</span> 1 of 2 requirements does not hold: clean.")
                .contains(">edges-dark</td>")
                .contains("\u25cf PASS")
                .contains("direct none")
                .contains("reflected &lt;= <span class=\"whole\">1e-9</span>");
    }

    @Test
    void textOfTheLayoutIsTextAndNothingElse() throws Exception {
        assertThat(html)
                .contains("<h1>" + ESCAPED)
                .contains("measured &lt;b&gt;in 2026&lt;/<wbr/>b&gt;")
                .doesNotContain("<script")
                .doesNotContain("<b>in");
        Element heading = (Element) parsed(html).getElementsByTagName("h1").item(0);
        assertThat(heading.getTextContent()).isEqualTo(TITLE);
    }

    @Test
    void thePageRefersToNothingOutsideItself() throws Exception {
        NodeList all = parsed(html).getElementsByTagName("*");
        Set<String> ids = new HashSet<>();
        List<Element> elements = IntStream.range(0, all.getLength())
                .mapToObj(i -> (Element) all.item(i))
                .toList();
        for (Element element : elements) {
            if (element.hasAttribute("id")) {
                assertThat(ids.add(element.getAttribute("id"))).isTrue();
            }
        }
        for (Element element : elements) {
            for (String name : List.of("src", "href")) {
                String target = element.getAttribute(name);
                assertThat(target.isEmpty() || target.startsWith("data:") || ids.contains(target.substring(1)))
                        .as(target)
                        .isTrue();
            }
            if (element.getTagName().equals("img")) {
                assertThat(element.getAttribute("alt")).isNotBlank();
            }
        }
        assertThat(elements.stream()
                        .filter(each -> each.getTagName().equals("img"))
                        .count())
                .as("two sections, the parts, two maps and at least a path")
                .isGreaterThanOrEqualTo(6);
        assertThat(html).doesNotContain("@import").doesNotContain("url(");
    }

    @Test
    void everyInputIsToldByTheHashOfItsBytes() throws Exception {
        for (Path file : List.of(layout, before)) {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
            assertThat(html).contains(HexFormat.of().formatHex(digest));
        }
        assertThat(html).contains("--seed 1 --samples 2000000 -o review.html");
    }

    @Test
    void whatDiffersFromBeforeIsTold() {
        assertThat(html)
                .contains("Comparison with ")
                .contains("Surfaces that differ")
                .contains("NOT WORSE");
    }

    @Test
    void theSameLayoutSeedAndDateMakeTheSameBytes() throws IOException {
        Run again = report(
                NEW_YEAR, layout, "-o", at("again.html"), "--against", before, "--samples", "2e6", "--threads", "1");
        assertThat(again.code()).isEqualTo(first.code());
        assertThat(Files.readString(at("again.html"))).isEqualTo(html);
    }

    @Test
    void everyPageOfTheDocumentCanBeReadAndItsSheetsAreA3() throws IOException {
        try (PDDocument document = Loader.loadPDF(at("a.pdf").toFile())) {
            PDFTextStripper text = new PDFTextStripper();
            text.setEndPage(1);
            assertThat(text.getText(document).replaceAll("\\s+", " "))
                    .contains(TITLE)
                    .contains("FAIL 1 of 2 requirements")
                    .contains("edges-dark")
                    .contains("clean");
            text.setEndPage(Integer.MAX_VALUE);
            assertThat(text.getText(document)).contains("How to repeat it").doesNotContain("#");
            PDFRenderer renderer = new PDFRenderer(document);
            int sheets = 0;
            for (int i = 0; i < document.getNumberOfPages(); i++) {
                boolean sheet = document.getPage(i).getMediaBox().getWidth() > 1000;
                sheets += sheet ? 1 : 0;
                assertThat(inked(renderer.renderImageWithDPI(i, 36)))
                        .as("page %d", i + 1)
                        .isGreaterThan(0.003);
            }
            assertThat(sheets).isEqualTo(2);
        }
    }

    @Test
    void theSameDateMakesADocumentOfTheSameBytesAndAllItsLettersAreInIt() throws IOException {
        Run again = report(
                NEW_YEAR, layout, "-o", at("again.pdf"), "--against", before, "--samples", "2e6", "--threads", "1");
        assertThat(again.code()).isEqualTo(first.code());
        assertThat(at("again.pdf")).hasSameBinaryContentAs(at("a.pdf"));
        try (PDDocument document = Loader.loadPDF(at("a.pdf").toFile())) {
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .isEqualTo("2026-01-01T00:00:00Z");
            Set<String> fonts = new HashSet<>();
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                    fonts.add(font.getName());
                }
            }
            assertThat(fonts).isNotEmpty();
        }
    }

    @Test
    void lettersThatTheFontLacksAreNamed() throws IOException {
        Path written =
                Files.writeString(at("night.yaml"), Files.readString(layout).replace("alert(1)", "\u591c\u5149\u591c"));
        Run run = report(NEW_YEAR, written, "-o", at("night.pdf"), "--samples", "1e4");
        assertThat(run.errors())
                .contains(
                        "the PDF shows # or ? in place of 2 letters that its font lacks: \u591c (U+591C), \u5149 (U+5149)");
        assertThat(first.errors()).doesNotContain("in place of");
    }

    /** Share of pixels that are not white. */
    private static double inked(BufferedImage image) {
        long dark = IntStream.range(0, image.getHeight())
                .mapToLong(y -> IntStream.range(0, image.getWidth())
                        .filter(x -> (image.getRGB(x, y) & 0xff) < 0xc0)
                        .count())
                .sum();
        return (double) dark / ((long) image.getWidth() * image.getHeight());
    }

    @Test
    void aCheckerOfHtmlFindsNoFault() throws Exception {
        Path modules = Path.of("target/html-checker");
        assumeThat(Outside.has("npm", "--version"))
                .as("npm, which fetches the checker, is not installed")
                .isTrue();
        assumeThat(Files.isDirectory(modules.resolve("node_modules"))
                        || Outside.has(
                                "npm",
                                "install",
                                "--prefix",
                                modules.toString(),
                                "--no-audit",
                                "--no-fund",
                                HTML_CHECKER))
                .as("the checker of HTML could not be fetched")
                .isTrue();
        Path rules = Files.writeString(
                at(".htmlvalidate.json"),
                "{\"extends\":[\"html-validate:standard\"],\"rules\":{\"void-style\":\"off\"}}");
        Outside.Said said = Outside.run(List.of(
                modules.resolve("node_modules/.bin/html-validate").toString(),
                "--config",
                rules.toString(),
                at("a.html").toString()));
        assertThat(said.code()).as(said.text()).isZero();
    }
}
