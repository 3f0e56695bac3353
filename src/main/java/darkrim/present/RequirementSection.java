package darkrim.present;

import darkrim.study.CheckResult;
import darkrim.verdict.RequirementResult;

/** Every requirement with its verdict: a row each. */
final class RequirementSection {
    private RequirementSection() {}

    static void write(Prose page, CheckResult result, Ink ink) {
        page.heading("Requirements");
        Values values = new Values(result);
        Table table = new Table()
                .names("requirement")
                .words("verdict", ink::cell)
                .words("limit")
                .words("value +- error")
                .names("worst surface");
        for (RequirementResult each : result.judgement().requirements()) {
            table.row(
                    Printable.of(each.requirement().name()),
                    each.verdict().name(),
                    ConditionWords.brief(each.requirement().condition()),
                    each.outcomes().isEmpty() ? "" : values.of(each.worst()),
                    worst(each));
        }
        page.table(table);
    }

    private static String worst(RequirementResult result) {
        int count = result.outcomes().size();
        if (count == 0) {
            return "no surface";
        }
        return count > 1 && Values.isAllDark(result)
                ? (count == 2 ? "both" : "all " + Figures.count(count)) + " dark"
                : Printable.of(result.worst().where());
    }
}
