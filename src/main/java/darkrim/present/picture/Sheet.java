package darkrim.present.picture;

import darkrim.present.PngBytes;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;

/**
 * The sheet that a picture stands on: title above, colours to the right, what else must be said below. Letters grow with the sheet; what is
 * too long for a line is broken between words. Lives while one picture is painted.
 */
final class Sheet {
    static final Color PAPER = Color.WHITE;
    static final Color INK = new Color(0x20242a);
    static final Color PALE = new Color(0x5a626b);
    /** Size of a sheet whose letters have their plain size, pixels. */
    private static final double PLAIN_WIDTH = 1600;

    private static final double PLAIN_HEIGHT = 1000;
    private static final double PLAIN_LETTERS = 16;
    private static final double LEAST_LETTERS = 11;

    private final BufferedImage image;
    private final Graphics2D graphics;
    private final double letters;
    private final int margin;

    Sheet(int width, int height) {
        this(width, height, 1);
    }

    /**
     * @param enlarged how much larger its letters are, for pictures that are printed small
     */
    Sheet(int width, int height, double enlarged) {
        image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setColor(PAPER);
        graphics.fillRect(0, 0, width, height);
        letters = enlarged
                * Math.max(LEAST_LETTERS, PLAIN_LETTERS * Math.min(width / PLAIN_WIDTH, height / PLAIN_HEIGHT));
        margin = (int) Math.round(letters);
    }

    Graphics2D graphics() {
        return graphics;
    }

    BufferedImage image() {
        return image;
    }

    /** Size of the letters, pixels. */
    double letters() {
        return letters;
    }

    /** How much larger than plain, for widths of lines. */
    float scale() {
        return (float) (letters / PLAIN_LETTERS);
    }

    int margin() {
        return margin;
    }

    static Font font(int style, double size) {
        return new Font(Font.SANS_SERIF, style, 1).deriveFont((float) size);
    }

    /**
     * Writes title and foot.
     *
     * @param text what is written
     * @param legend height of a legend that stands between picture and foot, pixels
     * @param right width of what stands to the right of the picture, pixels
     * @return the room that is left for the picture
     */
    Rectangle write(PictureText text, int legend, int right) {
        int width = image.getWidth() - 2 * margin;
        int y = margin;
        y = paragraph(text.title(), font(Font.BOLD, 1.3 * letters), INK, y, width);
        y = paragraph(text.what(), font(Font.PLAIN, letters), INK, y, width) + margin / 2;
        Font small = font(Font.PLAIN, 0.85 * letters);
        int footHeight = 0;
        for (String each : text.foot()) {
            footHeight += lines(each, small, width).size() * lineHeight(small);
        }
        int footTop = image.getHeight() - margin - footHeight;
        int footY = footTop;
        for (String each : text.foot()) {
            footY = paragraph(each, small, PALE, footY, width);
        }
        int high = footTop - margin / 2 - legend - y;
        return new Rectangle(margin, y, Math.max(1, width - right), Math.max(1, high));
    }

    private int paragraph(String text, Font font, Color colour, int top, int width) {
        if (text.isEmpty()) {
            return top;
        }
        graphics.setFont(font);
        graphics.setColor(colour);
        int y = top;
        for (String line : lines(text, font, width)) {
            graphics.drawString(line, margin, y + graphics.getFontMetrics().getAscent());
            y += lineHeight(font);
        }
        return y;
    }

    int lineHeight(Font font) {
        FontMetrics metrics = graphics.getFontMetrics(font);
        return metrics.getAscent() + metrics.getDescent() + 1;
    }

    /** A text broken between words into lines that fit a width; a word that is too long is broken where it must be. */
    List<String> lines(String text, Font font, int width) {
        FontMetrics metrics = graphics.getFontMetrics(font);
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" ", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (metrics.stringWidth(longer) <= width) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (metrics.stringWidth(line) > width && line.length() > 1) {
                int fits = 1;
                while (fits < line.length() && metrics.stringWidth(line.substring(0, fits + 1)) <= width) {
                    fits++;
                }
                lines.add(line.substring(0, fits));
                line = line.substring(fits);
            }
        }
        lines.add(line);
        return lines;
    }

    /** A rectangle with a thin border. */
    void frame(Rectangle at) {
        graphics.setColor(PALE);
        graphics.setStroke(new BasicStroke(Math.max(0.8f, scale())));
        graphics.drawRect(at.x, at.y, at.width - 1, at.height - 1);
    }

    /** The sheet as a PNG file. */
    byte[] png() {
        graphics.dispose();
        return PngBytes.of(image);
    }
}
