package darkrim.present;

import darkrim.study.rejection.OrderLight;
import darkrim.study.rejection.RejectionPoint;
import darkrim.study.rejection.RejectionResult;
import java.util.List;

/**
 * A rejection curve as plain text.
 *
 * @param version version of the program
 */
public record RejectionReport(String version) {
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
        page.line("samples    " + Figures.count(result.settings().samples())
                + " for each number and surface; bounds at a confidence of " + Figures.confidence(result.confidence()));
        page.line("receivers  " + Figures.counted(result.receivers().size(), "surface") + " that "
                + Printable.of(result.settings().onto()) + " selects, together");
        for (double azimuth : result.settings().azimuths()) {
            table(page, result, azimuth);
        }
        notes(page, result);
        return page.text();
    }

    private static void table(Page page, RejectionResult result, double azimuth) {
        page.heading("Azimuth " + Figures.limit(azimuth) + " deg");
        Table table = new Table().numbers("angle, deg");
        for (int order = 0; order <= result.settings().most(); order++) {
            table.numbers(word(order));
        }
        table.numbers("all of these");
        boolean watts = result.settings().irradiance().isPresent();
        if (watts) {
            table.numbers("W/m2");
        }
        for (RejectionPoint point : result.points()) {
            if (point.azimuth() != azimuth) {
                continue;
            }
            List<String> cells = new java.util.ArrayList<>();
            cells.add(Figures.limit(point.offAxis()));
            point.orders().forEach(each -> cells.add(words(each)));
            double total = point.total();
            boolean none = total == 0;
            cells.add(none ? none(point.atMost(), 1) : Figures.withError(total, point.error()));
            if (watts) {
                double unit = result.settings().irradiance().getAsDouble();
                cells.add(none ? none(point.atMost(), unit) : Figures.three(unit * total));
            }
            table.row(cells.toArray(String[]::new));
        }
        page.block(table.text());
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
