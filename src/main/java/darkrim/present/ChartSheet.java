package darkrim.present;

import darkrim.layout.Layout;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.List;

/** A sheet with a title, panels and a foot that says how to read it. */
abstract class ChartSheet {
    static final Color INK = new Color(0x222222);
    static final Color PALE = new Color(0x777777);
    static final Color PASS = new Color(0xdcefdc);
    static final Color FAIL = new Color(0xf6d5cc);
    static final Color OPEN = new Color(0xf5ecc4);
    static final int MARGIN = 16;
    static final int HEAD = 66;
    static final int LINE = 18;

    private final Layout layout;
    private final String subject;
    private final String made;

    /**
     * @param layout what it is about
     * @param subject what was asked of it
     * @param made how the numbers came about, after the name of the file
     */
    ChartSheet(Layout layout, String subject, String made) {
        this.layout = layout;
        this.subject = subject;
        this.made = made;
    }

    abstract int width();

    abstract int height();

    /** Paints what is between head and foot. */
    abstract void paintPanels(Graphics2D graphics);

    /** What the foot says, a line each. */
    abstract List<String> foot();

    static Font font(int style, int size) {
        return new Font(Font.SANS_SERIF, style, size);
    }

    final int footHeight() {
        return LINE * foot().size() + MARGIN;
    }

    final void paint(Graphics2D graphics) {
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width(), height());
        graphics.setColor(INK);
        graphics.setFont(font(Font.BOLD, 17));
        graphics.drawString(fitting(graphics, LayoutWords.title(layout)), MARGIN, 28);
        graphics.setFont(font(Font.PLAIN, 12));
        graphics.drawString(fitting(graphics, Printable.of(subject)), MARGIN, 46);
        graphics.setColor(PALE);
        graphics.drawString(fitting(graphics, LayoutWords.file(layout) + "; " + made), MARGIN, 62);
        paintPanels(graphics);
        graphics.setColor(INK);
        graphics.setFont(font(Font.PLAIN, 12));
        int y = height() - footHeight() + LINE;
        for (String line : foot()) {
            graphics.drawString(line, MARGIN, y);
            y += LINE;
        }
    }

    /** Words shortened in the middle until they fit into the width of the sheet. */
    private String fitting(Graphics2D graphics, String words) {
        int room = width() - 2 * MARGIN;
        String shown = words;
        for (int letters = words.length();
                letters > 1 && graphics.getFontMetrics().stringWidth(shown) > room;
                letters--) {
            shown = Printable.within(letters, words);
        }
        return shown;
    }

    static void hairline(Graphics2D graphics) {
        graphics.setStroke(new BasicStroke(0.8f));
    }
}
