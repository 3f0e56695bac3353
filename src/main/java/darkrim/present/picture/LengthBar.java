package darkrim.present.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;

/** A bar of a round length at the bottom of a picture in which lengths can be measured. */
final class LengthBar {
    /** At most this share of the picture's width. */
    private static final double SHARE = 0.2;

    private LengthBar() {}

    static void paint(Sheet sheet, Graphics2D graphics, Rectangle room, Camera camera) {
        double perPixel = 2 * camera.halfHeight() / room.height;
        double length = RoundNumbers.atLeast(SHARE * room.width * perPixel / 2.5);
        int pixels = (int) Math.round(length / perPixel);
        Font font = Sheet.font(Font.PLAIN, 0.92 * sheet.letters());
        FontMetrics metrics = graphics.getFontMetrics(font);
        String label = RoundNumbers.letters(length) + " mm";
        int pad = sheet.margin() / 2;
        int wide = Math.max(pixels, metrics.stringWidth(label)) + 2 * pad;
        int high = metrics.getHeight() + 2 * pad;
        int x = pad;
        int y = room.height - pad - high;
        graphics.setColor(new Color(0xe8ffffff, true));
        graphics.fillRect(x, y, wide, high);
        graphics.setColor(Sheet.INK);
        graphics.setFont(font);
        graphics.drawString(label, x + pad, y + pad / 2 + metrics.getAscent());
        graphics.setStroke(new BasicStroke(Math.max(1.5f, 2 * sheet.scale())));
        int base = y + high - pad;
        graphics.drawLine(x + pad, base, x + pad + pixels, base);
        graphics.drawLine(x + pad, base - pad / 2, x + pad, base + pad / 3);
        graphics.drawLine(x + pad + pixels, base - pad / 2, x + pad + pixels, base + pad / 3);
    }
}
