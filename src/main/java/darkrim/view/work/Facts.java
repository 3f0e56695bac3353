package darkrim.view.work;

import darkrim.layout.Requirement;
import darkrim.present.EvidenceWords;
import darkrim.present.Figures;
import darkrim.present.LightPath;
import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is known of the light in a layout, as the window shows it.
 *
 * @param source where it comes from, in words
 * @param verdict on all requirements together
 * @param requirements what each requirement says, in the order of the layout
 * @param surfaces by name of the surface
 */
public record Facts(
        String source, Verdict verdict, List<RequirementFact> requirements, Map<String, SurfaceFacts> surfaces) {
    /** Copies the collections. */
    public Facts {
        requirements = List.copyOf(requirements);
        surfaces = Map.copyOf(surfaces);
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
        double confidence = result.effort().confidence();
        Map<String, List<Judged>> judged = new HashMap<>();
        List<RequirementFact> requirements = new ArrayList<>();
        for (RequirementResult requirement : result.judgement().requirements()) {
            requirements.add(new RequirementFact(
                    requirement.requirement().name(),
                    requirement.verdict(),
                    requirement.outcomes().isEmpty()
                            ? ""
                            : requirement.worst().surface().name(),
                    requirement.leastMargin().map(o -> margin(o.evidence())).orElse("")));
            for (Outcome outcome : requirement.outcomes()) {
                judged.computeIfAbsent(outcome.surface().name(), name -> new ArrayList<>())
                        .add(judged(requirement.requirement(), outcome, confidence));
            }
        }
        Map<String, SurfaceFacts> surfaces = new HashMap<>();
        for (SurfaceResult surface : result.judgement().surfaces()) {
            List<PathFact> paths = LightPath.to(surface, result.scene().surfaces()).stream()
                    .map(path ->
                            new PathFact(path.via().name(), path.part(), path.share(), Reading.of(path.irradiance())))
                    .toList();
            boolean dark = surface.darkness().orElse(null) instanceof Evidence.ProvedDark;
            surfaces.put(
                    surface.surface().name(),
                    new SurfaceFacts(
                            dark ? Reading.NONE : Reading.of(surface.direct().irradiance()),
                            Reading.of(surface.onceReflected().irradiance()),
                            judged.getOrDefault(surface.surface().name(), List.of()),
                            paths));
        }
        return new Facts(source, result.judgement().verdict(), requirements, surfaces);
    }

    private static Judged judged(Requirement requirement, Outcome outcome, double confidence) {
        String cell = outcome.cell() == Outcome.WHOLE
                ? ""
                : outcome.where().substring(outcome.surface().name().length()).strip() + ": ";
        return judged(
                requirement.name(),
                !(requirement.condition() instanceof Requirement.PupilSeen),
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
