package darkrim.present.picture;

import darkrim.present.picture.ColourScale.Tick;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The colours with their values, standing beside a picture, and what the colours outside them mean. */
final class ColourBar {
    private final Sheet sheet;
    private final ColourScale scale;
    private final Map<Integer, String> others = new TreeMap<>();
    private final Font font;
    private final FontMetrics metrics;

    /**
     * @param used places in the palette of colours that the picture has
     */
    ColourBar(Sheet sheet, ColourScale scale, java.util.BitSet used) {
        this.sheet = sheet;
        this.scale = scale;
        font = Sheet.font(Font.PLAIN, 0.92 * sheet.letters());
        metrics = sheet.graphics().getFontMetrics(font);
        if (used.get(ColourScale.ABOVE_INDEX)) {
            others.put(ColourScale.ABOVE, "> " + RoundNumbers.letters(scale.most()));
        }
        if (used.get(ColourScale.BELOW_INDEX)) {
            others.put(
                    ColourScale.BELOW,
                    scale.least() > 0 ? "less, or none" : "< " + RoundNumbers.letters(scale.least()));
        }
        if (used.get(ColourScale.UNKNOWN_INDEX)) {
            others.put(ColourScale.UNKNOWN, "not known");
        }
    }

    /** Width that it needs, pixels. */
    int width() {
        int widest = Math.max(metrics.stringWidth("relative"), 0);
        for (String word : scale.title().split(" ", -1)) {
            widest = Math.max(widest, metrics.stringWidth(word));
        }
        int labels = 0;
        for (Tick tick : scale.ticks(8)) {
            labels = Math.max(labels, metrics.stringWidth(tick.label()));
        }
        for (String other : others.values()) {
            labels = Math.max(labels, metrics.stringWidth(other));
        }
        return sheet.margin() + Math.max(widest, bar() + gap() + labels);
    }

    private int bar() {
        return (int) Math.round(1.4 * sheet.letters());
    }

    private int gap() {
        return (int) Math.round(0.7 * sheet.letters());
    }

    /** Paints it to the right of a picture. */
    void paint(Rectangle picture) {
        Graphics2D graphics = sheet.graphics();
        int x = picture.x + picture.width + sheet.margin();
        int y = picture.y;
        int line = sheet.lineHeight(font);
        graphics.setFont(font);
        graphics.setColor(Sheet.INK);
        List<String> title = sheet.lines(scale.title(), font, width() - sheet.margin());
        for (String each : title) {
            graphics.drawString(each, x, y + metrics.getAscent());
            y += line;
        }
        y += gap();
        int low = picture.y + picture.height - others.size() * (line + gap() / 2) - gap();
        gradient(x, y, low);
        ticks(x, y, low, Math.max(2, (low - y) / (2 * line)));
        int top = low + gap();
        for (Map.Entry<Integer, String> other : others.entrySet()) {
            Rectangle swatch = new Rectangle(x, top, bar(), line - 2);
            graphics.setColor(new Color(other.getKey()));
            graphics.fill(swatch);
            sheet.frame(swatch);
            graphics.setColor(Sheet.INK);
            graphics.drawString(other.getValue(), x + bar() + gap(), top + metrics.getAscent() - 1);
            top += line + gap() / 2;
        }
    }

    private void gradient(int x, int high, int low) {
        Graphics2D graphics = sheet.graphics();
        for (int y = high; y < low; y++) {
            graphics.setColor(new Color(ColourMap.argb((low - y - 0.5) / (low - high))));
            graphics.fillRect(x, y, bar(), 1);
        }
        sheet.frame(new Rectangle(x, high, bar(), low - high));
    }

    private void ticks(int x, int high, int low, int most) {
        Graphics2D graphics = sheet.graphics();
        graphics.setColor(Sheet.INK);
        for (Tick tick : scale.ticks(Math.min(12, most))) {
            int y = (int) Math.round(low - tick.share() * (low - high));
            boolean labelled = !tick.label().isEmpty();
            int length = labelled ? gap() / 2 : gap() / 4;
            graphics.drawLine(x + bar(), y, x + bar() + length, y);
            if (labelled) {
                int base = Math.min(low, Math.max(high + metrics.getAscent() / 2, y)) + metrics.getAscent() / 2 - 1;
                graphics.drawString(tick.label(), x + bar() + gap(), base);
            }
        }
    }
}
