package darkrim.present;

import darkrim.study.tolerance.LoosestFactor;
import darkrim.study.tolerance.LoosestFactors;
import darkrim.study.tolerance.YieldInterval;

/** How much looser or tighter all tolerances together could be. */
final class LoosestSection {
    private LoosestSection() {}

    /**
     * Writes it.
     *
     * @param page where
     * @param loosest what was found
     * @param builds how many builds were looked at
     */
    static void write(Prose page, LoosestFactors loosest, int builds) {
        page.heading("Loosest tolerances");
        LoosestFactor estimate = loosest.estimate();
        String wanted = Figures.confidence(estimate.wanted());
        page.paragraph("estimated: ", "  ", words(estimate, wanted + " of these " + Figures.counted(builds, "build")));
        loosest.proved()
                .ifPresentOrElse(
                        proved -> page.paragraph(
                                "proved: ", "  ", words(proved, "enough of these builds to prove " + wanted)),
                        () -> page.paragraph(
                                "proved: ",
                                "  ",
                                "no factor: even if all " + Figures.counted(builds, "build") + " passed they would not"
                                        + " prove " + wanted + "; it takes at least "
                                        + Figures.counted(
                                                YieldInterval.buildsToShow(
                                                        estimate.wanted(),
                                                        estimate.yield().confidence()),
                                                "build")));
        page.paragraph("All tolerances are multiplied by the same factor, and the same builds are looked at with"
                + " deviations as many times as large. A build that fails is taken to fail with every larger factor.");
    }

    private static String words(LoosestFactor loosest, String kept) {
        String stop = loosest.stopped() ? "; the search was stopped before it was done" : "";
        if (loosest.factor() == 0) {
            return "no factor was found with which " + kept + " pass" + stop;
        }
        return Figures.atLeast(loosest.factor()) + " times the tolerances: " + kept + " still pass ("
                + Figures.count(loosest.allowed()) + " may fail), and the yield is from "
                + ToleranceReport.percent(loosest.yield().lower(), false) + " to "
                + ToleranceReport.percent(loosest.yield().upper(), true) + " at a confidence of "
                + Figures.confidence(loosest.yield().confidence())
                + (Double.isInfinite(loosest.beyond())
                        ? "; it was not looked further"
                        : "; with " + Figures.three(loosest.beyond()) + " times too many fail")
                + stop;
    }
}
