package darkrim.present;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.List;

/**
 * How light after some number of reflections is marked in a chart. Of the numbers that can be asked for, 0 to 8, no two share a shape or a colour.
 *
 * @param order number of reflections
 */
record OrderMark(int order) {
    private static final List<Color> COLOURS = List.of(
            new Color(0xb8860b),
            new Color(0x1f4e79),
            new Color(0x8b2f6b),
            new Color(0x2e7d5b),
            new Color(0x9a3b1f),
            new Color(0x5a5f66),
            new Color(0x2f9fd0),
            new Color(0xd0658f),
            new Color(0x1a1a1a));

    private static final double RADIUS = 4;

    /** Corners about the middle, x and y in turn, px; the first mark is a circle and has none. */
    private static final double[][] CORNERS = {
        {},
        {-3.6, -3.6, 3.6, -3.6, 3.6, 3.6, -3.6, 3.6},
        {-4.5, 3.8, 0, -4.6, 4.5, 3.8},
        {0, -5.2, 5.2, 0, 0, 5.2, -5.2, 0},
        {-4.5, -3.8, 0, 4.6, 4.5, -3.8},
        {
            -1.6, -4.8, 1.6, -4.8, 1.6, -1.6, 4.8, -1.6, 4.8, 1.6, 1.6, 1.6, 1.6, 4.8, -1.6, 4.8, -1.6, 1.6, -4.8, 1.6,
            -4.8, -1.6, -1.6, -1.6
        },
        {-4.4, -4.4, 4.4, -4.4, -4.4, 4.4, 4.4, 4.4},
        {-4.4, -4.4, -4.4, 4.4, 4.4, -4.4, 4.4, 4.4},
        {-2, -5.5, 2, -5.5, 2, 5.5, -2, 5.5}
    };

    Color colour() {
        return COLOURS.get(order % COLOURS.size());
    }

    /** Its outline about a point. */
    Shape at(double x, double y) {
        double[] corners = CORNERS[order % CORNERS.length];
        if (corners.length == 0) {
            return new Ellipse2D.Double(x - RADIUS, y - RADIUS, 2 * RADIUS, 2 * RADIUS);
        }
        Path2D path = new Path2D.Double();
        path.moveTo(x + corners[0], y + corners[1]);
        for (int i = 2; i < corners.length; i += 2) {
            path.lineTo(x + corners[i], y + corners[i + 1]);
        }
        path.closePath();
        return path;
    }
}
