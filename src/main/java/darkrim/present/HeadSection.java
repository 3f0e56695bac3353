package darkrim.present;

import darkrim.layout.Layout;
import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What was checked, with what, and the verdict in a sentence. */
final class HeadSection {
    private HeadSection() {}

    static void write(Page page, CheckResult result, String version, Ink ink) {
        Layout layout = result.layout();
        page.paragraph(LayoutWords.title(layout));
        String words = sentence(result);
        String verdict = result.judgement().verdict().name();
        // Wrapped before it is dyed, since escape codes have no width.
        Page sentence = new Page();
        sentence.paragraph(verdict + ": " + words);
        page.block(ink.word(result.judgement().verdict()) + sentence.text().substring(verdict.length()));
        HeadCautions.of(result).forEach(page::paragraph);
        page.space();
        page.line("file     " + LayoutWords.file(layout));
        LayoutWords.meshes(layout).forEach(page::line);
        page.line("program  Darkrim " + version + ", seed " + result.effort().seed() + ", confidence "
                + Figures.confidence(result.effort().confidence()) + " over all sampled verdicts together");
        new Values(result)
                .unit()
                .ifPresent(unit -> page.line("light    relative irradiance 1 is " + Figures.three(unit) + " W/m2"));
    }

    /** Whether all that is not decided of a requirement is a matter of proofs, in which no sample takes part. */
    private static boolean isOpenByGeometry(RequirementResult result) {
        return result.outcomes().stream()
                .filter(outcome -> outcome.verdict() == Verdict.UNDECIDED)
                .noneMatch(outcome -> outcome.evidence() instanceof Evidence.Sampled);
    }

    /** Why requirements are not decided, and which; first those that more samples would not help. */
    private static String open(CheckResult result) {
        List<RequirementResult> open = result.judgement().requirements().stream()
                .filter(one -> one.verdict() == Verdict.UNDECIDED)
                .toList();
        if (result.judgement().stopped()) {
            return open.isEmpty() ? "" : "when the work was stopped: " + names(open, Verdict.UNDECIDED);
        }
        Map<Boolean, List<RequirementResult>> parts =
                open.stream().collect(Collectors.partitioningBy(HeadSection::isOpenByGeometry));
        String geometry = names(parts.get(true), Verdict.UNDECIDED);
        String samples = names(parts.get(false), Verdict.UNDECIDED);
        return (geometry.isEmpty() ? "" : "by geometry (more samples would not help): " + geometry)
                + (geometry.isEmpty() || samples.isEmpty() ? "" : "; ")
                + (samples.isEmpty()
                        ? ""
                        : "within " + Figures.counted(result.effort().mostSamples(), "sample")
                                + " (--samples allows more): " + samples);
    }

    /** The verdict on all requirements together, one sentence without the word itself. */
    static String sentence(CheckResult result) {
        List<RequirementResult> all = result.judgement().requirements();
        String failed = names(all, Verdict.FAIL);
        String open = open(result);
        return switch (result.judgement().verdict()) {
            case PASS -> Figures.all(all.size(), "requirement") + (all.size() == 1 ? " holds." : " hold.");
            case FAIL ->
                of(all, Verdict.FAIL) + doNot(all) + " hold: " + failed + "."
                        + (open.isEmpty() ? "" : " Not decided " + open + ".");
            case UNDECIDED ->
                all.isEmpty()
                        ? "the layout asks for nothing."
                        : of(all, Verdict.UNDECIDED) + "not decided " + open + ". None fails.";
        };
    }

    /** How many of the requirements have a verdict; of a single one there is nothing to count. */
    private static String of(List<RequirementResult> all, Verdict verdict) {
        return all.size() == 1
                ? "the requirement " + (verdict == Verdict.UNDECIDED ? "is " : "")
                : count(all, verdict) + " of " + Figures.counted(all.size(), "requirement") + " ";
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
