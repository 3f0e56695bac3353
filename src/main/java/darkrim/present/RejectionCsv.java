package darkrim.present;

import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import java.util.Locale;

/** A rejection curve as comma-separated values (RFC 4180, lines ended by a line feed): a line for each direction and number of reflections. */
public final class RejectionCsv {
    private RejectionCsv() {}

    /** All directions, with a header that names the units. */
    public static String of(RejectionResult result) {
        StringBuilder text = new StringBuilder(
                "azimuth [deg],off axis [deg],reflections,evidence,over source irradiance,standard error,at most\n");
        for (RejectionPoint point : result.points()) {
            for (OrderLight each : point.orders()) {
                text.append(point.azimuth())
                        .append(',')
                        .append(point.offAxis())
                        .append(',')
                        .append(each.order())
                        .append(',')
                        .append(word(each))
                        .append(',')
                        .append(each.value())
                        .append(',')
                        .append(each.error())
                        .append(',')
                        .append(each.isBounded() ? String.valueOf(each.atMost()) : "")
                        .append('\n');
            }
        }
        return text.toString();
    }

    /** The evidence as a word. */
    public static String word(OrderLight light) {
        return light.evidence().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
