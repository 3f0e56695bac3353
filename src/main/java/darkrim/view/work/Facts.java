package darkrim.view.work;

import darkrim.diagnostic.Finding;
import darkrim.layout.Dimension;
import darkrim.layout.Quantity;
import darkrim.present.Figures;
import darkrim.present.HeadCautions;
import darkrim.present.LightPath;
import darkrim.present.Values;
import darkrim.scene.Scene;
import darkrim.study.CheckResult;
import darkrim.study.MarginScope;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.live.LiveState;
import darkrim.verdict.Judgement;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import darkrim.verdict.Verdict;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What is known of the light in a layout, as the window shows it.
 *
 * @param source where it comes from, in words
 * @param verdict on all requirements together
 * @param requirements what each requirement says, in the order of the layout
 * @param surfaces by name of the surface
 * @param warnings what deserves attention in the layout, each with its place where it has one
 * @param outdated why all this is of another position of the dimensions than the one that is asked for; empty where it is not
 */
public record Facts(
        String source,
        Verdict verdict,
        List<RequirementFact> requirements,
        Map<String, SurfaceFacts> surfaces,
        List<String> warnings,
        String outdated) {
    /** Copies the collections. */
    public Facts {
        requirements = List.copyOf(requirements);
        surfaces = Map.copyOf(surfaces);
        warnings = List.copyOf(warnings);
    }

    /** The same with cautions before the warnings. */
    Facts with(List<String> cautions) {
        return new Facts(source, verdict, requirements, surfaces, headed(cautions, warnings), outdated);
    }

    /** Cautions before warnings. Where a caution only repeats a warning, the warning stands in its place: it says where. */
    private static List<String> headed(List<String> cautions, List<String> warnings) {
        Set<String> all = new LinkedHashSet<>();
        for (String caution : cautions) {
            String said = caution.replaceFirst("^CAUTION: ", "").replaceFirst("\\.$", "");
            all.add(warnings.stream()
                    .filter(warning -> warning.contains(said))
                    .findFirst()
                    .orElse(caution));
        }
        all.addAll(warnings);
        return List.copyOf(all);
    }

    /** The same, of another position than the one that is asked for. */
    Facts outdated(String why) {
        return new Facts(source, verdict, requirements, surfaces, warnings, why);
    }

    /** Whether all this is of another position of the dimensions than the one that is asked for. */
    public boolean isOutdated() {
        return !outdated.isEmpty();
    }

    /** Where it comes from, with what is to be said against it, in words. */
    public String words() {
        return isOutdated() ? outdated + "; " + source : source;
    }

    /**
     * What a requirement says.
     *
     * @param name its name
     * @param verdict the verdict
     * @param worst the surface that matters most; empty if there is none
     * @param limit what is asked, in a few words
     * @param value what was found of the surface that matters most, with its error, as a check prints it; empty without a surface
     * @param margin the least margin in words, with its unit or its error; empty where there is none
     */
    public record RequirementFact(
            String name, Verdict verdict, String worst, String limit, String value, String margin) {}

    /**
     * What a check found.
     *
     * @param result the result
     * @param source where it comes from, in words
     */
    public static Facts of(CheckResult result, String source) {
        List<String> warnings = headed(
                HeadCautions.of(result),
                result.warnings().stream().map(Finding::toString).toList());
        double confidence = result.effort().confidence();
        boolean whole = result.margins().scope() != MarginScope.NONE;
        return of(
                result.judgement(),
                result.scene(),
                confidence,
                requirement -> RequirementWords.margin(requirement, result.scene(), whole),
                Map.of(),
                warnings,
                source);
    }

    /**
     * What is found of a position while a dimension is dragged.
     *
     * @param state the position
     * @param direct direct light of surfaces by name, for those of which the position tells none yet
     * @param cautions what speaks against relying on the verdict
     */
    static Facts of(LiveState.Placed state, Map<String, Reading> direct, List<String> cautions) {
        String source = switch (state.detail()) {
            case DIRECT -> "while dragging: direct light by proof, margins follow";
            case MARGINS -> "while dragging: direct light and margins, reflected light follows";
            case REFLECTED -> "while dragging: reflected light grows finer";
            case FINISHED -> "of the dragged position, whole";
        };
        String position = state.chosen().keySet().stream()
                .sorted()
                .map(name -> moved(state.layout().dimensions().get(name)))
                .collect(Collectors.joining(", "));
        double confidence = state.layout().sampling().confidence();
        List<String> warnings = headed(
                cautions, state.warnings().stream().map(Finding::toString).toList());
        String words = source + (position.isEmpty() ? "" : " (not as in the file: " + position + ")");
        return of(
                state.judgement(),
                state.scene(),
                confidence,
                requirement -> RequirementWords.margin(requirement, state.margins()),
                direct,
                warnings,
                words);
    }

    private static String moved(Dimension dimension) {
        String unit = dimension.kind() == Quantity.LENGTH ? " mm" : dimension.kind() == Quantity.ANGLE ? " deg" : "";
        return dimension.name() + " = " + Figures.limit(dimension.value()) + unit;
    }

    private static Facts of(
            Judgement judgement,
            Scene scene,
            double confidence,
            Function<RequirementResult, String> margins,
            Map<String, Reading> direct,
            List<String> warnings,
            String source) {
        Map<String, List<Judged>> judged = RequirementWords.judged(judgement.requirements(), confidence);
        List<RequirementFact> requirements = judgement.requirements().stream()
                .map(each -> RequirementWords.fact(
                        each, outcome -> value(judgement.surfaces(), outcome), margins.apply(each)))
                .toList();
        Map<String, SurfaceFacts> surfaces = new HashMap<>();
        for (SurfaceResult surface : judgement.surfaces()) {
            String name = surface.surface().name();
            List<PathFact> paths = LightPath.to(surface, scene.surfaces()).stream()
                    .map(path ->
                            new PathFact(path.via().name(), path.part(), path.share(), Reading.of(path.irradiance())))
                    .toList();
            surfaces.put(
                    name,
                    new SurfaceFacts(
                            direct(surface, direct.getOrDefault(name, Reading.UNKNOWN)),
                            Reading.of(surface.onceReflected().irradiance()),
                            judged.getOrDefault(name, List.of()),
                            paths));
        }
        return new Facts(source, judgement.verdict(), requirements, surfaces, warnings, "");
    }

    private static Reading direct(SurfaceResult surface, Reading otherwise) {
        Reading own = Reading.proved(DarkProof.of(surface.darkness()))
                .orElseGet(() -> Reading.of(surface.direct().irradiance()));
        return own.equals(Reading.UNKNOWN) ? otherwise : own;
    }

    private static String value(List<SurfaceResult> surfaces, Outcome outcome) {
        SurfaceResult surface = surfaces.get(outcome.surface().index());
        return Values.of(outcome, surface.darkness(), surface.direct().irradiance());
    }
}
