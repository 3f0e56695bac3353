package darkrim.present;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.function.Consumer;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;

/**
 * A drawing as the bytes of a file, SVG or PNG by the end of its name.
 *
 * @param width width, pixels
 * @param height height, pixels
 * @param painter draws it
 */
record Picture(int width, int height, Consumer<Graphics2D> painter) {
    private static final String SVG = ".svg";
    private static final String PNG = ".png";

    /** Decimals of a point of the screen: the letters of the panels are outlines, and many. */
    private static final int SVG_DECIMALS = 2;

    /** Whether the name of a file asks for a picture that can be made. */
    static boolean isNamed(String file) {
        return ends(file, SVG) || ends(file, PNG);
    }

    /** The picture in the form that the name of its file asks for. */
    byte[] content(String file) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            if (ends(file, SVG)) {
                svg(bytes);
            } else {
                png(bytes);
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }

    private static boolean ends(String file, String ending) {
        return file.toLowerCase(Locale.ROOT).endsWith(ending);
    }

    private void png(ByteArrayOutputStream bytes) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        painter.accept(graphics);
        graphics.dispose();
        bytes.write(PngBytes.of(image));
    }

    private void svg(ByteArrayOutputStream bytes) throws IOException {
        Document document = SvgDocument.empty();
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setPrecision(SVG_DECIMALS);
        context.setComment("Darkrim");
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        graphics.setSVGCanvasSize(new Dimension(width, height));
        painter.accept(graphics);
        try (Writer writer = new OutputStreamWriter(bytes, StandardCharsets.UTF_8)) {
            graphics.stream(writer, false);
        }
    }
}
