package darkrim.present;

import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.OrderLight.Evidence;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The curves of one azimuth on a logarithmic scale. Painted by hand: the chart library draws no error bar on such a scale that reaches down to 0, and
 * has no mark for a bound.
 */
final class RejectionPanel {
    private static final int LEFT = 90;
    private static final int RIGHT = 160;
    private static final int TOP = 34;
    private static final int LOW = 52;
    private static final Color STRIP_GROUND = new Color(0xf6f6f6);

    /** Between marks of one angle that would hide each other, px. */
    private static final double APART = 9;

    private final RejectionResult result;
    private final double azimuth;
    private final List<RejectionPoint> points;
    private RejectionScale scale;

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
        scale = RejectionScale.of(points, LEFT, width - LEFT - RIGHT, TOP, height - TOP - LOW - RejectionScale.STRIP);
        axes(graphics);
        for (int order = 0; order <= result.settings().most(); order++) {
            curve(graphics, order);
            legend(graphics, order);
        }
    }

    private void axes(Graphics2D graphics) {
        graphics.setFont(ChartSheet.font(Font.PLAIN, 11));
        graphics.setColor(STRIP_GROUND);
        graphics.fill(new Rectangle2D.Double(LEFT, TOP + scale.high(), scale.wide(), RejectionScale.STRIP));
        for (int decade = scale.bottom(); decade <= scale.top(); decade++) {
            double at = scale.decade(decade);
            graphics.setColor(new Color(0xe4e4e4));
            graphics.setStroke(new BasicStroke(0.7f));
            graphics.draw(new Line2D.Double(LEFT, at, LEFT + scale.wide(), at));
            label(graphics, decade == 0 ? "1" : decade == 1 ? "10" : "1e" + decade, at);
        }
        label(graphics, "less", scale.less());
        label(graphics, "0, proved", scale.proved());
        int low = (int) scale.proved();
        double step = PlotAxes.step((scale.to() - scale.from()) / 10);
        for (long i = (long) Math.ceil(scale.from() / step); i * step <= scale.to(); i++) {
            double at = scale.x(i * step);
            graphics.draw(new Line2D.Double(at, low, at, low + 5));
            String label = Figures.limit(i * step);
            graphics.drawString(label, (float) at - graphics.getFontMetrics().stringWidth(label) / 2f, low + 18);
        }
        graphics.setColor(ChartSheet.PALE);
        graphics.draw(new Rectangle2D.Double(LEFT, TOP, scale.wide(), scale.high() + RejectionScale.STRIP));
        graphics.setColor(ChartSheet.INK);
        graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
        graphics.drawString("angle off axis, deg", LEFT + scale.wide() / 2 - 50, low + 38);
        graphics.rotate(-Math.PI / 2);
        graphics.drawString("irradiance over that of the source", -(TOP + scale.high() / 2 + 95), 14);
        graphics.rotate(Math.PI / 2);
    }

    private static void label(Graphics2D graphics, String label, double at) {
        graphics.setColor(ChartSheet.INK);
        graphics.drawString(label, LEFT - 8 - graphics.getFontMetrics().stringWidth(label), (float) at + 4);
    }

    private void curve(Graphics2D graphics, int order) {
        OrderMark mark = new OrderMark(order);
        graphics.setColor(mark.colour());
        Path2D line = new Path2D.Double();
        boolean drawing = false;
        for (RejectionPoint point : points) {
            OrderLight light = point.orders().get(order);
            double x = across(point, light);
            boolean shown = light.evidence() == Evidence.SAMPLED && scale.place(light) == RejectionScale.Place.SCALE;
            if (shown) {
                double y = scale.y(light.value());
                if (drawing) {
                    line.lineTo(x, y);
                } else {
                    line.moveTo(x, y);
                }
                graphics.setStroke(new BasicStroke(1.2f));
                graphics.draw(new Line2D.Double(
                        x, scale.y(light.value() + 2 * light.error()), x, scale.y(light.value() - 2 * light.error())));
                graphics.fill(mark.at(x, y));
            } else {
                beside(graphics, mark, light, x);
            }
            drawing = shown;
        }
        graphics.setStroke(new BasicStroke(1.6f));
        graphics.draw(line);
    }

    /** What has no place on the scale, or a bound only. */
    private void beside(Graphics2D graphics, OrderMark mark, OrderLight light, double x) {
        if (light.evidence() == Evidence.PROVED) {
            graphics.fill(mark.at(x, scale.proved()));
        } else if (light.evidence() == Evidence.SAMPLED) {
            graphics.setStroke(new BasicStroke(1.2f));
            graphics.draw(mark.at(x, scale.less()));
        } else if (light.isBounded()) {
            arrow(graphics, x, scale.y(light.atMost()));
        } else {
            // Nothing is known: it may be anywhere.
            graphics.drawString("?", (float) (x - 3), TOP + scale.high() - 4);
        }
    }

    /** What lies on the scale stands at its angle; what would hide each other stands side by side about it. */
    private double across(RejectionPoint point, OrderLight light) {
        double x = scale.x(point.offAxis());
        RejectionScale.Place place = scale.place(light);
        if (place == RejectionScale.Place.SCALE) {
            return x;
        }
        List<OrderLight> there = point.orders().stream()
                .filter(each -> scale.place(each) == place)
                .toList();
        return x + (there.indexOf(light) - (there.size() - 1) / 2.0) * Math.min(APART, room() / there.size());
    }

    /** From an angle to the nearest other one, px. */
    private double room() {
        return IntStream.range(1, points.size())
                .mapToDouble(i -> scale.x(points.get(i).offAxis())
                        - scale.x(points.get(i - 1).offAxis()))
                .min()
                .orElse(scale.wide());
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

    private void legend(Graphics2D graphics, int order) {
        OrderMark mark = new OrderMark(order);
        double y = TOP + 12 + 22.0 * order;
        double x = LEFT + scale.wide() + 20;
        graphics.setColor(mark.colour());
        graphics.fill(mark.at(x, y - 4));
        graphics.setColor(ChartSheet.INK);
        graphics.setFont(ChartSheet.font(Font.PLAIN, 12));
        graphics.drawString(RejectionReport.word(order), (float) x + 12, (float) y);
    }
}
