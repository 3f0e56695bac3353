package darkrim.present;

import darkrim.layout.Dimension;
import darkrim.layout.FinishSpec;
import darkrim.layout.Quantity;
import darkrim.study.RequirementMargin;
import darkrim.study.comparison.Changed;
import darkrim.study.comparison.Comparison;
import darkrim.study.comparison.Failing;
import darkrim.study.comparison.PartChange;
import darkrim.study.comparison.PathChange;
import darkrim.study.comparison.RequirementChange;
import darkrim.study.comparison.SurfaceChange;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a second layout does to a first, as plain text.
 *
 * @param version version of the program
 * @param ink whether verdicts are coloured
 * @param everything whether long lists are shown whole
 */
public record ComparisonReport(String version, Ink ink, boolean everything) {
    private static final int SURFACES = 12;
    private static final Rows OF_A_KIND = new Rows(6);

    /** The report, lines ended by a line feed. */
    public String of(Comparison comparison) {
        Page page = new Page();
        write(page, comparison);
        return page.text();
    }

    void write(Prose page, Comparison comparison) {
        page.paragraph(sentence(comparison));
        if (!comparison.beam().isEmpty()) {
            page.paragraph("The beam differs: the second layout is judged in other light.");
        }
        page.space();
        page.line("before   " + LayoutWords.title(comparison.before().layout()));
        page.line("         " + LayoutWords.file(comparison.before().layout()));
        page.line("after    " + LayoutWords.title(comparison.after().layout()));
        page.line("         " + LayoutWords.file(comparison.after().layout()));
        page.line("program  Darkrim " + version + ", seed "
                + comparison.before().effort().seed() + " for both");
        requirements(page, comparison);
        changed(page, comparison);
        others(page, comparison);
        surfaces(page, comparison.surfaces());
        paths(page, comparison);
    }

    private static String sentence(Comparison comparison) {
        String words = switch (comparison.judgement()) {
            case NOT_WORSE -> "NOT WORSE: no requirement fares worse in the second layout.";
            case WORSE -> "WORSE in the second layout: " + names(comparison, RequirementChange.Judgement.WORSE) + ".";
            case CANNOT_TELL ->
                "CANNOT TELL: nothing fares worse for certain, but "
                        + (comparison.stopped()
                                ? "the work was stopped."
                                : names(comparison, RequirementChange.Judgement.CANNOT_TELL)
                                        + " is open, no longer asked, asks something else, or fails in both and too"
                                        + " little is known of how badly.");
        };
        return words;
    }

    private static String names(Comparison comparison, RequirementChange.Judgement judgement) {
        return String.join(
                ", ",
                comparison.requirements().stream()
                        .filter(each -> each.judgement() == judgement)
                        .map(each -> Printable.of(each.name()))
                        .toList());
    }

    private void requirements(Prose page, Comparison comparison) {
        page.heading("Requirements");
        Table table = new Table()
                .names("requirement")
                .words("before", ink::cell)
                .words("after", ink::cell)
                .numbers("margin before")
                .numbers("margin after")
                .words("change");
        for (RequirementChange each : comparison.requirements()) {
            table.row(
                    Printable.of(each.name()),
                    verdict(each.before()),
                    verdict(each.after()),
                    each.before().map(MarginWords::withUnit).orElse(""),
                    each.after().map(MarginWords::withUnit).orElse(""),
                    !each.alike()
                            ? "asks something else"
                            : each.judgement() == RequirementChange.Judgement.WORSE ? "worse" : "");
        }
        page.table(table);
        comparison.requirements().stream()
                .filter(each -> each.judgement() == RequirementChange.Judgement.WORSE)
                .filter(each -> each.failingBefore()
                        .filter(before -> !before.amounts().isEmpty())
                        .isPresent())
                .forEach(each -> page.paragraph(
                        "",
                        "  ",
                        Printable.of(each.name()) + " fails in both; before "
                                + failing(each.failingBefore().orElseThrow()) + ", after "
                                + failing(each.failingAfter().orElseThrow())));
    }

    private static String failing(Failing failing) {
        return "at " + Figures.counted(failing.amounts().size(), "place")
                + failing.worst()
                        .map(worst -> ", the worst by "
                                + (worst.standardError() == 0
                                        ? Figures.three(worst.value())
                                        : Figures.withError(worst.value(), worst.standardError())))
                        .orElse("");
    }

    private static String verdict(Optional<RequirementMargin> figure) {
        return figure.map(MarginWords::verdict).orElse("not asked");
    }

    private static void changed(Prose page, Comparison comparison) {
        page.heading("Dimensions, finishes and parts that differ");
        Table table = new Table().words("what").names("name").numbers("before").numbers("after");
        int rows = 0;
        for (Changed<Dimension> each : comparison.dimensions()) {
            table.row("dimension", Printable.of(each.name()), dimension(each.before()), dimension(each.after()));
            rows++;
        }
        for (Changed<FinishSpec> each : comparison.finishes()) {
            table.row("finish", Printable.of(each.name()), finish(each.before()), finish(each.after()));
            rows++;
        }
        for (String name : comparison.partsGone()) {
            table.row("part", Printable.of(name), "there", "gone");
            rows++;
        }
        for (String name : comparison.partsAdded()) {
            table.row("part", Printable.of(name), "", "new");
            rows++;
        }
        for (PartChange each : comparison.partsChanged()) {
            table.row("part", Printable.of(each.name()), "", words(each));
            rows++;
        }
        if (rows == 0) {
            page.line("none");
        } else {
            page.table(table);
        }
    }

    private static String words(PartChange part) {
        List<String> words = new ArrayList<>();
        words.add(part.changed() == 0 ? "" : part.changed() + " changed");
        words.add(part.added() == 0 ? "" : part.added() + " new");
        words.add(part.gone() == 0 ? "" : part.gone() + " gone");
        words.removeIf(String::isEmpty);
        return String.join(", ", words) + (part.changed() + part.added() + part.gone() == 1 ? " surface" : " surfaces");
    }

    private static String dimension(Optional<Dimension> dimension) {
        return dimension
                .map(each -> Figures.value(each.value())
                        + (each.kind() == Quantity.LENGTH ? " mm" : each.kind() == Quantity.ANGLE ? " deg" : ""))
                .orElse("none");
    }

    private static String finish(Optional<FinishSpec> finish) {
        return finish.map(FinishWords::of).orElse("none");
    }

    private static void others(Prose page, Comparison comparison) {
        page.heading("What else differs");
        List<Changed<String>> all = new ArrayList<>(comparison.beam());
        all.addAll(comparison.others());
        if (all.isEmpty()) {
            page.line("nothing");
        }
        for (Changed<String> each : all) {
            page.paragraph(
                    "",
                    "  ",
                    Printable.of(each.name()) + ": before "
                            + Printable.of(each.before().orElse("none")) + "; after "
                            + Printable.of(each.after().orElse("none")));
        }
    }

    private void surfaces(Prose page, List<SurfaceChange> changes) {
        page.heading("Surfaces that differ");
        if (changes.isEmpty()) {
            page.line("none");
            return;
        }
        long added = changes.stream().filter(SurfaceChange::added).count();
        long gone = changes.stream().filter(SurfaceChange::gone).count();
        page.line(Figures.counted(added, "new surface") + ", " + gone + " gone, " + (changes.size() - added - gone)
                + " moved, turned, of another shape, size or finish");
        page.space();
        Rows rows = everything ? Rows.ALL : new Rows(SURFACES);
        Table table = new Table()
                .names("surface")
                .words("")
                .numbers("moved, mm")
                .numbers("a corner, mm")
                .numbers("area before, mm2")
                .numbers("after, mm2");
        for (SurfaceChange each : rows.shown(changes)) {
            table.row(
                    Printable.of(each.name()),
                    what(each),
                    Double.isNaN(each.moved()) ? "" : Figures.length(each.moved()),
                    Double.isNaN(each.cornerMoved()) ? "" : Figures.length(each.cornerMoved()),
                    each.added() ? "" : Figures.length(each.areaBefore()),
                    each.gone() ? "" : Figures.length(each.areaAfter()));
        }
        page.table(table);
        more(page, rows.left(changes));
    }

    private static String what(SurfaceChange each) {
        if (each.added() || each.gone()) {
            return each.added() ? "new" : "gone";
        }
        List<String> words = new ArrayList<>();
        if (!each.finishBefore().equals(each.finishAfter())) {
            words.add("other finish");
        }
        if (each.otherFacets()) {
            words.add("other facets");
        }
        return String.join(", ", words);
    }

    private void paths(Prose page, Comparison comparison) {
        page.heading("Light paths that differ");
        List<PathChange> different = comparison.paths().stream()
                .filter(path -> path.kind() != PathChange.Kind.ALIKE)
                .toList();
        page.line(count(different, PathChange.Kind.NEW, "new") + ", " + count(different, PathChange.Kind.GONE, "gone")
                + ", " + count(different, PathChange.Kind.STRONGER, "stronger") + ", "
                + count(different, PathChange.Kind.WEAKER, "weaker") + " of "
                + Figures.count(comparison.paths().size()) + " compared");
        page.space();
        if (!different.isEmpty()) {
            Rows rows = everything ? Rows.ALL : OF_A_KIND;
            int left = 0;
            Table table = new Table()
                    .words("")
                    .names("receiver")
                    .names("via")
                    .words("by")
                    .numbers("before")
                    .numbers("after")
                    .numbers("z");
            for (PathChange.Kind kind : PathChange.Kind.values()) {
                List<PathChange> paths =
                        different.stream().filter(path -> path.kind() == kind).toList();
                left += rows.left(paths);
                for (PathChange each : rows.shown(paths)) {
                    table.row(
                            each.kind().name().toLowerCase(java.util.Locale.ROOT),
                            Printable.of(each.receiver()),
                            Printable.of(each.via()),
                            each.part().word(),
                            Figures.three(each.before()),
                            Figures.three(each.after()),
                            each.error() == 0
                                    ? ""
                                    : String.format(java.util.Locale.ROOT, "%+.1f", each.difference() / each.error()));
                }
            }
            page.table(table);
            more(page, left);
            page.space();
        }
        page.paragraph(
                "Relative irradiance of the receiver by each path. z: the difference over its standard error, from "
                        + "16 pairs of batches with the same random numbers in both layouts. Listed are differences that chance "
                        + "makes in any of all paths together with a probability of at most "
                        + Figures.limit(1 - comparison.before().effort().confidence())
                        + "; the rest may be chance. A path by a surface that only one layout has is new or gone for certain.");
    }

    private static String count(List<PathChange> paths, PathChange.Kind kind, String word) {
        return paths.stream().filter(path -> path.kind() == kind).count() + " " + word;
    }

    private static void more(Prose page, int left) {
        if (left > 0) {
            page.line("and " + Figures.count(left) + " more (" + page.whole() + ")");
        }
    }
}
