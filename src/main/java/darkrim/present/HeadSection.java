package darkrim.present;

import darkrim.layout.Layout;
import darkrim.study.CheckResult;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.stream.Collectors;

/** What was checked, with what, and the verdict in a sentence. */
final class HeadSection {
    private static final int SHORT_HASH = 16;

    private HeadSection() {}

    static void write(Page page, CheckResult result, String version, Ink ink) {
        Layout layout = result.layout();
        String revision = layout.revision().isEmpty() ? "" : ", revision " + layout.revision();
        page.paragraph(Printable.of(layout.title() + revision));
        String words = sentence(result);
        String verdict = result.judgement().verdict().name();
        // Wrapped before it is dyed, since escape codes have no width.
        Page sentence = new Page();
        sentence.paragraph(verdict + ": " + words);
        page.block(ink.word(result.judgement().verdict()) + sentence.text().substring(verdict.length()));
        page.space();
        String hash = layout.source().sha256();
        page.line("file     " + Printable.of(layout.source().name())
                + (hash.isEmpty()
                        ? ""
                        : ", SHA-256 " + hash.substring(0, Math.min(SHORT_HASH, hash.length())) + "..."));
        page.line("program  Darkrim " + version + ", seed " + result.effort().seed() + ", confidence "
                + Figures.confidence(result.effort().confidence()) + " over all sampled verdicts together");
        new Values(result)
                .unit()
                .ifPresent(unit -> page.line("light    relative irradiance 1 is " + Figures.three(unit) + " W/m2"));
    }

    /** The verdict on all requirements together, one sentence without the word itself. */
    static String sentence(CheckResult result) {
        List<RequirementResult> all = result.judgement().requirements();
        String whole = Figures.counted(all.size(), "requirement");
        String failed = names(all, Verdict.FAIL);
        String open = names(all, Verdict.UNDECIDED);
        String why = result.judgement().stopped()
                ? " when the work was stopped"
                : " within " + Figures.count(result.effort().mostSamples()) + " samples (--samples allows more)";
        return switch (result.judgement().verdict()) {
            case PASS -> all.size() == 1 ? "the requirement holds." : "all " + whole + " hold.";
            case FAIL ->
                count(all, Verdict.FAIL) + " of " + whole + " " + doNot(all) + " hold: " + failed + "."
                        + (open.isEmpty() ? "" : " Not decided" + why + ": " + open + ".");
            case UNDECIDED ->
                all.isEmpty()
                        ? "the layout asks for nothing."
                        : count(all, Verdict.UNDECIDED) + " of " + whole + " not decided" + why + ": " + open
                                + ". None fails.";
        };
    }

    private static String doNot(List<RequirementResult> all) {
        return count(all, Verdict.FAIL) == 1 ? "does not" : "do not";
    }

    private static long count(List<RequirementResult> all, Verdict verdict) {
        return all.stream().filter(result -> result.verdict() == verdict).count();
    }

    private static String names(List<RequirementResult> all, Verdict verdict) {
        return all.stream()
                .filter(result -> result.verdict() == verdict)
                .map(result -> Printable.of(result.requirement().name()))
                .collect(Collectors.joining(", "));
    }
}
