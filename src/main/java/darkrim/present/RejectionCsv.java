package darkrim.present;

import darkrim.study.journal.CsvLine;
import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import java.util.List;
import java.util.Locale;

/** A rejection curve as comma-separated values (RFC 4180): a line for each direction and number of reflections. */
public final class RejectionCsv {
    private RejectionCsv() {}

    /** All directions, with a header that names the units. */
    public static String of(RejectionResult result) {
        StringBuilder text = new StringBuilder(CsvLine.of(List.of(
                "azimuth [deg]",
                "off axis [deg]",
                "reflections",
                "evidence",
                "over source irradiance",
                "standard error",
                "at most")));
        for (RejectionPoint point : result.points()) {
            for (OrderLight each : point.orders()) {
                text.append(CsvLine.of(List.of(
                        String.valueOf(point.azimuth()),
                        String.valueOf(point.offAxis()),
                        String.valueOf(each.order()),
                        word(each),
                        String.valueOf(each.value()),
                        String.valueOf(each.error()),
                        each.isBounded() ? String.valueOf(each.atMost()) : "")));
            }
        }
        return text.toString();
    }

    /** The evidence as a word. */
    public static String word(OrderLight light) {
        return light.evidence().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
