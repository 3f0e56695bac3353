package darkrim.view.window;

import darkrim.present.picture.ChangeScale;
import darkrim.present.picture.ColourScale;
import darkrim.view.look.Look;
import java.util.List;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;

/** The scale of changes with its marks, in the place of {@link ScaleBar}. */
final class ChangeBar {
    private record Mark(double ratio, String label) {}

    private static final List<Mark> MARKS = List.of(
            new Mark(0.1, "\u2264 1/10"),
            new Mark(0.2, "1/5"),
            new Mark(0.5, "1/2"),
            new Mark(1, "1"),
            new Mark(2, "2"),
            new Mark(5, "5"),
            new Mark(10, "\u2265 10"));

    private ChangeBar() {}

    /**
     * Draws it from the left upper corner on.
     *
     * @param width its width, pixels
     * @param look which light is compared
     */
    static void draw(GraphicsContext g, double width, Look look) {
        ScaleBar.ground(g, width);
        String of = look.source().map(name -> ", of " + name).orElse("");
        ScaleBar.words(
                g,
                width,
                "irradiance after / before",
                look.light().words() + of + ", ratio of face means; 1: no change seen");
        ScaleBar.colours(g, width, ChangeScale::argb);
        g.setTextAlign(TextAlignment.CENTER);
        for (Mark mark : MARKS) {
            ScaleBar.mark(g, width, ChangeScale.share(mark.ratio()), mark.label());
        }
        double middle = 0.4 * width;
        ScaleBar.swatch(g, ScaleBar.EDGE, ColourScale.UNKNOWN, "not known, or new", middle - ScaleBar.EDGE);
        ScaleBar.note(
                g, middle, "+ more   \u2212 less   N new   dashed: face gone", width - middle - ScaleBar.EDGE / 2);
    }
}
