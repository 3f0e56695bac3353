package darkrim.present;

import darkrim.assembly.Feasibility;
import darkrim.assembly.SideFeasibility;
import java.util.List;
import java.util.stream.Collectors;

/** A line for each opening: what geometry alone says before any ray. */
final class FeasibilitySection {
    private FeasibilitySection() {}

    static void write(Prose page, List<Feasibility> lines, boolean everything) {
        if (lines.isEmpty()) {
            return;
        }
        page.heading("Feasibility of the openings, before any ray (lengths in mm)");
        Table table = new Table()
                .names("opening")
                .names("above")
                .words("as drawn")
                .words("side")
                .numbers("lands at")
                .numbers("die ends")
                .numbers("spare")
                .numbers("h")
                .numbers("h limit");
        for (Feasibility line : lines) {
            SideFeasibility side = line.tightest();
            table.row(
                    Printable.of(line.opening()),
                    Printable.of(line.die()),
                    line.holds() ? "holds" : line.fails() ? "fails" : "not judged",
                    side.side().label(),
                    fixed(side.overspill()),
                    fixed(side.room()),
                    line.vignettingMargin().map(FeasibilitySection::fixed).orElse("not convex"),
                    fixed(side.edgeHeight()),
                    fixed(side.ruleLimit()));
        }
        page.table(table);
        Feasibility first = lines.get(0);
        page.paragraph(
                "Of each opening the tightest side. Direct light lands, and the die ends, that far beyond the last active "
                        + "pixel. Spare: by how much the opening clears the rays to the active corners; negative where it cuts "
                        + "them. Placement error t = " + Figures.length(first.placementError()) + " a side"
                        + (first.placementStated() ? "" : " (none is stated)")
                        + " is included. Some opening can do both, show the whole pupil and keep the edge of the die dark, "
                        + "only if the edge is no higher than h limit = N (d - 2t), with f-number N and d where the die ends. h is"
                        + " the height above the die of " + edges(lines) + ".");
        if (everything) {
            lines.forEach(line -> page.paragraph("- ", "  ", Printable.of(line.text())));
        }
    }

    /** Which edges stop the light, in words: of a land one end or the other. */
    private static String edges(List<Feasibility> lines) {
        return lines.stream()
                .map(line -> line.tightest().edge().words())
                .distinct()
                .collect(Collectors.joining(" or "));
    }

    private static String fixed(double millimetres) {
        return String.format(java.util.Locale.ROOT, "%.3f", millimetres);
    }
}
