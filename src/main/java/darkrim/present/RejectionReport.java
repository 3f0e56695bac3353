package darkrim.present;

import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * A rejection curve as plain text.
 *
 * @param version version of the program
 */
public record RejectionReport(String version) {
    private static final String ANGLE = "angle, deg";
    private static final List<String> WORDS = List.of("direct", "once reflected", "twice reflected");

    /** The report, lines ended by a line feed. */
    public String of(RejectionResult result) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(result.layout()));
        page.paragraph("Irradiance of the receivers over that of the source, "
                + result.settings()
                        .source()
                        .map(name -> Printable.of(name) + ", ")
                        .orElse("")
                + Figures.limit(result.settings().body().diameter()) + " deg wide, by its angle off axis."
                + (result.stopped() ? " The work was stopped before its end." : ""));
        page.space();
        page.line("file       " + LayoutWords.file(result.layout()));
        page.line("program    Darkrim " + version + ", seed " + result.seed());
        page.line("samples    " + Figures.count(result.settings().samples()) + " for each number and surface");
        page.line("bounds     hold at a confidence of " + Figures.confidence(result.confidence())
                + ", all of a direction together");
        page.line("receivers  " + Figures.counted(result.receivers().size(), "surface") + " that "
                + Printable.of(result.settings().onto()) + " selects, together");
        for (double azimuth : result.settings().azimuths()) {
            tables(page, result, azimuth);
        }
        notes(page, result);
        return page.text();
    }

    /** The orders, and below them all of them together: side by side they would be wider than the page. */
    private static void tables(Page page, RejectionResult result, double azimuth) {
        page.heading("Azimuth " + Figures.limit(azimuth) + " deg");
        Table orders = new Table().numbers(ANGLE);
        for (int order = 0; order <= result.settings().most(); order++) {
            orders.numbers(word(order));
        }
        OptionalDouble unit = result.settings().irradiance();
        Table totals = new Table().numbers(ANGLE).numbers("all of these");
        if (unit.isPresent()) {
            totals.numbers("W/m2");
        }
        for (RejectionPoint point : result.points()) {
            if (point.azimuth() != azimuth) {
                continue;
            }
            String angle = Figures.limit(point.offAxis());
            orders.row(Stream.concat(Stream.of(angle), point.orders().stream().map(RejectionReport::words))
                    .toArray(String[]::new));
            String all = total(point, 1, Figures.withError(point.total(), point.error()));
            if (unit.isPresent()) {
                double watts = unit.getAsDouble();
                totals.row(angle, all, total(point, watts, Figures.three(watts * point.total())));
            } else {
                totals.row(angle, all);
            }
        }
        page.block(orders.text());
        page.space();
        page.block(totals.text());
    }

    /** The name of an order. */
    static String word(int order) {
        return order < WORDS.size() ? WORDS.get(order) : order + " times";
    }

    private static String words(OrderLight light) {
        return switch (light.evidence()) {
            case PROVED -> "0 (proved)";
            case SAMPLED -> Figures.withError(light.value(), light.error());
            case NONE_FOUND -> none(light.atMost(), 1);
        };
    }

    /** What was found, and how much more there may be of what was not. */
    private static String total(RejectionPoint point, double unit, String found) {
        double more = point.leftOut();
        if (point.total() == 0) {
            return none(more, unit);
        }
        if (more == 0) {
            return found;
        }
        return found + (more < Double.POSITIVE_INFINITY ? " + < " + Figures.atMost(unit * more) : " + ?");
    }

    /** What is said where nothing was found. */
    private static String none(double atMost, double unit) {
        if (atMost == 0) {
            return "0 (proved)";
        }
        return atMost < Double.POSITIVE_INFINITY ? "< " + Figures.atMost(unit * atMost) : "none found";
    }

    private static void notes(Page page, RejectionResult result) {
        page.heading("How to read this");
        page.paragraph(
                "'0 (proved)' is geometry: no such light arrives from this direction. '<' means that no sample found"
                        + " any, and that there is less than this. '+-' is a standard error.");
        if (result.points().stream().anyMatch(point -> point.total() > 0 && point.leftOut() > 0)) {
            page.paragraph(
                    "'A + < B': A was found; of the light of which no sample found any there may be up to B more, all numbers"
                            + " of reflections together. 'A + ?': there may be any amount more.");
        }
        if (result.settings().most() > 1) {
            page.paragraph(
                    result.shiny()
                            ? "CAUTION: this layout has mirrors or lobes. By two of them in turn the light of a small body comes in"
                                    + " full, and hardly any sample finds it: after two reflections or more there can be"
                                    + " far more light than is told here, whether some was found or none, and no bound is"
                                    + " stated."
                            : "Bounds of light after two reflections or more are those of the normal law, not proofs.");
        } else {
            page.paragraph("CAUTION: light after two reflections or more is not in it; --most 2 adds it.");
        }
        page.paragraph(
                "The light comes in wherever the parts, or the entrance of the source, leave it open. Light after"
                        + " more than " + Figures.counted(result.settings().most(), "reflection")
                        + ", diffraction and what lies in front of the parts are not in it.");
    }
}
