package darkrim.present;

import darkrim.diagnostic.Finding;
import darkrim.scene.Surface;
import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.SurfaceResult;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Warnings, what is not modelled, and how long it took. */
final class NoteSection {
    private NoteSection() {}

    static void write(Prose page, CheckResult result) {
        limits(page, result);
        page.space();
        page.line(timing(result));
    }

    /** All but how long it took, which differs from run to run. */
    static void limits(Prose page, CheckResult result) {
        if (!result.warnings().isEmpty()) {
            page.heading("Warnings");
            for (Finding warning : result.warnings()) {
                page.paragraph("- ", "  ", Printable.of(warning.toString()));
            }
        }
        page.heading("What this does not cover");
        page.paragraph("Not modelled: " + String.join(", ", Cautions.NOT_MODELLED) + ".");
        page.paragraph(String.join(" ", Cautions.CAUTIONS));
        absorbers(page, result);
        page.paragraph(geometry(result));
    }

    /** Forgotten finishes make once-reflected light vanish, so what was taken to reflect nothing is named where such light is judged. */
    private static void absorbers(Prose page, CheckResult result) {
        boolean judged =
                result.judgement().requirements().stream().anyMatch(each -> Values.isReflected(each.requirement()));
        Map<String, Long> parts = result.scene().surfaces().stream()
                .filter(surface -> !surface.finish().reflects())
                .collect(Collectors.groupingBy(NoteSection::part, LinkedHashMap::new, Collectors.counting()));
        if (judged && !parts.isEmpty()) {
            page.paragraph("Taken to reflect nothing (finish absorber, or none stated): "
                    + parts.entrySet().stream()
                            .map(part -> Printable.of(part.getKey()) + " ("
                                    + Figures.counted(part.getValue(), "surface") + ")")
                            .collect(Collectors.joining(", "))
                    + ".");
        }
    }

    /** The first step of a surface's path, without the number of a copy. */
    private static String part(Surface surface) {
        String first = surface.name().split("/", 2)[0];
        return SurfaceKind.kind(first);
    }

    private static String geometry(CheckResult result) {
        String round = result.chordError() > 0
                ? "Round faces are polygons within " + Figures.atMost(result.chordError()) + " mm. "
                : "";
        Optional<String> gaps = result.judgement().surfaces().stream()
                .map(SurfaceResult::darkness)
                .flatMap(Optional::stream)
                .flatMap(evidence -> gap(evidence).stream())
                .findFirst()
                .map(width ->
                        "Proofs count gaps below " + Figures.atMost(width) + " mm between touching parts as closed.");
        return (round + gaps.orElse("")).strip();
    }

    private static Optional<Double> gap(Evidence evidence) {
        return evidence instanceof Evidence.ProvedDark dark
                ? Optional.of(dark.gapWidth())
                : evidence instanceof Evidence.DarkBehindFacets facets
                        ? Optional.of(facets.gapWidth())
                        : Optional.empty();
    }

    private static String timing(CheckResult result) {
        return Figures.count(result.judgement().samples()) + " samples; proofs took "
                + Figures.three(result.timing().proofs()) + " s, margins "
                + Figures.three(result.timing().margins()) + " s of all threads, the whole check "
                + Figures.three(result.timing().whole()) + " s.";
    }
}
