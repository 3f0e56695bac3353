package darkrim.present.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Base64;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** How a review is broken into pages. */
class ReviewPdfTest {
    private static final String UNDER = "Section x";

    /** Small pictures that come to the foot of a page once left an empty page before the first sheet. */
    @Test
    void noPageIsEmptyWhereverPicturesEndBeforeTheSheets() throws IOException {
        for (int lines = 0; lines < 40; lines += 3) {
            try (PDDocument document = Loader.loadPDF(ReviewPdf.pages(page(lines)))) {
                int sheets = 0;
                for (int i = 0; i < document.getNumberOfPages(); i++) {
                    boolean sheet = document.getPage(i).getMediaBox().getWidth() > 1000;
                    sheets += sheet ? 1 : 0;
                    assertThat(sheet || words(document, i + 1) > 0)
                            .as("page " + (i + 1) + " after " + lines + " lines has words")
                            .isTrue();
                }
                assertThat(sheets).isEqualTo(2);
            }
        }
    }

    /** Letters on a page that can be seen, without its number. */
    private static int words(PDDocument document, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        return stripper.getText(document)
                .replace(UNDER, "")
                .replaceAll("page \\d+ of \\d+", "")
                .strip()
                .length();
    }

    private static String page(int lines) throws IOException {
        ByteArrayOutputStream picture = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(90, 70, BufferedImage.TYPE_INT_RGB), "png", picture);
        String figure = "<figure class=\"half\"><img src=\"data:image/png;base64,"
                + Base64.getEncoder().encodeToString(picture.toByteArray())
                + "\" alt=\"map\"/><figcaption>A map of once-reflected light, with its mean.</figcaption></figure>\n";
        String sheet = "<figure class=\"sheet blank\"><p class=\"under\">" + UNDER + "</p></figure>\n";
        return "<html><head><style>" + ReviewPage.style() + "</style></head><body><main>"
                + "<section class=\"begins\"><h2>Irradiance</h2>" + "<p>A line of words.</p>\n".repeat(lines)
                + "<h3>Maps</h3>\n<div class=\"figures\">" + figure.repeat(4)
                + "</div>\n<p>What they show.</p></section>\n"
                + "<section class=\"goes-on\"><h2>Section drawings</h2><p>Each is a sheet.</p>\n" + sheet + sheet
                + "</section><section class=\"goes-on\"><h2>Clearances</h2><p>None.</p></section></main></body></html>";
    }
}
