package darkrim.view.window;

import darkrim.view.parts.FlatMap;
import java.util.function.IntUnaryOperator;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;

/** What is painted on a flat map: cells, the line of a profile, the mark that keys move. */
final class MapPaint {
    private MapPaint() {}

    /**
     * The cells with a frame around them.
     *
     * @param argb the colour of a cell by its number
     */
    static void cells(GraphicsContext g, MapFrame frame, FlatMap flat, IntUnaryOperator argb) {
        int columns = flat.grid().columns();
        int rows = flat.grid().rows();
        double wide = frame.width() / columns;
        double high = frame.height() / rows;
        for (int cell : flat.map().cells().filled()) {
            g.setFill(Palette.colour(argb.applyAsInt(cell)));
            double left = MapFrame.EDGE + cell % columns * wide;
            double top = MapFrame.EDGE + (rows - 1 - cell / columns) * high;
            // Half a pixel more, so that no seam shows.
            g.fillRect(left, top, wide + 0.5, high + 0.5);
        }
        g.setStroke(Overlay.INK);
        g.setLineWidth(1);
        g.strokeRect(MapFrame.EDGE - 0.5, MapFrame.EDGE - 0.5, frame.width() + 1, frame.height() + 1);
    }

    /** The line of a profile, with a dot where it begins; ends in pixels. */
    static void line(GraphicsContext g, double[] a, double[] b) {
        g.setStroke(Color.WHITE);
        g.setLineWidth(4);
        g.strokeLine(a[0], a[1], b[0], b[1]);
        g.setStroke(Overlay.INK);
        g.setLineWidth(2);
        g.strokeLine(a[0], a[1], b[0], b[1]);
        g.setFill(Overlay.INK);
        g.fillOval(a[0] - 4, a[1] - 4, 8, 8);
    }

    /** The mark that keys move; its place in pixels. */
    static void cross(GraphicsContext g, double[] at) {
        for (int i = 0; i < 2; i++) {
            g.setStroke(i == 0 ? Color.WHITE : Overlay.INK);
            g.setLineWidth(i == 0 ? 4 : 2);
            g.strokeLine(at[0] - 8, at[1], at[0] + 8, at[1]);
            g.strokeLine(at[0], at[1] - 8, at[0], at[1] + 8);
        }
    }
}
