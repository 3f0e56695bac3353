package darkrim.present;

import darkrim.study.RequirementMargin;
import darkrim.study.tolerance.RequirementTolerance;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.study.tolerance.WorstCase;
import darkrim.verdict.Verdict;

/** Where the worst cases are. */
final class WorstCaseSection {
    private WorstCaseSection() {}

    static void write(Prose page, ToleranceResult result) {
        page.heading("Worst cases");
        for (RequirementTolerance each : result.requirements()) {
            String name = Printable.of(each.requirement().name()) + ": ";
            page.paragraph(
                    name, "  ", each.worst().map(worst -> words(result, worst)).orElse("not found"));
            each.worse()
                    .ifPresent(build -> page.paragraph(
                            "  ",
                            "  ",
                            "but build " + build.number() + ", within the tolerances, "
                                    + (build.verdict() == Verdict.FAIL ? "does not hold" : "is not decided")));
            each.lesser()
                    .ifPresent(build -> page.paragraph(
                            "  ",
                            "  ",
                            "but build " + build.number() + ", within the tolerances, has less margin: "
                                    + MarginWords.of(build.margin()) + place(build.margin())));
        }
    }

    private static String words(ToleranceResult result, WorstCase worst) {
        String where = MarginWords.deviations(result.contributors(), worst.deviations());
        if (!worst.margin().impossible().isEmpty()) {
            return "cannot be built with " + where + ": "
                    + Printable.of(worst.margin().impossible());
        }
        return MarginWords.of(worst.margin()) + place(worst.margin()) + "; " + where + " ("
                + Figures.counted(worst.looks(), "layout") + " looked at"
                + (worst.everyCorner() ? ", every corner" : ", " + Figures.counted(worst.corners(), "corner")) + ")"
                + (worst.alike() && !worst.everyCorner()
                        ? "; the margin was the same at all of them and shows no way to a worse place"
                        : "")
                + (worst.cutShort() ? "; the search was cut short before it came to rest" : "");
    }

    /** Where a margin is and what sets it; nothing of what is not known. */
    static String place(RequirementMargin margin) {
        return (margin.where().isEmpty() ? "" : " at " + Printable.of(margin.where()))
                + (margin.setBy().isEmpty() ? "" : ", set by " + Printable.of(margin.setBy()));
    }
}
