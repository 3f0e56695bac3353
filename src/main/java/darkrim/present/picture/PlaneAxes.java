package darkrim.present.picture;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;

/** A picture of a rectangle of the focal plane with x to the right and y up, to the same scale both ways, with ticks in mm. */
final class PlaneAxes {
    private final Sheet sheet;
    private final Font font;
    private final double fromX;
    private final double fromY;
    private final double scale;
    private final Rectangle picture;

    /**
     * @param room where the picture with its labels may stand, pixels
     */
    PlaneAxes(Sheet sheet, Rectangle room, double fromX, double fromY, double width, double height) {
        this.sheet = sheet;
        this.fromX = fromX;
        this.fromY = fromY;
        font = Sheet.font(Font.PLAIN, 0.92 * sheet.letters());
        FontMetrics metrics = sheet.graphics().getFontMetrics(font);
        int left = metrics.stringWidth("-000.0") + 2 * sheet.margin() + metrics.getHeight();
        int bottom = 2 * metrics.getHeight() + sheet.margin();
        int top = metrics.getHeight() / 2;
        double across = Math.max(1, room.width - left - sheet.margin());
        double down = Math.max(1, room.height - bottom - top);
        scale = Math.min(across / width, down / height);
        int wide = (int) Math.max(1, Math.round(width * scale));
        int high = (int) Math.max(1, Math.round(height * scale));
        picture = new Rectangle(room.x + left + (int) (across - wide) / 2, room.y + top, wide, high);
    }

    /** Where the picture stands, pixels. */
    Rectangle picture() {
        return picture;
    }

    /** From mm to pixels. */
    double pixelX(double x) {
        return picture.x + (x - fromX) * scale;
    }

    /** From mm to pixels. */
    double pixelY(double y) {
        return picture.y + picture.height - (y - fromY) * scale;
    }

    /** Paints frame, ticks and labels. */
    void paint() {
        sheet.frame(picture);
        Graphics2D graphics = sheet.graphics();
        graphics.setFont(font);
        graphics.setColor(Sheet.INK);
        FontMetrics metrics = graphics.getFontMetrics();
        double step = RoundNumbers.atLeast(Math.max(3.0 * metrics.getHeight(), 60) / scale);
        int low = picture.y + picture.height;
        for (long i = (long) Math.ceil(fromX / step - 1e-9);
                RoundNumbers.times(i, step) <= fromX + picture.width / scale + 1e-9;
                i++) {
            String label = RoundNumbers.letters(RoundNumbers.times(i, step));
            int at = (int) Math.round(pixelX(RoundNumbers.times(i, step)));
            graphics.drawLine(at, low, at, low + 4);
            graphics.drawString(label, at - metrics.stringWidth(label) / 2, low + 6 + metrics.getAscent());
        }
        for (long i = (long) Math.ceil(fromY / step - 1e-9);
                RoundNumbers.times(i, step) <= fromY + picture.height / scale + 1e-9;
                i++) {
            String label = RoundNumbers.letters(RoundNumbers.times(i, step));
            int at = (int) Math.round(pixelY(RoundNumbers.times(i, step)));
            graphics.drawLine(picture.x - 5, at, picture.x - 1, at);
            graphics.drawString(label, picture.x - 8 - metrics.stringWidth(label), at + metrics.getAscent() / 2 - 1);
        }
        int wide = metrics.stringWidth("x, mm");
        graphics.drawString(
                "x, mm", picture.x + (picture.width - wide) / 2, low + 6 + metrics.getHeight() + metrics.getAscent());
        graphics.rotate(-Math.PI / 2);
        graphics.drawString(
                "y, mm",
                -(picture.y + (picture.height + wide) / 2),
                picture.x - metrics.stringWidth("-000.0") - sheet.margin());
        graphics.rotate(Math.PI / 2);
    }
}
