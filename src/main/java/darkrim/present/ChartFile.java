package darkrim.present;

import darkrim.layout.form.Wording;
import darkrim.study.UnusableStudy;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;

/** A sheet as a file, SVG or PNG, as its name asks. */
final class ChartFile {
    private static final String SVG = ".svg";
    private static final String PNG = ".png";

    /** Decimals of a point of the screen: the letters of the panels are outlines, and many. */
    private static final int SVG_DECIMALS = 2;

    private ChartFile() {}

    /**
     * Refuses a name that asks for another form.
     *
     * @throws UnusableStudy saying what was expected
     */
    static void check(String file) throws UnusableStudy {
        if (!ends(file, SVG) && !ends(file, PNG)) {
            throw new UnusableStudy(
                    "--chart " + Wording.shortened(file) + ": expected a name that ends in .svg or .png");
        }
    }

    private static boolean ends(String file, String ending) {
        return file.toLowerCase(Locale.ROOT).endsWith(ending);
    }

    /** The bytes of the picture. */
    static byte[] content(ChartSheet sheet, String file) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            if (ends(file, SVG)) {
                svg(sheet, bytes);
            } else {
                png(sheet, bytes);
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }

    private static void png(ChartSheet sheet, ByteArrayOutputStream bytes) throws IOException {
        BufferedImage image = new BufferedImage(sheet.width(), sheet.height(), BufferedImage.TYPE_INT_RGB);
        java.awt.Graphics2D graphics = image.createGraphics();
        sheet.paint(graphics);
        graphics.dispose();
        ImageIO.write(image, "png", bytes);
    }

    private static void svg(ChartSheet sheet, ByteArrayOutputStream bytes) throws IOException {
        Document document = SvgDocument.empty();
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setPrecision(SVG_DECIMALS);
        context.setComment("Darkrim");
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        graphics.setSVGCanvasSize(new java.awt.Dimension(sheet.width(), sheet.height()));
        sheet.paint(graphics);
        try (Writer writer = new OutputStreamWriter(bytes, StandardCharsets.UTF_8)) {
            graphics.stream(writer, false);
        }
    }
}
