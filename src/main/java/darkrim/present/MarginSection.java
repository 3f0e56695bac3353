package darkrim.present;

import darkrim.shadow.OpeningMargin;
import darkrim.shadow.OpeningMargin.Extent;
import darkrim.shadow.OpeningMargin.Room;
import darkrim.study.CheckResult;
import darkrim.study.MarginScope;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** By how much direct light keeps clear of what must be dark: a row for each requirement, then for each opening. */
final class MarginSection {
    /** What margins say where meshes stand for curved surfaces. */
    static final String OF_FACETS =
            "Clearances and how far openings can be moved are those of the facets, not of the curved surfaces they stand for.";

    private MarginSection() {}

    static void write(Prose page, CheckResult result, boolean everything) {
        if (result.margins().scope() == MarginScope.NONE) {
            return;
        }
        least(page, result);
        List<OpeningMargin> openings = everything
                ? result.margins().openings()
                : tightest(result.margins().openings());
        if (!openings.isEmpty()) {
            page.space();
            openings(page, openings, everything);
        }
    }

    /** The least of each requirement. */
    static void least(Prose page, CheckResult result) {
        page.heading("Margins of direct light (mm)");
        if (result.margins().stopped()) {
            page.paragraph("Stopped before all were found; what is missing is not known to be large.");
        }
        requirements(page, result);
    }

    private static void requirements(Prose page, CheckResult result) {
        Table table = new Table()
                .names("requirement")
                .numbers("margin")
                .names("least at")
                .names("set by");
        boolean found = false;
        boolean unexplained = false;
        for (RequirementResult each : result.judgement().requirements()) {
            Optional<Outcome> least = each.leastMargin();
            if (least.isPresent()) {
                found = true;
                LightMargin margin = least.get().evidence().margin().orElseThrow();
                unexplained |= margin.isUnexplained();
                table.row(
                        Printable.of(each.requirement().name()),
                        (margin.atLeast() || margin.isUnexplained() ? ">= " : "")
                                + Figures.margin(margin.millimetres()),
                        margin.atLeast() ? "all" : Printable.of(least.get().where()),
                        margin.isUnexplained() ? "(no edge found)" : EdgeName.of(margin.setBy()));
            }
        }
        if (found) {
            page.table(table);
            page.paragraph(
                    "Of dark surfaces the clearance: each can be moved by as much in every direction and is still "
                            + "proved dark. Negative: how far light reaches into the worst of the lit ones, in its plane. "
                            + "docs/margins.md says what each promises."
                            + (unexplained
                                    ? " (no edge found): the proof ends there without an edge that explains it; the surface may"
                                            + " have more room."
                                    : ""));
            doubt(page, result);
        }
    }

    /** Names the requirements whose clearance is that of facets which prove nothing. */
    private static void doubt(Prose page, CheckResult result) {
        String names = result.judgement().requirements().stream()
                .filter(each -> each.outcomes().stream().anyMatch(Outcome::isDarknessInDoubt))
                .map(each -> Printable.of(each.requirement().name()))
                .collect(Collectors.joining(", "));
        if (!names.isEmpty()) {
            page.paragraph("In doubt: " + names
                    + ". A clearance there is how far surfaces that are dark behind the facets can be"
                    + " moved and still are, which is no proof. " + OF_FACETS);
        }
    }

    /** Of each opening what has the least room outward and what has the least inward, in one row. */
    private static List<OpeningMargin> tightest(List<OpeningMargin> all) {
        Map<String, List<OpeningMargin>> byOpening = new LinkedHashMap<>();
        all.forEach(each -> byOpening
                .computeIfAbsent(each.opening(), name -> new ArrayList<>())
                .add(each));
        return byOpening.values().stream().map(MarginSection::tightestOf).toList();
    }

    private static OpeningMargin tightestOf(List<OpeningMargin> all) {
        OpeningMargin out = least(all, OpeningMargin::outward);
        OpeningMargin in = least(all, OpeningMargin::inward);
        return new OpeningMargin(out.opening(), out.extent(), out.sides(), out.outward(), in.inward());
    }

    private static OpeningMargin least(List<OpeningMargin> all, Function<OpeningMargin, Optional<Room>> room) {
        return all.stream()
                .min(Comparator.comparingDouble(
                        each -> room.apply(each).map(Room::millimetres).orElse(Double.POSITIVE_INFINITY)))
                .orElseThrow();
    }

    private static void openings(Prose page, List<OpeningMargin> openings, boolean everything) {
        Table table = new Table()
                .names("opening")
                .words("moved")
                .numbers("outward")
                .names("then lit")
                .numbers("inward")
                .names("then cut off");
        for (OpeningMargin each : openings) {
            table.row(
                    Printable.of(each.opening()),
                    moved(each),
                    each.outward().map(MarginSection::words).orElse("-"),
                    Printable.of(each.outward().map(Room::surface).orElse("")),
                    each.inward().map(MarginSection::words).orElse("-"),
                    Printable.of(each.inward().map(Room::surface).orElse("")));
        }
        page.table(table);
        boolean open = openings.stream()
                .anyMatch(each -> each.outward().filter(Room::atLeast).isPresent());
        page.paragraph(
                "How far that side, or those or all together, can be moved with land and bevel, all else as it is: "
                        + "outward before the next surface gets light that must not, inward before a detector loses part of the "
                        + "pupil behind them, other parts left out. Negative: how far the other way to mend it; outward counts what this alone can make dark."
                        + (open
                                ? " With >= outward, the surface beside it is no longer proved dark farther out, and need not"
                                        + " be lit."
                                : "")
                        + (everything
                                ? ""
                                : " Of each opening the least of all sides and corners (" + page.whole() + ")."));
    }

    private static String moved(OpeningMargin margin) {
        return margin.extent() == Extent.WHOLE ? "all" : String.join(" ", margin.sides());
    }

    private static String words(Room room) {
        return (room.atLeast() ? ">= " : "") + Figures.margin(room.millimetres());
    }
}
