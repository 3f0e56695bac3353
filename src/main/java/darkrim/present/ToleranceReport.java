package darkrim.present;

import darkrim.study.tolerance.Build;
import darkrim.study.tolerance.Contributor;
import darkrim.study.tolerance.RequirementTolerance;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.study.tolerance.YieldInterval;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What tolerances do to a layout as plain text, at most 100 columns wide where names allow it.
 *
 * @param version version of the program
 * @param ink whether verdicts are coloured
 */
public record ToleranceReport(String version, Ink ink) {
    /** The largest share that one decimal of a percentage does not round up to all. */
    private static final double MOST_SHORT_OF_ALL = 0.999;

    /** The report, lines ended by a line feed. */
    public String of(ToleranceResult result) {
        Page page = new Page();
        head(page, result);
        sections(page, result);
        notes(page, result);
        return page.text();
    }

    void sections(Prose page, ToleranceResult result) {
        contributors(page, result);
        requirements(page, result);
        WorstCaseSection.write(page, result);
        ShareSection.write(page, result);
        builds(page, result);
        result.loosest()
                .ifPresent(loosest ->
                        LoosestSection.write(page, loosest, result.builds().size()));
    }

    private void head(Page page, ToleranceResult result) {
        page.paragraph(LayoutWords.title(result.drawn().layout()));
        String verdict = result.verdict().name();
        Page sentence = new Page();
        sentence.paragraph(verdict + ": " + sentence(result));
        page.block(ink.word(result.verdict()) + sentence.text().substring(verdict.length()));
        page.space();
        page.line("file     " + LayoutWords.file(result.drawn().layout()));
        page.line("program  Darkrim " + version + ", seed "
                + result.drawn().effort().seed() + ", confidence "
                + Figures.confidence(result.drawn().effort().confidence()));
    }

    /** The verdict, one sentence without the word itself. */
    static String sentence(ToleranceResult result) {
        if (result.settings().wantedYield().isPresent()) {
            double wanted = result.settings().wantedYield().get();
            String found = interval(result.yield()) + "; wanted is " + Figures.confidence(wanted) + ".";
            long needed = YieldInterval.buildsToShow(wanted, result.yield().confidence());
            boolean tooFew = result.verdict() == Verdict.UNDECIDED
                    && needed > result.builds().size();
            return found + (tooFew ? " No fewer than " + Figures.counted(needed, "build") + " can show that." : "");
        }
        List<RequirementTolerance> bad = result.requirements().stream()
                .filter(each -> each.worstVerdict() == result.verdict())
                .toList();
        String names = bad.stream()
                .map(each -> Printable.of(each.requirement().name()))
                .collect(Collectors.joining(", "));
        return switch (result.verdict()) {
            case PASS ->
                "every requirement holds in the worst case that was found within the tolerances, " + sampled(result);
            case FAIL -> "within the tolerances " + names + (bad.size() == 1 ? " does" : " do") + " not hold.";
            case UNDECIDED ->
                result.stopped()
                        ? "the study was stopped; what was finished follows."
                        : "the worst case of " + names + " is not decided.";
        };
    }

    /** What the builds say of a study that passes: those beyond the tolerances, which are not judged, may fail. */
    private static String sampled(ToleranceResult result) {
        List<Build> beyond = result.builds().stream()
                .filter(build -> !build.isWithin(result.contributors()))
                .toList();
        long bad =
                beyond.stream().filter(build -> build.verdict() != Verdict.PASS).count();
        if (bad == 0) {
            return "and in " + Figures.all(result.builds().size(), "build") + " that were sampled.";
        }
        int within = result.builds().size() - beyond.size();
        return (within == 0 ? "though no build was" : "and in " + Figures.all(within, "build"))
                + " sampled within them; of " + Figures.counted(beyond.size(), "build") + " beyond them "
                + Figures.count(bad) + (bad == 1 ? " does" : " do") + " not hold.";
    }

    private static void contributors(Prose page, ToleranceResult result) {
        page.heading("Tolerances");
        Table table = new Table().names("contributor").numbers("tolerance").words("deviations of many builds");
        for (Contributor each : result.contributors()) {
            table.row(Printable.of(each.name()), MarginWords.tolerance(each), MarginWords.spread(each));
        }
        page.table(table);
    }

    private void requirements(Prose page, ToleranceResult result) {
        page.heading("Margins: mm, or relative irradiance where the limit is one");
        Table table = new Table()
                .names("requirement")
                .numbers("as drawn")
                .numbers("worst case")
                .words("verdict", ink::cell)
                .numbers("root sum square")
                .numbers("at 3 sigma")
                .numbers("builds pass");
        for (RequirementTolerance each : result.requirements()) {
            table.row(
                    Printable.of(each.requirement().name()),
                    MarginWords.of(each.drawn()),
                    each.worst().map(worst -> MarginWords.of(worst.margin())).orElse("not found"),
                    each.worstVerdict().name(),
                    each.rootSumSquare()
                            .map(sum -> Figures.withError(sum.mean(), sum.deviation()))
                            .orElse("-"),
                    each.rootSumSquare()
                            .map(sum -> Figures.three(sum.atThreeSigma()))
                            .orElse("-"),
                    each.yield().builds() == 0 ? "-" : passing(each.yield()));
        }
        page.table(table);
    }

    /** The share of builds that pass; one that does not is never rounded away. */
    static String passing(YieldInterval yield) {
        return Figures.percent(yield.passed() == yield.builds() ? 1 : Math.min(MOST_SHORT_OF_ALL, yield.share()));
    }

    private static void builds(Prose page, ToleranceResult result) {
        page.heading("Sampled builds");
        page.paragraph(interval(result.yield()) + ".");
        long impossible = result.builds().stream()
                .filter(build -> build.result().verdict().isEmpty())
                .count();
        result.builds().stream()
                .filter(build -> build.result().verdict().isEmpty())
                .findFirst()
                .ifPresent(first -> page.paragraph("Of those that fail, " + Figures.count(impossible)
                        + " cannot be built; build " + first.number() + ": "
                        + Printable.of(first.result().impossible())));
        List<Build> warned = result.warned();
        if (!warned.isEmpty()) {
            page.paragraph("CAUTION: a warning that is not said of the layout as drawn comes with "
                    + Figures.counted(warned.size(), "build") + "; build "
                    + warned.get(0).number() + ": "
                    + Printable.of(warned.get(0).result().warnings()));
        }
        for (RequirementTolerance each : result.requirements()) {
            each.sampled()
                    .ifPresent(
                            sampled -> page.line(Printable.of(each.requirement().name()) + ": margin "
                                    + Figures.withError(sampled.mean(), sampled.deviation()) + " over "
                                    + Figures.counted(sampled.count(), "build")));
        }
    }

    /** How many builds pass, and what that says of all. */
    private static String interval(YieldInterval yield) {
        if (yield.builds() == 0) {
            return "no build was finished";
        }
        return Figures.count(yield.passed()) + " of " + Figures.counted(yield.builds(), "build") + " pass"
                + (yield.undecided() > 0 ? ", " + Figures.count(yield.undecided()) + " are not decided" : "")
                + ": the yield is from " + percent(yield.lower(), false) + " to " + percent(yield.upper(), true)
                + " at a confidence of " + Figures.confidence(yield.confidence());
    }

    static String percent(double share, boolean up) {
        double scaled = 1000 * share;
        return Figures.limit((up ? Math.ceil(scaled) : Math.floor(scaled)) / 10) + " %";
    }

    private static void notes(Page page, ToleranceResult result) {
        page.heading("What this does not cover");
        page.paragraph(
                "A worst case is the worst that was found within the tolerances, the worst verdict and of those the least margin, by looks at their corners"
                        + " and a search from there: it shows what can happen, and is no proof that nothing worse can. Each"
                        + " contributor deviates by itself. Root sum square takes the margin for a straight-line function of"
                        + " the deviations; a dash says that a margin it needs is not known.");
        page.paragraph("Not modelled: " + String.join(", ", Cautions.NOT_MODELLED) + ".");
        page.space();
        page.line(Figures.counted(result.builds().size(), "build") + "; this run took "
                + Figures.three(result.seconds()) + " s.");
    }
}
