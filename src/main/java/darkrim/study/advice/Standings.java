package darkrim.study.advice;

import darkrim.assembly.Selection;
import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Margins;
import darkrim.study.CheckResult;
import darkrim.study.MarginScope;
import darkrim.study.RequirementMargin;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Measures where all requirements stand at some values: direct light and the pupil by their exact margins, limits on light by samples with the
 * same random numbers everywhere. Safe for use by many threads.
 */
final class Standings {
    /** What fails by proof but has no depth counts as failing by this, mm. */
    private static final double UNKNOWN = 0.05;

    private final Trials trials;
    private final List<Requirement> requirements;
    private final Set<String> exceptPupil;
    private final Set<String> limits;

    Standings(Trials trials) {
        this.trials = trials;
        this.requirements = trials.family().written().requirements();
        this.exceptPupil = requirements.stream()
                .filter(each -> !(each.condition() instanceof Requirement.PupilSeen))
                .map(Requirement::name)
                .collect(Collectors.toUnmodifiableSet());
        this.limits = requirements.stream()
                .filter(each -> each.condition() instanceof Requirement.AtMost)
                .map(Requirement::name)
                .collect(Collectors.toUnmodifiableSet());
    }

    /**
     * Where requirements stand.
     *
     * @param sampledOnly whether only limits on light are looked at
     */
    Standing at(Map<String, Double> values, boolean sampledOnly) {
        Optional<CheckResult> found = trials.check(
                values, sampledOnly ? limits : exceptPupil, MarginScope.NONE, trials.seed(), Trials.BATCHES);
        if (found.isEmpty() || trials.stopped() || found.get().judgement().stopped()) {
            return new Standing(values, Map.of(), Map.of(), found.isPresent(), trials.stopped());
        }
        Map<String, Double> room = new TreeMap<>();
        Map<String, Double> error = new TreeMap<>();
        List<RequirementMargin> margins = RequirementMargin.of(found.get());
        for (int i = 0; i < margins.size(); i++) {
            RequirementResult result = found.get().judgement().requirements().get(i);
            RequirementMargin margin = margins.get(i);
            if (result.requirement().condition() instanceof Requirement.AtMost most) {
                room.put(margin.requirement(), sampled(result, most));
                error.put(margin.requirement(), margin.standardError() / most.limit());
            } else {
                room.put(margin.requirement(), millimetres(margin));
            }
        }
        if (!sampledOnly) {
            pupils(found.get().scene(), room);
        }
        return new Standing(values, room, error, true, trials.stopped());
    }

    /** A margin that holds and is a bound alone, as of round parts, has some room: it may well be more than the bound, and is never found to be. */
    private static double millimetres(RequirementMargin margin) {
        if (Double.isNaN(margin.margin())) {
            return -UNKNOWN;
        }
        return margin.holds() && margin.isBound() ? Math.max(margin.margin(), JointSearch.AIM) : margin.margin();
    }

    /** The least reserve of all surfaces, as a share of the limit. */
    private static double sampled(RequirementResult result, Requirement.AtMost most) {
        double least = Double.POSITIVE_INFINITY;
        for (Outcome outcome : result.outcomes()) {
            double room = outcome.evidence() instanceof Evidence.Sampled sampled
                    ? Trials.reserve(sampled.estimate(), most.limit())
                    : outcome.verdict() == Verdict.PASS ? Trials.RESERVE : -1;
            least = Math.min(least, room);
        }
        return least;
    }

    private void pupils(Scene scene, Map<String, Double> room) {
        if (exceptPupil.size() == requirements.size()) {
            return;
        }
        Margins margins = new Margins(scene, FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound()));
        for (Requirement each : requirements) {
            if (!exceptPupil.contains(each.name())) {
                Selection selection = Selection.of(each.surfaces());
                double least = Double.POSITIVE_INFINITY;
                for (Surface surface : scene.surfaces()) {
                    if (selection.selects(surface.name())) {
                        least = Math.min(least, margins.pupil(surface).millimetres());
                    }
                }
                room.put(each.name(), least);
            }
        }
    }
}
