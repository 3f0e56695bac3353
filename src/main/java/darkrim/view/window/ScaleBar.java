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
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;

/** The scale of colours with its marks, lying below the parts: words, the colours, and what stands for values that are not on it. */
final class ScaleBar {
    /** Height of all of it, pixels. */
    static final double HEIGHT = 78;

    /** Behind the words. */
    static final Color GROUND = Color.WHITE;

    /** Left and right of the colours, where half a label must have room, pixels. */
    static final double EDGE = 22;

    /** Where the colours begin and end, pixels from above. */
    static final double TOP = 24;

    static final double BOTTOM = 36;

    private static final double SWATCH = 20;
    /** A label for each so many pixels. */
    private static final double LABEL_ROOM = 80;

    private ScaleBar() {}

    /**
     * Draws it from the left upper corner on.
     *
     * @param width its width, pixels
     * @param look which light is shown
     * @param watts how many W/m2 a value of 1 stands for, where that is known
     */
    static void draw(GraphicsContext g, double width, ColourScale scale, Look look, OptionalDouble watts) {
        ground(g, width);
        words(g, width, scale.title(), details(scale, look, watts));
        colours(g, width, ColourMap::argb);
        g.setTextAlign(TextAlignment.CENTER);
        int labels = (int) Math.max(2, width / LABEL_ROOM);
        for (ColourScale.Tick tick : scale.ticks(labels)) {
            mark(g, width, tick.share(), tick.label());
        }
        double step = (width - 2 * EDGE) / 3;
        swatch(g, EDGE, ColourScale.BELOW, "below, or none", step);
        swatch(g, EDGE + step, ColourScale.ABOVE, "above the range", step);
        swatch(g, EDGE + 2 * step, ColourScale.UNKNOWN, "not known", step);
    }

    private static String details(ColourScale scale, Look look, OptionalDouble watts) {
        List<String> words = new ArrayList<>(List.of(look.light().words()));
        look.source().ifPresent(name -> words.add("of " + name));
        words.add(scale.spacing() == ColourScale.Spacing.LOGARITHMIC ? "logarithmic" : "linear");
        watts.ifPresent(each -> words.add("1 is " + Figures.three(each) + " W/m2"));
        return String.join(", ", words);
    }

    static void ground(GraphicsContext g, double width) {
        g.setFill(GROUND);
        g.fillRect(0, 0, width, HEIGHT);
    }

    /** The first line: what is shown in bold letters, and more of it. */
    static void words(GraphicsContext g, double width, String title, String details) {
        Font bold = Font.font("System", FontWeight.BOLD, 12);
        Text measured = new Text(title);
        measured.setFont(bold);
        double left = EDGE + measured.getLayoutBounds().getWidth() + 8;
        g.setFill(Overlay.INK);
        g.setTextAlign(TextAlignment.LEFT);
        g.setTextBaseline(VPos.CENTER);
        g.setFont(bold);
        g.fillText(title, EDGE, 13);
        g.setFont(Font.font("System", 12));
        g.fillText(details, left, 13, Math.max(20, width - left - 4));
    }

    /** Gives a colour for a share of the way, 0 to 1. */
    interface Colours {
        int argb(double share);
    }

    static void colours(GraphicsContext g, double width, Colours colours) {
        int length = (int) (width - 2 * EDGE);
        for (int i = 0; i < length; i++) {
            g.setFill(Palette.colour(colours.argb((i + 0.5) / length)));
            // Half a pixel more, so that no seam shows.
            g.fillRect(EDGE + i, TOP, 1.5, BOTTOM - TOP);
        }
        g.setStroke(Overlay.INK);
        g.setLineWidth(1);
        g.strokeRect(EDGE - 0.5, TOP - 0.5, length + 1, BOTTOM - TOP + 1);
    }

    /** A mark below the colours, with its label if it has one; aligned as was set before. */
    static void mark(GraphicsContext g, double width, double share, String label) {
        double x = Math.round(EDGE + (width - 2 * EDGE) * share) + 0.5;
        g.strokeLine(x, BOTTOM, x, BOTTOM + (label.isEmpty() ? 3 : 5));
        g.setFill(Overlay.INK);
        g.setTextBaseline(VPos.TOP);
        g.setFont(Font.font("System", 11));
        g.fillText(label, x, BOTTOM + 5);
    }

    /** The last line: a colour that is not on the scale, and what it stands for. */
    static void swatch(GraphicsContext g, double left, int argb, String words, double room) {
        double top = HEIGHT - 19;
        g.setFill(Palette.colour(argb));
        g.fillRect(left, top, SWATCH, 13);
        g.setStroke(Overlay.INK);
        g.strokeRect(left - 0.5, top - 0.5, SWATCH + 1, 14);
        note(g, left + SWATCH + 6, words, room - SWATCH - 10);
    }

    /** Words on the last line. */
    static void note(GraphicsContext g, double left, String words, double room) {
        g.setFill(Overlay.INK);
        g.setTextAlign(TextAlignment.LEFT);
        g.setTextBaseline(VPos.CENTER);
        g.setFont(Font.font("System", 12));
        g.fillText(words, left, HEIGHT - 12.5, room);
    }
}
