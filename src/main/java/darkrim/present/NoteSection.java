package darkrim.present;

import darkrim.diagnostic.Finding;
import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.SurfaceResult;
import java.util.Optional;

/** Warnings, what is not modelled, and how long it took. */
final class NoteSection {
    private NoteSection() {}

    static void write(Page page, CheckResult result) {
        if (!result.warnings().isEmpty()) {
            page.heading("Warnings");
            for (Finding warning : result.warnings()) {
                page.paragraph("- ", "  ", Printable.of(warning.toString()));
            }
        }
        page.heading("What this does not cover");
        page.paragraph("Not modelled: " + String.join(", ", Cautions.NOT_MODELLED) + ".");
        page.paragraph(String.join(" ", Cautions.CAUTIONS));
        page.paragraph(geometry(result));
        page.space();
        page.line(timing(result));
    }

    private static String geometry(CheckResult result) {
        String round = result.chordError() > 0
                ? "Round faces are polygons within " + Figures.atMost(result.chordError()) + " mm. "
                : "";
        Optional<String> gaps = result.judgement().surfaces().stream()
                .map(SurfaceResult::darkness)
                .flatMap(Optional::stream)
                .filter(Evidence.ProvedDark.class::isInstance)
                .map(dark -> "Proofs count gaps below " + Figures.atMost(((Evidence.ProvedDark) dark).gapWidth())
                        + " mm between touching parts as closed.")
                .findFirst();
        return (round + gaps.orElse("")).strip();
    }

    private static String timing(CheckResult result) {
        return Figures.count(result.judgement().samples()) + " samples; proofs took "
                + Figures.three(result.timing().proofs()) + " s, the whole check "
                + Figures.three(result.timing().whole()) + " s.";
    }
}
