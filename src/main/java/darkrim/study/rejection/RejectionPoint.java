package darkrim.study.rejection;

import java.util.List;

/**
 * A direction of the body and what arrives from it.
 *
 * @param azimuth direction about z, degrees
 * @param offAxis angle from +z, degrees
 * @param orders light by the number of reflections, from 0
 */
public record RejectionPoint(double azimuth, double offAxis, List<OrderLight> orders) {
    /** Copies the list. */
    public RejectionPoint {
        orders = List.copyOf(orders);
    }

    /** All light that was found together, over the irradiance of the body; it may be more by {@link #leftOut}. */
    public double total() {
        return orders.stream().mapToDouble(OrderLight::value).sum();
    }

    /** Standard error of the total. From two reflections on the same walks are counted, so that errors may hang together: they add up. */
    public double error() {
        double square = 0;
        double together = 0;
        for (OrderLight each : orders) {
            if (each.order() < 2) {
                square += each.error() * each.error();
            } else {
                together += each.error();
            }
        }
        return Math.sqrt(square + together * together);
    }

    /** The sum of the bounds of those orders of which none was found; infinite where one is missing. */
    public double leftOut() {
        return orders.stream()
                .filter(each -> each.evidence() == OrderLight.Evidence.NONE_FOUND)
                .mapToDouble(OrderLight::atMost)
                .sum();
    }

    /** The sum of the bounds; infinite where one is missing. */
    public double atMost() {
        return orders.stream().mapToDouble(OrderLight::atMost).sum();
    }
}
