package darkrim.present;

import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * The curves of one azimuth on a logarithmic scale. Painted by hand: the chart library draws no error bar on such a scale that reaches down to 0, and
 * has no mark for a bound.
 */
final class RejectionPanel {
    private static final int LEFT = 90;
    private static final int RIGHT = 160;
    private static final int TOP = 34;
    private static final int LOW = 52;
    /** Decades that are drawn at most. */
    private static final int DECADES = 12;

    private static final List<Color> COLOURS = List.of(
            new Color(0xb8860b),
            new Color(0x1f4e79),
            new Color(0x8b2f6b),
            new Color(0x2e7d5b),
            new Color(0x9a3b1f),
            new Color(0x5a5f66));

    private final RejectionResult result;
    private final double azimuth;
    private final List<RejectionPoint> points;
    private int top;
    private int bottom;
    private double from;
    private double to;
    private int wide;
    private int high;

    RejectionPanel(RejectionResult result, double azimuth) {
        this.result = result;
        this.azimuth = azimuth;
        points = result.points().stream()
                .filter(point -> point.azimuth() == azimuth)
                .toList();
    }

    void paint(Graphics2D graphics, int width, int height) {
        graphics.setColor(ChartSheet.INK);
        graphics.setFont(ChartSheet.font(Font.BOLD, 13));
        graphics.drawString("azimuth " + Figures.limit(azimuth) + " deg", LEFT, 20);
        if (points.isEmpty()) {
            graphics.drawString("not looked at", LEFT, 44);
            return;
        }
        wide = width - LEFT - RIGHT;
        high = height - TOP - LOW;
        scale();
        axes(graphics);
        for (int order = 0; order <= result.settings().most(); order++) {
            curve(graphics, order);
            legend(graphics, order);
        }
    }

    private void scale() {
        double largest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (RejectionPoint point : points) {
            for (OrderLight each : point.orders()) {
                double shown = each.evidence() == OrderLight.Evidence.NONE_FOUND ? each.atMost() : each.value();
                if (shown > 0 && shown < Double.POSITIVE_INFINITY) {
                    largest = Math.max(largest, shown);
                    least = Math.min(least, shown);
                }
            }
        }
        top = largest > 0 ? (int) Math.ceil(StrictMath.log10(largest) + 1e-9) : 0;
        bottom = largest > 0 ? Math.max(top - DECADES, (int) Math.floor(StrictMath.log10(least)) - 1) : -1;
        from = points.get(0).offAxis();
        to = points.get(points.size() - 1).offAxis();
        double side = to > from ? 0.03 * (to - from) : 1;
        from -= side;
        to += side;
    }

    private double x(double angle) {
        return LEFT + (angle - from) / (to - from) * wide;
    }

    private double y(double value) {
        double decade = Math.max(bottom, StrictMath.log10(Math.max(value, Double.MIN_NORMAL)));
        return TOP + (top - decade) / (top - bottom) * high;
    }

    private void axes(Graphics2D graphics) {
        graphics.setFont(ChartSheet.font(Font.PLAIN, 11));
        for (int decade = bottom; decade <= top; decade++) {
            double at = TOP + (double) (top - decade) / (top - bottom) * high;
            graphics.setColor(new Color(0xe4e4e4));
            graphics.setStroke(new BasicStroke(0.7f));
            graphics.draw(new Line2D.Double(LEFT, at, LEFT + wide, at));
            graphics.setColor(ChartSheet.INK);
            String label = decade == bottom ? "0, proved" : decade == 0 ? "1" : decade == 1 ? "10" : "1e" + decade;
            graphics.drawString(label, LEFT - 8 - graphics.getFontMetrics().stringWidth(label), (float) at + 4);
        }
        double step = PlotAxes.step((to - from) / 10);
        for (long i = (long) Math.ceil(from / step); i * step <= to; i++) {
            double at = x(i * step);
            graphics.draw(new Line2D.Double(at, TOP + high, at, TOP + high + 5));
            String label = Figures.limit(i * step);
            graphics.drawString(label, (float) at - graphics.getFontMetrics().stringWidth(label) / 2f, TOP + high + 18);
        }
        graphics.setColor(ChartSheet.PALE);
        graphics.draw(new Rectangle2D.Double(LEFT, TOP, wide, high));
        graphics.setColor(ChartSheet.INK);
        graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
        graphics.drawString("angle off axis, deg", LEFT + wide / 2 - 50, TOP + high + 38);
        graphics.rotate(-Math.PI / 2);
        graphics.drawString("irradiance over that of the source", -(TOP + high / 2 + 95), 14);
        graphics.rotate(Math.PI / 2);
    }

    private void curve(Graphics2D graphics, int order) {
        graphics.setColor(COLOURS.get(order % COLOURS.size()));
        Path2D line = new Path2D.Double();
        boolean drawing = false;
        for (RejectionPoint point : points) {
            OrderLight light = point.orders().get(order);
            double x = x(point.offAxis());
            if (light.evidence() == OrderLight.Evidence.SAMPLED) {
                double y = y(light.value());
                if (drawing) {
                    line.lineTo(x, y);
                } else {
                    line.moveTo(x, y);
                }
                drawing = true;
                graphics.setStroke(new BasicStroke(1.2f));
                graphics.draw(new Line2D.Double(
                        x, y(light.value() + 2 * light.error()), x, y(light.value() - 2 * light.error())));
                graphics.fill(mark(order, x, y));
            } else {
                drawing = false;
                if (light.evidence() == OrderLight.Evidence.PROVED) {
                    // Beside each other where several are proved.
                    graphics.fill(mark(order, x + 8 * (order - 1), TOP + high));
                } else if (light.isBounded()) {
                    arrow(graphics, x, y(light.atMost()));
                } else {
                    // Nothing is known: it may be anywhere.
                    graphics.drawString("?", (float) (x - 3 + 8 * (order - 1)), (float) (TOP + high - 4));
                }
            }
        }
        graphics.setStroke(new BasicStroke(1.6f));
        graphics.draw(line);
    }

    private static void arrow(Graphics2D graphics, double x, double y) {
        graphics.setStroke(new BasicStroke(1.4f));
        graphics.draw(new Line2D.Double(x - 4, y, x + 4, y));
        graphics.draw(new Line2D.Double(x, y, x, y + 14));
        Path2D head = new Path2D.Double();
        head.moveTo(x - 3.5, y + 10);
        head.lineTo(x, y + 17);
        head.lineTo(x + 3.5, y + 10);
        head.closePath();
        graphics.fill(head);
    }

    private static Shape mark(int order, double x, double y) {
        if (order % 3 == 0) {
            return new Ellipse2D.Double(x - 4, y - 4, 8, 8);
        }
        if (order % 3 == 1) {
            return new Rectangle2D.Double(x - 3.6, y - 3.6, 7.2, 7.2);
        }
        Path2D triangle = new Path2D.Double();
        triangle.moveTo(x - 4.5, y + 3.8);
        triangle.lineTo(x, y - 4.6);
        triangle.lineTo(x + 4.5, y + 3.8);
        triangle.closePath();
        return triangle;
    }

    private void legend(Graphics2D graphics, int order) {
        double y = TOP + 12 + 22.0 * order;
        double x = LEFT + wide + 20;
        graphics.setColor(COLOURS.get(order % COLOURS.size()));
        graphics.fill(mark(order, x, y - 4));
        graphics.setColor(ChartSheet.INK);
        graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
        graphics.drawString(RejectionReport.word(order), (float) x + 12, (float) y);
    }
}
