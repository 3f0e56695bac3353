package darkrim.present.review;

import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import darkrim.present.drawing.PdfLetters;
import darkrim.present.drawing.PdfSheet;
import darkrim.present.drawing.SectionSheet;
import darkrim.study.review.Review;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.GregorianCalendar;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.multipdf.LayerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/** A review as a document to print: A4 pages, and the section drawings on sheets of A3, true to scale. */
public final class ReviewPdf {
    /** Held, so that its level is not forgotten: the library warns of each font that the machine lacks, though none of them is used. */
    private static final Logger LIBRARY = Logger.getLogger("org.apache.pdfbox");

    /** A page that is wider than this is a sheet, points: A4 is 595, A3 across 1191. */
    private static final float SHEET = 1000;

    private ReviewPdf() {}

    /**
     * The document. No clock is read: the same review and date make the same bytes on one machine.
     *
     * @param review what was found
     * @param imprint how it came about
     * @param threads threads that draw pictures; never changes a result
     * @param lacking hears, in words, what of its letters the font lacks, if it lacks any
     */
    public static byte[] of(Review review, Imprint imprint, int threads, Consumer<String> lacking) {
        XRLog.setLoggingEnabled(false);
        LIBRARY.setLevel(Level.SEVERE);
        try {
            String page = ReviewPage.forPaper(review, imprint, threads);
            List<SectionSheet> sheets = ReviewPage.sheets(review, imprint);
            String words = sheets.stream().map(SectionSheet::words).collect(Collectors.joining());
            String missing = PdfLetters.lacking(page + words);
            if (!missing.isEmpty()) {
                lacking.accept(missing);
            }
            return finished(pages(page), sheets, imprint);
        } catch (IOException impossible) {
            throw new IllegalStateException("writing to memory failed", impossible);
        }
    }

    /** A page of HTML on paper; a figure of class {@code sheet} has a sheet of A3 of its own. */
    static byte[] pages(String page) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFont(PdfLetters::open, "Liberation Sans");
        // Nothing is fetched: all that the page needs is inside it.
        builder.useUriResolver((base, uri) -> uri.startsWith("data:") || uri.startsWith("#") ? uri : null);
        builder.withProducer("Darkrim");
        builder.withHtmlContent(page, null);
        builder.toStream(bytes);
        builder.run();
        return bytes.toByteArray();
    }

    /** Puts the drawings on the sheets that were left for them, as lines, not as pictures, and the date of the review in place of the time. */
    private static byte[] finished(byte[] pages, List<SectionSheet> sheets, Imprint imprint) throws IOException {
        try (PDDocument document = Loader.loadPDF(pages)) {
            LayerUtility layers = new LayerUtility(document);
            Iterator<SectionSheet> left = sheets.iterator();
            for (PDPage page : document.getPages()) {
                if (page.getMediaBox().getWidth() > SHEET && left.hasNext()) {
                    try (PDDocument drawing = Loader.loadPDF(PdfSheet.of(left.next(), ""));
                            PDPageContentStream content =
                                    new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
                        PDFormXObject form = layers.importPageAsForm(drawing, 0);
                        content.drawForm(form);
                    }
                }
            }
            if (left.hasNext()) {
                throw new IllegalStateException("a section drawing has no sheet");
            }
            dated(document, imprint);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        }
    }

    /** What tells documents apart is made of the date and the command too, not of the time at which it is written. */
    private static void dated(PDDocument document, Imprint imprint) {
        PDDocumentInformation information = document.getDocumentInformation();
        information.setCreationDate(
                GregorianCalendar.from(LocalDate.parse(imprint.date()).atStartOfDay(ZoneOffset.UTC)));
        information.getCOSObject().removeItem(COSName.MOD_DATE);
        document.getDocument().getTrailer().removeItem(COSName.ID);
        document.setDocumentId((long) imprint.toString().hashCode());
    }
}
