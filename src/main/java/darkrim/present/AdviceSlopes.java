package darkrim.present;

import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.advice.Advice;
import darkrim.study.advice.FreeDimension;
import darkrim.study.advice.Slope;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Of advice: how the margin of each requirement that does not pass follows each dimension. */
final class AdviceSlopes {
    private static final String UNKNOWN = "not known";

    private AdviceSlopes() {}

    static void write(Page page, Advice advice) {
        if (advice.slopes().isEmpty()) {
            return;
        }
        page.heading("Slopes: what a margin gains for 1 mm or 1 deg more");
        Table table = new Table().names("requirement").names("dimension").numbers("slope");
        List<String> flat = new ArrayList<>();
        boolean someUnknown = false;
        for (RequirementMargin wanting : advice.wanting()) {
            String name = Printable.of(wanting.requirement());
            List<Slope> own = advice.slopes().stream()
                    .filter(slope -> slope.requirement().equals(wanting.requirement()))
                    .toList();
            List<Slope> unknown =
                    own.stream().filter(slope -> Double.isNaN(slope.perUnit())).toList();
            someUnknown |= !unknown.isEmpty();
            List<Slope> telling = own.stream().filter(AdviceSlopes::tells).toList();
            if (!own.isEmpty() && unknown.size() == own.size()) {
                table.row(name, "all", UNKNOWN);
                continue;
            }
            if (telling.isEmpty() && unknown.isEmpty() && !own.isEmpty()) {
                flat.add(name);
                table.row(name, "all", "0");
            }
            telling.forEach(slope -> table.row(name, Printable.of(slope.dimension()), words(advice, slope)));
            unknown.forEach(slope -> table.row(name, Printable.of(slope.dimension()), UNKNOWN));
        }
        page.block(table.text());
        page.space();
        page.paragraph("Dimensions that are not named make no difference that can be told from none.");
        if (someUnknown) {
            page.paragraph(
                    "Not known: a little beside the value there is no margin to compare, as of a curved surface that"
                            + " is lit, or no such layout. It may make all the difference; the smallest changes above tell more.");
        }
        if (!flat.isEmpty()) {
            page.paragraph("A slope of 0 for " + String.join(", ", flat)
                    + ": a small change makes no difference yet, as where a surface is lit all over; the smallest changes"
                    + " above tell more.");
        }
    }

    /** Whether there is a slope at all: sampled ones by three standard errors. */
    private static boolean tells(Slope slope) {
        return Math.abs(slope.perUnit()) > 3 * slope.standardError();
    }

    private static String words(Advice advice, Slope slope) {
        Optional<FreeDimension> dimension = advice.dimensions().stream()
                .filter(each -> each.name().equals(slope.dimension()))
                .findFirst();
        String unit = dimension.map(FreeDimension::unit).orElse("");
        String per = unit.isEmpty() ? " per 1" : " per " + unit;
        return slope.unit() == MarginUnit.MILLIMETRES
                ? Figures.three(slope.perUnit()) + " mm" + per
                : Figures.withError(slope.perUnit(), slope.standardError()) + per;
    }
}
