package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.present.picture.ColourScale;
import darkrim.view.parts.FlatMap;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;

/** Values along a line, on the scale of the colours, with a band of one standard error to either side. */
final class Profile {
    private static final double WIDTH = 288;
    private static final double HEIGHT = 200;
    private static final double LEFT = 52;
    private static final double RIGHT = 12;
    private static final double TOP = 14;
    private static final double BOTTOM = 34;
    private static final int LABELS = 5;

    private final Canvas canvas = new Canvas(WIDTH, HEIGHT);

    Profile() {
        canvas.setId("profile");
    }

    Node node() {
        return canvas;
    }

    /** Draws a profile; nothing where there are no samples. */
    void show(List<FlatMap.Sample> samples, ColourScale scale) {
        GraphicsContext g = canvas.getGraphicsContext2D();
        g.clearRect(0, 0, WIDTH, HEIGHT);
        if (samples.isEmpty()) {
            return;
        }
        double length = samples.get(samples.size() - 1).distance();
        axes(g, scale, length);
        double step = (WIDTH - LEFT - RIGHT) / (samples.size() - 1);
        g.setFill(Color.rgb(0, 103, 192, 0.25));
        for (int i = 0; i < samples.size(); i++) {
            FlatMap.Sample sample = samples.get(i);
            if (Double.isFinite(sample.value()) && Double.isFinite(sample.error())) {
                double high = height(scale, sample.value() + sample.error());
                double low = height(scale, sample.value() - sample.error());
                g.fillRect(LEFT + i * step - step / 2, high, step, Math.max(1, low - high));
            }
        }
        g.setStroke(Color.web("#0067c0"));
        g.setLineWidth(2);
        for (int i = 1; i < samples.size(); i++) {
            double before = samples.get(i - 1).value();
            double now = samples.get(i).value();
            if (Double.isFinite(before) && Double.isFinite(now)) {
                g.strokeLine(LEFT + (i - 1) * step, height(scale, before), LEFT + i * step, height(scale, now));
            }
        }
    }

    private static void axes(GraphicsContext g, ColourScale scale, double length) {
        g.setStroke(Overlay.INK);
        g.setLineWidth(1);
        g.strokeRect(LEFT - 0.5, TOP - 0.5, WIDTH - LEFT - RIGHT + 1, HEIGHT - TOP - BOTTOM + 1);
        g.setFill(Overlay.INK);
        g.setFont(Font.font("System", 11));
        g.setTextAlign(TextAlignment.RIGHT);
        g.setTextBaseline(VPos.CENTER);
        for (ColourScale.Tick tick : scale.ticks(LABELS)) {
            if (!tick.label().isEmpty()) {
                double y = Math.round(height(scale, tick.value())) + 0.5;
                g.strokeLine(LEFT - 5, y, LEFT, y);
                g.fillText(tick.label(), LEFT - 8, y, LEFT - 10);
            }
        }
        g.setTextBaseline(VPos.TOP);
        g.setTextAlign(TextAlignment.LEFT);
        g.fillText("0", LEFT, HEIGHT - BOTTOM + 4);
        g.setTextAlign(TextAlignment.RIGHT);
        g.fillText(Figures.three(length) + " mm", WIDTH - RIGHT, HEIGHT - BOTTOM + 4);
        g.setTextAlign(TextAlignment.CENTER);
        g.fillText("along the line; " + scale.title(), (LEFT + WIDTH - RIGHT) / 2, HEIGHT - 14, WIDTH - LEFT);
    }

    private static double height(ColourScale scale, double value) {
        double share = scale.share(Math.max(0, value));
        double held = Math.max(0, Math.min(1, share));
        return HEIGHT - BOTTOM - held * (HEIGHT - TOP - BOTTOM);
    }
}
