package darkrim.present;

import darkrim.layout.FinishSpec;
import darkrim.layout.Requirement;
import darkrim.study.CheckResult;
import darkrim.study.RequirementMargin;
import darkrim.study.comparison.Comparison;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import java.util.List;
import java.util.OptionalDouble;

/** The parts of reports, in the words of the terminal, for whatever they are written on. */
public final class CheckSections {
    private CheckSections() {}

    /** The verdict on all requirements together: one sentence without the word itself. */
    public static String sentence(CheckResult result) {
        return HeadSection.sentence(result);
    }

    /**
     * Every requirement in a row: verdict, limit, value, margin and what shows it.
     *
     * @param margins the margins, in the order of the requirements
     */
    public static void requirements(Prose page, CheckResult result, List<RequirementMargin> margins) {
        Values values = new Values(result);
        Table table = new Table()
                .names("requirement")
                .words("verdict")
                .words("limit")
                .numbers("value")
                .numbers("margin")
                .names("evidence");
        for (int i = 0; i < margins.size(); i++) {
            RequirementResult each = result.judgement().requirements().get(i);
            table.row(
                    Printable.of(each.requirement().name()),
                    each.verdict().name(),
                    ConditionWords.brief(each.requirement().condition()),
                    each.outcomes().isEmpty() ? "" : values.of(each.worst()),
                    MarginWords.withUnit(margins.get(i)),
                    EvidenceSection.brief(each, values));
        }
        page.table(table);
    }

    /** Irradiance in W/m2 that a relative irradiance of 1 stands for, where it is known. */
    public static OptionalDouble unit(CheckResult result) {
        return new Values(result).unit();
    }

    /** What is known of the feasibility of the openings. */
    public static void feasibility(Prose page, CheckResult result) {
        FeasibilitySection.write(page, result.feasibility(), true);
    }

    /** Why each verdict is what it is. */
    public static void evidence(Prose page, CheckResult result) {
        EvidenceSection.write(page, result, false);
    }

    /** The least margins of direct light, and those of all sides and corners of openings, cold and warm and with the placement error. */
    public static void margins(Prose page, CheckResult result) {
        MarginSection.least(page, result);
        SideMarginSection.write(page, result);
    }

    /** What the cool-down does. */
    public static void cooldown(Prose page, CheckResult result) {
        CooldownSection.write(page, result, Ink.PLAIN, true);
    }

    /** The surfaces that get light. */
    public static void surfaces(Prose page, CheckResult result) {
        SurfaceSection.write(page, result, false);
    }

    /** By which surfaces reflected light comes. */
    public static void lightPaths(Prose page, CheckResult result) {
        LightPathSection.write(page, result, false);
    }

    /** Warnings, and what is not modelled. */
    public static void limits(Prose page, CheckResult result) {
        NoteSection.limits(page, result);
    }

    /** What another layout does differently. */
    public static void comparison(Prose page, Comparison comparison, String version) {
        new ComparisonReport(version, Ink.PLAIN, false).write(page, comparison);
    }

    /** What tolerances do. */
    public static void tolerance(Prose page, ToleranceResult result, String version) {
        new ToleranceReport(version, Ink.PLAIN).sections(page, result);
    }

    /** The least distances that requirements ask for: both sides, where they come nearest. */
    public static void clearances(Prose page, CheckResult result) {
        Table table = new Table()
                .names("requirement")
                .words("verdict")
                .numbers("asked, mm")
                .numbers("least, mm")
                .names("between")
                .words("nearest points, mm");
        boolean any = false;
        for (RequirementResult each : result.judgement().requirements()) {
            if (each.requirement().condition() instanceof Requirement.Clearance asked) {
                for (Outcome outcome : each.outcomes()) {
                    if (outcome.evidence() instanceof Evidence.Distance distance) {
                        any = true;
                        table.row(
                                Printable.of(each.requirement().name()),
                                outcome.verdict().name(),
                                Figures.limit(asked.atLeast()),
                                Figures.margin(distance.millimetres()),
                                Printable.of(outcome.where()),
                                EvidenceWords.point(distance.onFirst()) + " to "
                                        + EvidenceWords.point(distance.onSecond()));
                    }
                }
            }
        }
        if (any) {
            page.table(table);
            page.paragraph(
                    "Distances are exact but for rounding; of round parts they are no less. Coatings are taken off.");
        } else {
            page.paragraph("No requirement of the layout asks for a clearance; none was looked at.");
        }
    }

    /** The finishes of a layout, with how many surfaces have each, and where their numbers come from. */
    public static void finishes(Prose page, CheckResult result) {
        Table table = new Table()
                .names("finish")
                .words("reflects")
                .numbers("surfaces")
                .names("source of the numbers, as stated");
        for (FinishSpec each : result.layout().finishes().values()) {
            long surfaces = result.scene().surfaces().stream()
                    .filter(surface -> surface.finish().name().equals(each.name()))
                    .count();
            table.row(
                    Printable.of(each.name()),
                    FinishWords.of(each),
                    Figures.count(surfaces),
                    each.source().isEmpty() ? "none stated" : Printable.of(each.source()));
        }
        if (result.layout().finishes().isEmpty()) {
            page.paragraph("The layout states no finish: every surface was taken to reflect nothing.");
        } else {
            page.table(table);
            page.paragraph(
                    "Reflectance straight on and, where it differs, for light that falls at 80 deg to the normal.");
        }
    }
}
