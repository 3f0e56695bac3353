package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.List;

/** Why each verdict is what it is: the surfaces that fail or are open, each with its ray or its interval. */
final class EvidenceSection {
    private static final Rows AGAINST = new Rows(6);

    private EvidenceSection() {}

    static void write(Prose page, CheckResult result, boolean everything) {
        page.heading("Evidence");
        Values values = new Values(result);
        boolean afterList = false;
        boolean first = true;
        for (RequirementResult each : result.judgement().requirements()) {
            boolean list = each.verdict() != Verdict.PASS;
            if (!first && (list || afterList)) {
                page.space();
            }
            requirement(page, each, values, everything ? Rows.ALL : AGAINST);
            first = false;
            afterList = list;
        }
    }

    private static void requirement(Prose page, RequirementResult result, Values values, Rows rows) {
        List<Outcome> against = result.worstFirst().stream()
                .filter(outcome -> outcome.verdict() != Verdict.PASS)
                .toList();
        page.paragraph("", "  ", Printable.of(result.requirement().name()) + ": " + summary(result, against, values));
        List<Outcome> shown = rows.shown(against);
        rays(
                page,
                shown.stream()
                        .filter(outcome -> outcome.evidence() instanceof Evidence.WitnessRay)
                        .toList());
        for (Outcome outcome : shown) {
            if (!(outcome.evidence() instanceof Evidence.WitnessRay)) {
                String mixed =
                        result.verdict() == Verdict.FAIL && outcome.verdict() == Verdict.UNDECIDED ? "undecided, " : "";
                page.paragraph("  ", "    ", Printable.of(outcome.where()) + ": " + mixed + words(outcome, values));
            }
        }
        if (rows.left(against) > 0) {
            page.line("  and " + rows.left(against) + " more (" + page.whole() + ")");
        }
        if (result.verdict() == Verdict.FAIL && result.requirement().condition() instanceof Requirement.PupilSeen) {
            page.paragraph(
                    "  ",
                    "  ",
                    "'darkrim seen-from' lists all that hides the pupil from a point, 'darkrim advise' which dimension to "
                            + "change, and by how much.");
        }
    }

    /** What was found for a requirement, in a sentence without its name. */
    static String brief(RequirementResult result, Values values) {
        List<Outcome> against = result.worstFirst().stream()
                .filter(outcome -> outcome.verdict() != Verdict.PASS)
                .toList();
        String summary = summary(result, against, values);
        return summary.endsWith(":")
                ? summary.substring(0, summary.length() - 1) + "; worst "
                        + Printable.of(result.worst().where()) + ", " + words(result.worst(), values) + "."
                : summary;
    }

    /** Rays that anyone can draw: a row each. */
    private static void rays(Prose page, List<Outcome> outcomes) {
        if (outcomes.isEmpty()) {
            return;
        }
        Table table = new Table()
                .names("  lit surface")
                .numbers("direct")
                .words("ray from the pupil at")
                .words("to the surface at")
                .numbers("long, mm");
        for (Outcome outcome : outcomes) {
            Evidence.WitnessRay ray = (Evidence.WitnessRay) outcome.evidence();
            table.row(
                    "  " + Printable.of(outcome.where()),
                    Double.isNaN(outcome.value())
                            ? "not measured"
                            : outcome.value() > 0 ? Figures.three(outcome.value()) : "spot",
                    EvidenceWords.point(ray.onPupil()),
                    EvidenceWords.point(ray.onSurface()),
                    Figures.length(ray.length()));
        }
        page.table(table);
    }

    /** The evidence and, beside an interval of once-reflected light or a proof about it, what the other of the two says. */
    private static String words(Outcome outcome, Values values) {
        return EvidenceWords.of(outcome, values.confidence()) + values.beside(outcome);
    }

    private static String summary(RequirementResult result, List<Outcome> against, Values values) {
        List<Outcome> all = result.outcomes();
        if (all.isEmpty()) {
            return "selects no surface; no evidence, so undecided.";
        }
        if (result.requirement().condition() instanceof Requirement.Clearance) {
            return clearance(result, against, values);
        }
        String asked = ConditionWords.asked(result.requirement().condition());
        String what = all.stream().anyMatch(outcome -> outcome.cell() != Outcome.WHOLE) ? "cell" : "surface";
        if (!against.isEmpty()) {
            return Figures.counted(all.size(), what) + " should " + asked + "; " + counts(against) + ":";
        }
        String every = Figures.all(all.size(), what);
        if (Values.isAllDark(result)) {
            return every + " proved dark"
                    + result.leastMargin()
                            .map(least -> (all.size() == 1 ? ", " : isBound(least) ? "; " : "; least ")
                                    + EvidenceWords.margin(
                                            least.evidence().margin().orElseThrow()))
                            .orElse("")
                    + ".";
        }
        if (Values.isAllWholeOrNone(result)) {
            return every
                    + (result.worst().evidence() instanceof Evidence.ExactShare
                            ? (all.size() == 1 ? " sees" : " see") + " the whole pupil from every point, proved."
                            : (all.size() == 1 ? " gets" : " get") + " no once-reflected light, proved.");
        }
        return every + " "
                + (all.size() == 1 ? ConditionWords.found(result.requirement().condition()) : asked) + "; worst "
                + Printable.of(result.worst().where()) + ", " + words(result.worst(), values) + ".";
    }

    /** Both sides, and of what holds the least distance; each that does not hold follows in a line of its own. */
    private static String clearance(RequirementResult result, List<Outcome> against, Values values) {
        String asked = ConditionWords.asked(result.requirement().condition());
        if (!against.isEmpty()) {
            return "both sides should " + asked + "; "
                    + (against.size() == result.outcomes().size()
                            ? "they do not:"
                            : "they do not in " + against.size() + " of "
                                    + result.outcomes().size() + " ways to look:");
        }
        return "both sides " + asked + "; least " + Printable.of(result.worst().where()) + ": "
                + words(result.worst(), values) + ".";
    }

    private static boolean isBound(Outcome outcome) {
        LightMargin margin = outcome.evidence().margin().orElseThrow();
        return margin.atLeast() || margin.isUnexplained();
    }

    private static String counts(List<Outcome> against) {
        long failed = against.stream()
                .filter(outcome -> outcome.verdict() == Verdict.FAIL)
                .count();
        long open = against.size() - failed;
        String fail = Figures.count(failed) + (failed == 1 ? " fails" : " fail");
        String undecided = Figures.count(open) + " undecided";
        return failed == 0 ? undecided : open == 0 ? fail : fail + ", " + undecided;
    }
}
