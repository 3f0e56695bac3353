package darkrim.study;

import darkrim.assembly.Assembly;
import darkrim.assembly.Opening;
import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Margin;
import darkrim.shadow.Margins;
import darkrim.shadow.OpeningMargin;
import darkrim.shadow.OpeningMargins;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Judgement;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;

/**
 * The margins of direct light, of all surfaces of which a requirement asks that they get none.
 *
 * @param bySurface margins of surfaces
 * @param openings how far sides and corners of openings can be moved
 * @param scope which were looked for
 * @param stopped whether the search was stopped before it was done
 */
public record DirectMargins(
        Map<Surface, LightMargin> bySurface, List<OpeningMargin> openings, MarginScope scope, boolean stopped) {
    /** None were looked for. */
    public static final DirectMargins NONE = new DirectMargins(Map.of(), List.of(), MarginScope.NONE, false);

    private static final String STEP = "measuring margins";

    /** Copies the lists. */
    public DirectMargins {
        bySurface = Map.copyOf(bySurface);
        openings = List.copyOf(openings);
    }

    /** What one task found. */
    private record Found(Map<Surface, LightMargin> bySurface, List<OpeningMargin> openings) {
        private static Found of(Map<Surface, LightMargin> bySurface) {
            return new Found(bySurface, List.of());
        }
    }

    /** Surfaces of one requirement that are proved dark, and those that are lit. */
    private record Group(List<Surface> dark, List<Surface> lit) {
        private static Group of(RequirementResult result) {
            List<Surface> dark = new ArrayList<>();
            List<Surface> lit = new ArrayList<>();
            for (Outcome outcome : result.outcomes()) {
                if (outcome.evidence() instanceof Evidence.ProvedDark) {
                    dark.add(outcome.surface());
                } else if (outcome.evidence() instanceof Evidence.WitnessRay) {
                    lit.add(outcome.surface());
                }
            }
            return new Group(dark, lit);
        }
    }

    /**
     * Looks for margins. What is found does not depend on the number of workers.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     * @param assembly openings and detectors
     * @param judgement what is dark and what is lit
     * @param scope which to look for
     * @param workers do the work
     * @param watch hears how far it is
     */
    static DirectMargins of(
            Scene scene,
            FacetTree tree,
            Assembly assembly,
            Judgement judgement,
            MarginScope scope,
            Workers workers,
            Watch watch) {
        List<Group> groups = judgement.requirements().stream()
                .filter(result -> result.requirement().condition() instanceof Requirement.NoDirect)
                .map(Group::of)
                .toList();
        if (scope == MarginScope.NONE || groups.isEmpty() || judgement.stopped()) {
            return NONE;
        }
        Set<Surface> dark = new LinkedHashSet<>();
        Set<Surface> lit = new LinkedHashSet<>();
        groups.forEach(group -> {
            dark.addAll(group.dark);
            lit.addAll(group.lit);
        });
        Margins margins = new Margins(scene, tree);
        List<Callable<Found>> tasks = new ArrayList<>();
        if (scope != MarginScope.ALL) {
            for (Group group : groups) {
                tasks.add(() -> Found.of(alike(margins, group.dark, margins.leastClearance(group.dark, watch::stop))));
                List<Surface> flat = group.lit.stream().filter(margins::isFlat).toList();
                tasks.add(() -> Found.of(alike(margins, flat, margins.deepestIntrusion(flat, watch::stop))));
            }
        } else {
            dark.forEach(surface -> tasks.add(() -> Found.of(own(margins, surface, margins.clearance(surface)))));
            lit.stream()
                    .filter(margins::isFlat)
                    .forEach(surface -> tasks.add(() -> Found.of(own(margins, surface, margins.shadow(surface)))));
        }
        OpeningMargins edges =
                new OpeningMargins(scene, tree, List.copyOf(dark), List.copyOf(lit), assembly.detectors());
        for (Opening opening : scope == MarginScope.REQUIREMENTS ? List.<Opening>of() : assembly.openings()) {
            tasks.add(() -> new Found(Map.of(), edges.of(opening, watch::stop)));
        }
        return done(tasks, scope, workers, watch);
    }

    private static DirectMargins done(List<Callable<Found>> tasks, MarginScope scope, Workers workers, Watch watch) {
        Map<Surface, LightMargin> bySurface = new LinkedHashMap<>();
        List<OpeningMargin> openings = new ArrayList<>();
        int slice = 16;
        for (int from = 0; from < tasks.size() && !watch.stop(); from += slice) {
            watch.progress(STEP, from, tasks.size());
            List<Callable<Found>> some = tasks.subList(from, Math.min(tasks.size(), from + slice));
            for (Found found : workers.all(some.stream())) {
                found.bySurface.forEach((surface, margin) -> bySurface.merge(surface, margin, LightMargin::or));
                openings.addAll(found.openings);
            }
        }
        return new DirectMargins(bySurface, openings, scope, watch.stop());
    }

    /** The least margin for the surface that has it; the others have no less. */
    public static Map<Surface, LightMargin> alike(
            Margins margins, List<Surface> surfaces, Optional<Margins.Least> least) {
        Map<Surface, LightMargin> found = new LinkedHashMap<>();
        least.ifPresent(one -> {
            surfaces.forEach(surface ->
                    found.put(surface, LightMargin.noLess(one.margin().millimetres())));
            found.putAll(own(margins, one.surface(), one.margin()));
        });
        return found;
    }

    private static Map<Surface, LightMargin> own(Margins margins, Surface surface, Margin margin) {
        return Map.of(
                surface,
                new LightMargin(
                        margin.millimetres(),
                        margin.capped() && margin.millimetres() > 0,
                        margin.setBy(),
                        margin.line().map(line -> margins.nearestPoint(surface, line.to()))));
    }
}
