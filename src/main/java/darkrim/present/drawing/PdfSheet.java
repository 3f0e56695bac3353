package darkrim.present.drawing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/**
 * Writes a sheet as a PDF page of its size, true to scale: a millimetre is 72 / 25.4 points. The letters are embedded, from the font that comes with the
 * library; one that it lacks becomes a question mark. No clock is read, so that the same sheet makes the same bytes.
 */
public final class PdfSheet {
    private static final float POINTS = 72f / 25.4f;
    /** Strokes around bold letters, as a share of their size. */
    private static final double BOLD = 0.035;

    private final PDPageContentStream page;
    private final PDFont font;

    private PdfSheet(PDPageContentStream page, PDFont font) {
        this.page = page;
        this.font = font;
    }

    /**
     * The sheet as a file.
     *
     * @param sheet the sheet
     * @param title its title, for readers that show one
     */
    public static byte[] of(SectionSheet sheet, String title) {
        try (PDDocument document = new PDDocument();
                InputStream letters = PdfLetters.open()) {
            document.setDocumentId((long) sheet.toString().hashCode());
            PDDocumentInformation information = new PDDocumentInformation();
            information.setTitle(darkrim.present.Printable.of(title));
            information.setProducer("Darkrim");
            document.setDocumentInformation(information);
            PDPage page = new PDPage(
                    new PDRectangle((float) SectionSheet.WIDTH * POINTS, (float) SectionSheet.HEIGHT * POINTS));
            document.addPage(page);
            PDFont font = PDType0Font.load(document, letters, true);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.setLineJoinStyle(1);
                new PdfSheet(content, font).all(sheet.marks());
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException impossible) {
            throw new IllegalStateException("writing to memory failed", impossible);
        }
    }

    private void all(List<Mark> marks) throws IOException {
        for (Mark mark : marks) {
            if (mark instanceof Mark.Area area) {
                area(area);
            } else if (mark instanceof Mark.Path path) {
                line(path.line());
                follow(path.points());
                page.stroke();
            } else if (mark instanceof Mark.Words words) {
                words(words);
            } else if (mark instanceof Mark.Clipped clipped) {
                clipped(clipped);
            }
        }
    }

    private void area(Mark.Area area) throws IOException {
        line(area.outline());
        float[] fill = colour(area.fill());
        page.setNonStrokingColor(fill[0], fill[1], fill[2]);
        for (List<Vector2D> ring : area.rings()) {
            follow(ring);
            page.closePath();
        }
        page.fillAndStrokeEvenOdd();
    }

    private void clipped(Mark.Clipped clipped) throws IOException {
        page.saveGraphicsState();
        Box box = clipped.box();
        page.addRect(x(box.x()), y(box.bottom()), (float) box.width() * POINTS, (float) box.height() * POINTS);
        page.clip();
        all(clipped.marks());
        page.restoreGraphicsState();
    }

    private void words(Mark.Words words) throws IOException {
        String shown = written(words.text());
        float size = (float) words.size() * POINTS;
        float width = font.getStringWidth(shown) / 1000 * size;
        float left = switch (words.anchor()) {
            case START -> 0;
            case MIDDLE -> width / 2;
            case END -> width;
        };
        page.beginText();
        page.setFont(font, size);
        page.setNonStrokingColor(0f, 0f, 0f);
        page.setStrokingColor(0f, 0f, 0f);
        page.setRenderingMode(words.bold() ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
        if (words.bold()) {
            page.setLineWidth((float) (BOLD * words.size()) * POINTS);
            page.setLineDashPattern(new float[0], 0);
        }
        page.newLineAtOffset(x(words.x()) - left, y(words.y()));
        page.showText(shown);
        page.endText();
    }

    /** What the font has of a text. */
    private String written(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(letter -> shown.append(has(letter) ? Character.toString(letter) : "?"));
        return shown.toString();
    }

    private boolean has(int letter) {
        try {
            font.encode(Character.toString(letter));
            return true;
        } catch (IllegalArgumentException | IOException missing) {
            return false;
        }
    }

    private void line(Line line) throws IOException {
        float[] colour = colour(line.colour());
        page.setStrokingColor(colour[0], colour[1], colour[2]);
        page.setLineWidth((float) line.width() * POINTS);
        float[] dashes = new float[line.dashes().size()];
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] = line.dashes().get(i).floatValue() * POINTS;
        }
        page.setLineDashPattern(dashes, 0);
    }

    private void follow(List<Vector2D> points) throws IOException {
        for (int i = 0; i < points.size(); i++) {
            float x = x(points.get(i).getX());
            float y = y(points.get(i).getY());
            if (i == 0) {
                page.moveTo(x, y);
            } else {
                page.lineTo(x, y);
            }
        }
    }

    private static float x(double paper) {
        return (float) paper * POINTS;
    }

    private static float y(double paper) {
        return (float) (SectionSheet.HEIGHT - paper) * POINTS;
    }

    private static float[] colour(String name) {
        int all = Integer.parseInt(name.substring(1), 16);
        return new float[] {(all >> 16 & 255) / 255f, (all >> 8 & 255) / 255f, (all & 255) / 255f};
    }
}
