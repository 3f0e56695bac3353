package darkrim.present;

import darkrim.assembly.OpeningShift;
import darkrim.layout.Cooldown;
import darkrim.layout.Requirement;
import darkrim.material.Material;
import darkrim.study.CheckResult;
import darkrim.study.CooldownResult;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.Comparator;
import java.util.List;

/** What the cool-down does: verdicts and margins warm and cold side by side, how far the openings move, and what contracts by how much. */
final class CooldownSection {
    private static final Rows OPENINGS = new Rows(6);

    private CooldownSection() {}

    static void write(Prose page, CheckResult result, Ink ink, boolean everything) {
        if (result.cooldown().isEmpty()) {
            return;
        }
        CooldownResult found = result.cooldown().get();
        Cooldown cooldown = found.cooldown();
        page.heading("Cool-down from " + Figures.limit(cooldown.drawnAt()) + " K to "
                + Figures.limit(cooldown.worksAt()) + " K");
        requirements(page, result, found, ink);
        openings(page, found.openings(), everything ? Rows.ALL : OPENINGS);
        materials(page, found);
    }

    private static void requirements(Prose page, CheckResult result, CooldownResult found, Ink ink) {
        Table table = new Table()
                .names("requirement")
                .words("warm", ink::cell)
                .words("cold", ink::cell)
                .numbers("margin warm")
                .numbers("margin cold");
        for (int i = 0; i < found.cold().size(); i++) {
            Requirement requirement = result.judgement().requirements().get(i).requirement();
            table.row(
                    Printable.of(requirement.name()),
                    word(found.warm().get(i)),
                    word(found.cold().get(i)),
                    MarginWords.withUnit(found.warm().get(i)),
                    MarginWords.withUnit(found.cold().get(i)));
        }
        page.table(table);
        page.paragraph(
                "The verdicts above are those of the cold shape. Of a clearance the cold column has the least of all that it"
                        + " asks. Margins without a unit are relative irradiance. The margins do not include how well the contractions"
                        + " are known.");
    }

    private static String word(RequirementMargin margin) {
        return margin.verdict().map(Verdict::name).orElse("");
    }

    private static void openings(Prose page, List<OpeningShift> openings, Rows rows) {
        if (openings.isEmpty()) {
            return;
        }
        page.space();
        Table table = new Table()
                .names("opening")
                .numbers("+x")
                .numbers("-x")
                .numbers("+y")
                .numbers("-y")
                .numbers("known to +-");
        List<OpeningShift> sorted = openings.stream()
                .sorted(Comparator.comparingDouble(each -> -largest(each)))
                .toList();
        for (OpeningShift each : rows.shown(sorted)) {
            List<OpeningShift.Side> sides = each.sides();
            table.row(
                    Printable.of(each.opening()),
                    moved(sides.get(0)),
                    moved(sides.get(1)),
                    moved(sides.get(2)),
                    moved(sides.get(3)),
                    uncertainty(each));
        }
        page.table(table);
        if (rows.left(sorted) > 0) {
            page.line("and " + rows.left(sorted) + " more (" + page.whole() + ")");
        }
        page.paragraph(
                "How far, in mm, the edges of each opening move outward (+) or inward (-) against the edges of the die below it,"
                        + " at the level of its land; largest first. The last column is from the accuracies below, all at their worst"
                        + " together, for the side for which it is largest.");
    }

    private static double largest(OpeningShift shift) {
        return shift.sides().stream()
                .mapToDouble(side -> Math.abs(side.moved()))
                .max()
                .orElse(0);
    }

    private static String moved(OpeningShift.Side side) {
        // What is below a nanometre is rounding.
        return Math.abs(side.moved()) < 1e-6 ? "0" : (side.moved() > 0 ? "+" : "") + Figures.margin(side.moved());
    }

    private static String uncertainty(OpeningShift shift) {
        double most = 0;
        for (OpeningShift.Side side : shift.sides()) {
            most = Double.isNaN(side.uncertainty()) ? Double.NaN : Math.max(most, side.uncertainty());
            if (Double.isNaN(most)) {
                return "not stated";
            }
        }
        return Figures.margin(most);
    }

    private static void materials(Prose page, CooldownResult found) {
        page.space();
        for (Material material : found.materials()) {
            Cooldown cooldown = found.cooldown();
            double share = material.contraction().between(cooldown.drawnAt(), cooldown.worksAt());
            double accuracy = material.contraction().accuracy(cooldown.worksAt());
            page.paragraph(
                    "",
                    "  ",
                    Printable.of(material.name()) + ": contracts by " + Figures.three(1000 * share)
                            + " mm a metre, known to "
                            + (Double.isNaN(accuracy)
                                    ? "an accuracy that is not stated"
                                    : "+-" + Figures.three(100 * accuracy) + " %")
                            + (material.source().isEmpty() ? "" : "; " + Printable.of(material.source())) + ".");
        }
        page.paragraph(
                "Each part contracts alike in all directions about the point where it is held. The pupil, the field and the"
                        + " coordinates of the layout stay.");
    }
}
