package darkrim.view.window;

import darkrim.present.picture.ChangeScale;
import darkrim.present.picture.ColourScale;
import darkrim.view.look.Look;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** The scale of changes with its marks, in the place of {@link ScaleBar}. */
final class ChangeBar {
    private static final double BAR = 20;
    private static final double TOP = 62;
    private static final double LENGTH = 150;
    private static final double HEIGHT = 296;
    private static final String[][] MARKS = {
        {"10", "10 and more"},
        {"5", "5"},
        {"2", "2"},
        {"1", "1: no change seen"},
        {"0.5", "1/2"},
        {"0.2", "1/5"},
        {"0.1", "1/10 and less"}
    };

    private ChangeBar() {}

    /**
     * Draws the plate.
     *
     * @param left its left border, pixels
     * @param top its upper border
     * @param look which light is compared
     */
    static void draw(GraphicsContext g, double left, double top, Look look) {
        double width = ScaleBar.WIDTH;
        g.setFill(Color.rgb(255, 255, 255, 0.92));
        g.fillRoundRect(left, top, width, HEIGHT, 8, 8);
        g.setStroke(Color.web("#8a949c"));
        g.setLineWidth(1);
        g.strokeRoundRect(left + 0.5, top + 0.5, width - 1, HEIGHT - 1, 8, 8);
        g.setTextAlign(TextAlignment.LEFT);
        g.setTextBaseline(VPos.TOP);
        g.setFill(Overlay.INK);
        g.setFont(Font.font("System", FontWeight.BOLD, 12));
        g.fillText("irradiance after / before", left + 10, top + 8, width - 20);
        g.setFont(Font.font("System", 12));
        g.fillText(look.light().words(), left + 10, top + 24, width - 20);
        String of = look.source().map(name -> "of " + name + ", face means").orElse("ratio of face means");
        g.fillText(of, left + 10, top + 40, width - 20);
        for (int i = 0; i < (int) LENGTH; i++) {
            g.setFill(Palette.colour(ChangeScale.argb(1 - (i + 0.5) / LENGTH)));
            g.fillRect(left + 12, top + TOP + i, BAR, 1.5);
        }
        g.setStroke(Overlay.INK);
        g.strokeRect(left + 11.5, top + TOP - 0.5, BAR + 1, LENGTH + 1);
        g.setTextBaseline(VPos.CENTER);
        g.setFill(Overlay.INK);
        for (String[] mark : MARKS) {
            double share = ChangeScale.share(Double.parseDouble(mark[0]));
            double y = Math.round(top + TOP + LENGTH * (1 - share)) + 0.5;
            g.strokeLine(left + 12 + BAR, y, left + 18 + BAR, y);
            g.fillText(mark[1], left + 22 + BAR, y, width - BAR - 30);
        }
        double y = top + TOP + LENGTH + 14;
        g.setFill(Palette.colour(ColourScale.UNKNOWN));
        g.fillRect(left + 12, y, BAR, 16);
        g.strokeRect(left + 11.5, y - 0.5, BAR + 1, 17);
        g.setFill(Overlay.INK);
        g.fillText("not known, or new", left + 22 + BAR, y + 8, width - BAR - 30);
        g.fillText("+ more  \u2212 less  N new", left + 12, y + 32, width - 20);
        g.fillText("dashed: face gone", left + 12, y + 52, width - 20);
    }
}
