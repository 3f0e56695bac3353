package darkrim.present;

import darkrim.layout.Layout;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.Variation;
import darkrim.verdict.Plan;
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

    private final SweepResult result;
    private final String version;

    ChartSheet(SweepResult result, String version) {
        this.result = result;
        this.version = version;
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

    /** Name and unit of a dimension. */
    static String label(Variation variation) {
        return Printable.of(variation.dimension()) + (variation.unit().isEmpty() ? "" : ", " + variation.unit());
    }

    final SweepResult result() {
        return result;
    }

    final int footHeight() {
        return LINE * foot().size() + MARGIN;
    }

    final void paint(Graphics2D graphics) {
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width(), height());
        Layout layout = result.layout();
        graphics.setColor(INK);
        graphics.setFont(font(Font.BOLD, 17));
        graphics.drawString(LayoutWords.title(layout), MARGIN, 28);
        graphics.setFont(font(Font.PLAIN, 12));
        String varied = String.join(
                "; ", result.variations().stream().map(Variation::toString).toList());
        graphics.drawString(Printable.of(varied), MARGIN, 46);
        graphics.setColor(PALE);
        graphics.drawString(
                LayoutWords.file(layout) + "; Darkrim " + version + ", seed " + result.seed() + ", "
                        + Figures.count(
                                Plan.samplesOf(result.settings().points().batches()))
                        + " samples for each sampled number",
                MARGIN,
                62);
        paintPanels(graphics);
        graphics.setColor(INK);
        graphics.setFont(font(Font.PLAIN, 12));
        int y = height() - footHeight() + LINE;
        for (String line : foot()) {
            graphics.drawString(line, MARGIN, y);
            y += LINE;
        }
    }

    static void hairline(Graphics2D graphics) {
        graphics.setStroke(new BasicStroke(0.8f));
    }
}
