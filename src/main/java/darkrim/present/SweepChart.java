package darkrim.present;

import darkrim.layout.form.Wording;
import darkrim.study.UnusableStudy;
import darkrim.study.sweep.Design;
import darkrim.study.sweep.SweepResult;
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

/** A sweep as a picture, SVG or PNG: curves for one dimension, maps of verdicts for a grid of two. */
public final class SweepChart {
    private static final String SVG = ".svg";
    private static final String PNG = ".png";

    /** Decimals of a point of the screen: the letters of the panels are outlines, and many. */
    private static final int SVG_DECIMALS = 2;

    private final ChartSheet sheet;

    /**
     * @param result the sweep
     * @param version version of the program
     */
    public SweepChart(SweepResult result, String version) {
        sheet = result.variations().size() == 1
                ? new CurveSheet(result, version)
                : new VerdictMapSheet(result, version);
    }

    /**
     * Refuses what cannot be drawn.
     *
     * @param design what is swept
     * @param file name of the picture
     * @throws UnusableStudy saying why
     */
    public static void check(Design design, String file) throws UnusableStudy {
        int count = design.variations().size();
        if (count > 2 || (count == 2 && design.spread().isPresent())) {
            throw new UnusableStudy("--chart draws one dimension or a grid of two, not " + count + " dimensions"
                    + (design.spread().isPresent() ? " of spread points" : "") + "; --csv and --json hold them all");
        }
        if (!ends(file, SVG) && !ends(file, PNG)) {
            throw new UnusableStudy(
                    "--chart " + Wording.shortened(file) + ": expected a name that ends in .svg or .png");
        }
    }

    private static boolean ends(String file, String ending) {
        return file.toLowerCase(Locale.ROOT).endsWith(ending);
    }

    /** The picture in the form that the name of its file asks for. */
    public byte[] content(String file) {
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

    private void png(ByteArrayOutputStream bytes) throws IOException {
        BufferedImage image = new BufferedImage(sheet.width(), sheet.height(), BufferedImage.TYPE_INT_RGB);
        java.awt.Graphics2D graphics = image.createGraphics();
        sheet.paint(graphics);
        graphics.dispose();
        ImageIO.write(image, "png", bytes);
    }

    private void svg(ByteArrayOutputStream bytes) throws IOException {
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
