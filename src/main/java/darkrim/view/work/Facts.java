package darkrim.view.work;

import darkrim.layout.Dimension;
import darkrim.layout.Quantity;
import darkrim.layout.Requirement;
import darkrim.present.EvidenceWords;
import darkrim.present.Figures;
import darkrim.present.HeadCautions;
import darkrim.present.LightPath;
import darkrim.present.MarginWords;
import darkrim.scene.Scene;
import darkrim.study.CheckResult;
import darkrim.study.RequirementMargin;
import darkrim.study.live.LiveState;
import darkrim.verdict.Evidence;
import darkrim.verdict.Judgement;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
        List<String> all = new ArrayList<>(cautions);
        all.addAll(warnings);
        return new Facts(source, verdict, requirements, surfaces, all, outdated);
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
     * @param margin least margin of direct light in words; empty where there is none
     */
    public record RequirementFact(String name, Verdict verdict, String worst, String margin) {}

    /**
     * What a check found.
     *
     * @param result the result
     * @param source where it comes from, in words
     */
    public static Facts of(CheckResult result, String source) {
        List<String> warnings = new ArrayList<>(HeadCautions.of(result));
        result.warnings().forEach(warning -> warnings.add(warning.toString()));
        double confidence = result.effort().confidence();
        return of(result.judgement(), result.scene(), confidence, Map.of(), Map.of(), warnings, source);
    }

    /**
     * What is found of a position while a dimension is dragged.
     *
     * @param state the position
     * @param direct direct light of surfaces by name, for those of which the position tells none yet
     * @param cautions what speaks against relying on the verdict
     */
    static Facts of(LiveState.Placed state, Map<String, Reading> direct, List<String> cautions) {
        Map<String, String> margins = new HashMap<>();
        for (Requirement requirement : state.layout().requirements()) {
            RequirementMargin margin = state.margins().get(requirement.name());
            if (margin != null && !Double.isNaN(margin.margin())) {
                String unit = MarginWords.unit(requirement);
                margins.put(requirement.name(), MarginWords.of(margin) + (unit.equals("1") ? "" : " " + unit));
            }
        }
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
        List<String> warnings = new ArrayList<>(cautions);
        state.warnings().forEach(warning -> warnings.add(warning.toString()));
        String words = source + (position.isEmpty() ? "" : " (not as in the file: " + position + ")");
        return of(state.judgement(), state.scene(), confidence, margins, direct, warnings, words);
    }

    private static String moved(Dimension dimension) {
        String unit = dimension.kind() == Quantity.LENGTH ? " mm" : dimension.kind() == Quantity.ANGLE ? " deg" : "";
        return dimension.name() + " = " + Figures.limit(dimension.value()) + unit;
    }

    private static Facts of(
            Judgement judgement,
            Scene scene,
            double confidence,
            Map<String, String> margins,
            Map<String, Reading> direct,
            List<String> warnings,
            String source) {
        Map<String, List<Judged>> judged = new HashMap<>();
        List<RequirementFact> requirements = new ArrayList<>();
        for (RequirementResult requirement : judgement.requirements()) {
            String name = requirement.requirement().name();
            requirements.add(new RequirementFact(
                    name,
                    requirement.verdict(),
                    requirement.outcomes().isEmpty()
                            ? ""
                            : requirement.worst().surface().name(),
                    margins.containsKey(name)
                            ? margins.get(name)
                            : requirement
                                    .leastMargin()
                                    .map(outcome -> margin(outcome.evidence()))
                                    .orElse("")));
            for (Outcome outcome : requirement.outcomes()) {
                judged.computeIfAbsent(outcome.surface().name(), surface -> new ArrayList<>())
                        .add(judged(requirement.requirement(), outcome, confidence));
            }
        }
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
        if (surface.darkness().orElse(null) instanceof Evidence.ProvedDark) {
            return Reading.NONE;
        }
        Reading own = Reading.of(surface.direct().irradiance());
        return own.equals(Reading.UNKNOWN) ? otherwise : own;
    }

    private static Judged judged(Requirement requirement, Outcome outcome, double confidence) {
        String cell = outcome.cell() == Outcome.WHOLE
                ? ""
                : outcome.where().substring(outcome.surface().name().length()).strip() + ": ";
        return judged(
                requirement.name(),
                !(requirement.condition() instanceof Requirement.PupilSeen
                        || requirement.condition() instanceof Requirement.Clearance),
                outcome.verdict(),
                cell,
                outcome.evidence(),
                confidence);
    }

    static Judged judged(
            String requirement, boolean keepDark, Verdict verdict, String cell, Evidence evidence, double confidence) {
        Optional<Judged.Line> ray = evidence instanceof Evidence.WitnessRay witness
                ? Optional.of(new Judged.Line(witness.onPupil(), witness.onSurface()))
                : Optional.empty();
        return new Judged(
                requirement, keepDark, verdict, cell + EvidenceWords.of(evidence, confidence), margin(evidence), ray);
    }

    /** A margin in words; empty where there is none. */
    static String margin(Evidence evidence) {
        return evidence.margin()
                .map(margin -> (margin.atLeast() ? (margin.millimetres() < 0 ? "at worst " : "at least ") : "")
                        + Figures.margin(margin.millimetres()) + " mm")
                .orElse("");
    }
}
