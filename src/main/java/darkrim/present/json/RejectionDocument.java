package darkrim.present.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import darkrim.present.RejectionCsv;
import darkrim.scene.Surface;
import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import java.util.List;

/** The whole of a rejection curve; angles in degrees, light over the irradiance of the source. */
record RejectionDocument(
        int formatVersion,
        String study,
        ProgramDocument program,
        ResultDocument.LayoutDocument layout,
        long seed,
        double confidence,
        String source,
        @JsonProperty("diameter_deg") double diameter,
        @JsonProperty("irradiance_w_per_m2") Double irradiance,
        List<String> receivers,
        long samplesPerNumber,
        boolean stopped,
        List<Point> points,
        List<ResultDocument.Warning> warnings) {
    private static final int FORMAT_VERSION = 2;

    static RejectionDocument of(RejectionResult result, String version) {
        return new RejectionDocument(
                FORMAT_VERSION,
                "rejection",
                ProgramDocument.of(version),
                ResultDocument.LayoutDocument.of(result.layout()),
                result.seed(),
                result.confidence(),
                result.settings().source().orElse(null),
                result.settings().body().diameter(),
                result.settings().irradiance().isPresent()
                        ? result.settings().irradiance().getAsDouble()
                        : null,
                result.receivers().stream().map(Surface::name).toList(),
                result.settings().samples(),
                result.stopped(),
                result.points().stream().map(Point::of).toList(),
                result.warnings().stream().map(ResultDocument.Warning::of).toList());
    }

    /** A direction of the source. */
    record Point(
            @JsonProperty("azimuth_deg") double azimuth,
            @JsonProperty("off_axis_deg") double offAxis,
            List<Order> orders) {
        private static Point of(RejectionPoint point) {
            return new Point(
                    point.azimuth(),
                    point.offAxis(),
                    point.orders().stream().map(Order::of).toList());
        }
    }

    /** Light after some number of reflections. */
    record Order(int reflections, String evidence, double value, double standardError, Double atMost) {
        private static Order of(OrderLight light) {
            return new Order(
                    light.order(),
                    RejectionCsv.word(light),
                    light.value(),
                    light.error(),
                    light.isBounded() ? (Double) light.atMost() : null);
        }
    }
}
