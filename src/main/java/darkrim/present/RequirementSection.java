package darkrim.present;

import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.Comparator;
import java.util.List;

/** Every requirement with its verdict, and the evidence for it. */
final class RequirementSection {
    private static final Rows FAILING = new Rows(6);

    private RequirementSection() {}

    static void write(Page page, CheckResult result, Ink ink, boolean everything) {
        page.heading("Requirements");
        Values values = new Values(result);
        Table table = new Table()
                .names("requirement")
                .words("verdict", ink::cell)
                .words("limit")
                .words("value +- error")
                .names("worst surface");
        for (RequirementResult each : result.judgement().requirements()) {
            boolean known = !each.outcomes().isEmpty();
            table.row(
                    Printable.of(each.requirement().name()),
                    each.verdict().name(),
                    ConditionWords.brief(each.requirement().condition()),
                    known ? values.of(each.worst()) : "",
                    worst(each));
        }
        page.block(table.text());
        page.heading("Evidence");
        for (RequirementResult each : result.judgement().requirements()) {
            evidence(page, each, values, everything);
        }
    }

    private static String worst(RequirementResult result) {
        if (result.outcomes().isEmpty()) {
            return "no surface";
        }
        return allDark(result)
                ? "none of " + Figures.count(result.outcomes().size())
                : Printable.of(result.worst().where());
    }

    private static boolean allDark(RequirementResult result) {
        return result.outcomes().stream().allMatch(outcome -> outcome.evidence() instanceof Evidence.ProvedDark);
    }

    private static void evidence(Page page, RequirementResult result, Values values, boolean everything) {
        List<Outcome> against = result.outcomes().stream()
                .filter(outcome -> outcome.verdict() != Verdict.PASS)
                .sorted(Comparator.comparing(Outcome::verdict)
                        .thenComparing(
                                Comparator.comparingDouble(Outcome::value).reversed()))
                .toList();
        page.paragraph("", "  ", Printable.of(result.requirement().name()) + ": " + summary(result, against, values));
        Rows rows = everything ? Rows.ALL : FAILING;
        List<Outcome> shown = rows.shown(against);
        List<Outcome> rays = shown.stream()
                .filter(outcome -> outcome.evidence() instanceof Evidence.WitnessRay)
                .toList();
        if (!rays.isEmpty()) {
            rays(page, rays);
        }
        for (Outcome outcome : shown) {
            if (!rays.contains(outcome)) {
                page.paragraph("  ", "    ", Printable.of(outcome.where()) + ": " + words(outcome, values));
            }
        }
        if (rows.left(against) > 0) {
            page.line("  and " + rows.left(against) + " more (all with --verbose)");
        }
        if (!against.isEmpty()) {
            page.space();
        }
    }

    /** Rays that anyone can draw: a row each. */
    private static void rays(Page page, List<Outcome> outcomes) {
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
                    outcome.value() > 0 ? Figures.three(outcome.value()) : "spot",
                    EvidenceWords.point(ray.onPupil()),
                    EvidenceWords.point(ray.onSurface()),
                    Figures.length(ray.length()));
        }
        page.block(table.text());
    }

    private static String words(Outcome outcome, Values values) {
        return EvidenceWords.of(outcome.evidence(), values.confidence())
                + (outcome.verdict() == Verdict.UNDECIDED ? " (undecided)" : "");
    }

    private static String summary(RequirementResult result, List<Outcome> against, Values values) {
        List<Outcome> all = result.outcomes();
        String asked = ConditionWords.asked(result.requirement().condition());
        if (all.isEmpty()) {
            return "selects no surface; no evidence, so undecided.";
        }
        String what = all.stream().anyMatch(outcome -> outcome.cell() != Outcome.WHOLE) ? "cell" : "surface";
        if (against.isEmpty()) {
            String every = all.size() == 1 ? "the " + what : "all " + Figures.counted(all.size(), what);
            if (allDark(result)) {
                return every + " proved dark.";
            }
            return every + " " + asked + "; worst "
                    + Printable.of(result.worst().where()) + ", " + words(result.worst(), values) + ".";
        }
        long failed = against.stream()
                .filter(outcome -> outcome.verdict() == Verdict.FAIL)
                .count();
        long open = against.size() - failed;
        return Figures.counted(all.size(), what) + " should " + asked + "; "
                + (failed > 0 ? Figures.count(failed) + " fail" + (failed == 1 ? "s" : "") : "")
                + (failed > 0 && open > 0 ? ", " : "")
                + (open > 0 ? Figures.count(open) + " undecided" : "") + ":";
    }
}
