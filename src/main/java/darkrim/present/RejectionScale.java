package darkrim.present;

import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.RejectionPoint;
import java.util.List;

/**
 * Where a rejection curve is drawn: angles across, light on a logarithmic scale. The scale ends at its last decade. Below it is a strip for what was found and
 * is less, and below that, apart from all else, the line of what is proved to be 0.
 *
 * @param left left border, px
 * @param wide width, px
 * @param upper upper border, px
 * @param high height down to the last decade, px
 * @param from angle at the left border, degrees
 * @param to angle at the right border, degrees
 * @param top power of ten at the upper border
 * @param bottom power of ten of the last decade, less than the top
 */
record RejectionScale(int left, int wide, int upper, int high, double from, double to, int top, int bottom) {
    /** Height of the strip, px: an arrow down from the last decade ends in it. */
    static final int STRIP = 40;

    /** Decades that are drawn at most. */
    private static final int DECADES = 12;

    private static final double SIDE = 0.03;

    /** Parts of a panel. */
    enum Place {
        SCALE,
        /** Below the last decade. */
        LESS,
        PROVED,
        /** No bound is known. */
        ANYWHERE
    }

    /**
     * A scale that holds points.
     *
     * @param points at least one, by angle
     */
    static RejectionScale of(List<RejectionPoint> points, int left, int wide, int upper, int high) {
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
        int top = largest > 0 ? (int) Math.ceil(StrictMath.log10(largest) + 1e-9) : 0;
        int bottom = largest > 0 ? Math.max(top - DECADES, (int) Math.floor(StrictMath.log10(least))) : -1;
        double from = points.get(0).offAxis();
        double to = points.get(points.size() - 1).offAxis();
        double side = to > from ? SIDE * (to - from) : 1;
        return new RejectionScale(left, wide, upper, high, from - side, to + side, top, bottom);
    }

    double x(double angle) {
        return left + (angle - from) / (to - from) * wide;
    }

    /** Where a value stands; on the last decade where it is less. */
    double y(double value) {
        return decade(Math.max(bottom, StrictMath.log10(Math.max(value, Double.MIN_NORMAL))));
    }

    double decade(double power) {
        return upper + (top - power) / (top - bottom) * high;
    }

    /** Where light stands, what is bounded by its bound. */
    Place place(OrderLight light) {
        double shown = light.evidence() == OrderLight.Evidence.SAMPLED ? light.value() : light.atMost();
        if (light.evidence() == OrderLight.Evidence.PROVED) {
            return Place.PROVED;
        }
        if (shown == Double.POSITIVE_INFINITY) {
            return Place.ANYWHERE;
        }
        return shown > 0 && StrictMath.log10(shown) >= bottom ? Place.SCALE : Place.LESS;
    }

    /** Where what is less than the scale shows stands. */
    double less() {
        return upper + high + STRIP / 2.0;
    }

    /** Where what is proved to be 0 stands. */
    double proved() {
        return upper + high + STRIP;
    }
}
