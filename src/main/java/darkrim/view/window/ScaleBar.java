package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.present.picture.ColourMap;
import darkrim.present.picture.ColourScale;
import darkrim.view.look.Look;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** The scale of colours with its marks, drawn beside the parts and in saved pictures. */
final class ScaleBar {
    /** Width of the whole plate, pixels. */
    static final double WIDTH = 152;

    /** Behind the words. */
    static final Color GROUND = Color.rgb(255, 255, 255, 0.92);

    private static final double BAR = 20;
    private static final double HEAD = 34;
    private static final double FOOT = 88;
    private static final double LINE = 16;
    private static final double LENGTH = 180;
    private static final int LABELS = 6;

    private ScaleBar() {}

    /**
     * Draws the plate.
     *
     * @param left its left border, pixels
     * @param top its upper border
     * @param look which light is shown
     * @param watts how many W/m2 a value of 1 stands for, where that is known
     */
    static void draw(GraphicsContext g, double left, double top, ColourScale scale, Look look, OptionalDouble watts) {
        List<String> lines = lines(scale, look, watts);
        double bar = HEAD + LINE * lines.size();
        double height = bar + LENGTH + FOOT;
        g.setFill(GROUND);
        g.fillRoundRect(left, top, WIDTH, height, 8, 8);
        g.setStroke(Color.web("#8a949c"));
        g.setLineWidth(1);
        g.strokeRoundRect(left + 0.5, top + 0.5, WIDTH - 1, height - 1, 8, 8);
        g.setTextAlign(TextAlignment.LEFT);
        g.setTextBaseline(VPos.TOP);
        g.setFill(Overlay.INK);
        g.setFont(Font.font("System", FontWeight.BOLD, 12));
        g.fillText(scale.title(), left + 10, top + 8, WIDTH - 20);
        g.setFont(Font.font("System", 12));
        for (int i = 0; i < lines.size(); i++) {
            g.fillText(lines.get(i), left + 10, top + 24 + LINE * i, WIDTH - 20);
        }
        bar(g, left + 12, top + bar, scale);
        double y = top + bar + LENGTH + 14;
        swatch(g, left + 12, y, ColourScale.ABOVE, "above the range");
        swatch(g, left + 12, y + 22, ColourScale.BELOW, "below, or none");
        swatch(g, left + 12, y + 44, ColourScale.UNKNOWN, "not known");
    }

    private static List<String> lines(ColourScale scale, Look look, OptionalDouble watts) {
        List<String> lines = new ArrayList<>();
        lines.add(look.light().words());
        look.source().ifPresent(name -> lines.add("of " + name));
        lines.add(scale.spacing() == ColourScale.Spacing.LOGARITHMIC ? "logarithmic" : "linear");
        watts.ifPresent(each -> lines.add("1 is " + Figures.three(each) + " W/m2"));
        return lines;
    }

    private static void bar(GraphicsContext g, double left, double top, ColourScale scale) {
        for (int i = 0; i < (int) LENGTH; i++) {
            g.setFill(Palette.colour(ColourMap.argb(1 - (i + 0.5) / LENGTH)));
            g.fillRect(left, top + i, BAR, 1.5);
        }
        g.setStroke(Overlay.INK);
        g.strokeRect(left - 0.5, top - 0.5, BAR + 1, LENGTH + 1);
        g.setTextBaseline(VPos.CENTER);
        for (ColourScale.Tick tick : scale.ticks(LABELS)) {
            double y = Math.round(top + LENGTH * (1 - tick.share())) + 0.5;
            g.strokeLine(left + BAR, y, left + BAR + (tick.label().isEmpty() ? 3 : 6), y);
            if (!tick.label().isEmpty()) {
                g.setFill(Overlay.INK);
                g.fillText(tick.label(), left + BAR + 10, y, WIDTH - BAR - 30);
            }
        }
    }

    private static void swatch(GraphicsContext g, double left, double top, int argb, String words) {
        g.setFill(Palette.colour(argb));
        g.fillRect(left, top, BAR, 16);
        g.setStroke(Overlay.INK);
        g.strokeRect(left - 0.5, top - 0.5, BAR + 1, 17);
        g.setFill(Overlay.INK);
        g.setTextBaseline(VPos.CENTER);
        g.fillText(words, left + BAR + 10, top + 8, WIDTH - BAR - 30);
    }
}
