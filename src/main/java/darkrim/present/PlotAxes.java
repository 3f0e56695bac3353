package darkrim.present;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A square plot of the pupil's plane, to the same scale both ways, with ticks in mm. Right is the pupil's u; up is its -v, which are x and y
 * of the outline as it is written in a layout.
 *
 * @param left left border, px
 * @param top upper border, px
 * @param side length of a side, px
 * @param middleU what stands in the middle, mm
 * @param middleV likewise
 * @param range length of a side, mm
 */
record PlotAxes(double left, double top, double side, double middleU, double middleV, double range) {
    private static final double MARGIN = 1.12;
    private static final int MOST_TICKS = 8;
    private static final double TICK = 6;

    /** A plot that holds an outline. */
    static PlotAxes around(Outline outline, double left, double top, double side) {
        if (outline instanceof Ring ring) {
            return new PlotAxes(left, top, side, 0, 0, 2 * MARGIN * ring.radius());
        }
        double[] u = ((Polygon) outline)
                .corners().stream().mapToDouble(Vector2D::getX).sorted().toArray();
        double[] v = ((Polygon) outline)
                .corners().stream().mapToDouble(Vector2D::getY).sorted().toArray();
        int last = u.length - 1;
        return new PlotAxes(
                left,
                top,
                side,
                (u[0] + u[last]) / 2,
                (v[0] + v[last]) / 2,
                MARGIN * Math.max(u[last] - u[0], v[last] - v[0]));
    }

    /** Pixels in a millimetre. */
    double scale() {
        return side / range;
    }

    /** From u, v in mm to the page. */
    String transform() {
        double s = scale();
        return "translate(" + Svg.number(left + side / 2 - s * middleU) + " " + Svg.number(top + side / 2 - s * middleV)
                + ") scale(" + Svg.number(s) + ")";
    }

    /** Draws the frame, ticks and their labels. */
    void write(Svg svg, String acrossLabel, String upLabel) {
        double bottom = top + side;
        svg.shape(
                "rect",
                "x",
                Svg.number(left),
                "y",
                Svg.number(top),
                "width",
                Svg.number(side),
                "height",
                Svg.number(side),
                "fill",
                "none",
                "stroke",
                "#333333");
        double step = step(range / MOST_TICKS);
        for (long i = first(middleU, step); i * step <= middleU + range / 2; i++) {
            double x = left + side / 2 + scale() * (i * step - middleU);
            line(svg, x, bottom, x, bottom + TICK);
            label(svg, x, bottom + TICK + 14, "middle", Figures.limit(i * step));
        }
        // Upward is -v.
        for (long i = first(-middleV, step); i * step <= -middleV + range / 2; i++) {
            double y = top + side / 2 - scale() * (i * step + middleV);
            line(svg, left - TICK, y, left, y);
            label(svg, left - TICK - 4, y + 4, "end", Figures.limit(i * step));
        }
        label(svg, left + side / 2, bottom + 42, "middle", acrossLabel);
        double x = left - 58;
        double y = top + side / 2;
        svg.words(
                "text",
                upLabel,
                "x",
                Svg.number(x),
                "y",
                Svg.number(y),
                "font-size",
                "12",
                "text-anchor",
                "middle",
                "transform",
                "rotate(-90 " + Svg.number(x) + " " + Svg.number(y) + ")");
    }

    private long first(double middle, double step) {
        return (long) Math.ceil((middle - range / 2) / step);
    }

    /** The least of 1, 2, 5 times a power of ten that is not less. */
    static double step(double least) {
        double power = StrictMath.pow(10, Math.floor(StrictMath.log10(least)));
        for (double times : new double[] {1, 2, 5}) {
            if (times * power >= least) {
                return times * power;
            }
        }
        return 10 * power;
    }

    private static void line(Svg svg, double x1, double y1, double x2, double y2) {
        svg.shape(
                "line",
                "x1",
                Svg.number(x1),
                "y1",
                Svg.number(y1),
                "x2",
                Svg.number(x2),
                "y2",
                Svg.number(y2),
                "stroke",
                "#333333");
    }

    private static void label(Svg svg, double x, double y, String anchor, String words) {
        svg.words("text", words, "x", Svg.number(x), "y", Svg.number(y), "font-size", "12", "text-anchor", anchor);
    }
}
