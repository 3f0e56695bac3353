package darkrim.study;

import darkrim.assembly.Opening;
import darkrim.layout.Requirement;
import darkrim.scene.Surface;
import darkrim.shadow.Margin;
import darkrim.shadow.Margins;
import darkrim.shadow.OpeningMargin;
import darkrim.shadow.OpeningMargins;
import darkrim.verdict.Demand;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Proofs;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import java.util.stream.IntStream;

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

    /** What one task found, and how long it took, s. */
    private record Found(Map<Surface, LightMargin> bySurface, List<OpeningMargin> openings, double seconds) {}

    /** Something to look for, and about how much work it is. */
    private record Task(int weight, Supplier<Found> work) {
        private static Task of(int weight, Supplier<Map<Surface, LightMargin>> work) {
            return new Task(weight, () -> new Found(work.get(), List.of(), 0));
        }
    }

    /** Surfaces of one requirement that are proved dark, and those that are lit. */
    private record Group(List<Surface> dark, List<Surface> lit) {
        private static Group of(Demand demand, Proofs proofs) {
            List<Surface> dark = new ArrayList<>();
            List<Surface> lit = new ArrayList<>();
            for (Surface surface : demand.surfaces()) {
                Evidence evidence = proofs.dark().get(surface);
                if (evidence instanceof Evidence.ProvedDark) {
                    dark.add(surface);
                } else if (evidence instanceof Evidence.WitnessRay) {
                    lit.add(surface);
                }
            }
            return new Group(dark, lit);
        }
    }

    /** A search that was begun, which is done beside other work. */
    static final class Search {
        private final List<Future<Found>> begun;
        private final MarginScope scope;
        private final Watch watch;

        private Search(List<Future<Found>> begun, MarginScope scope, Watch watch) {
            this.begun = begun;
            this.scope = scope;
            this.watch = watch;
        }

        /** Nothing, since the work was stopped: what was asked for stands beside it, so that nobody takes it for not asked. */
        Measured stopped() {
            return new Measured(new DirectMargins(Map.of(), List.of(), scope, true), 0);
        }

        /** What was found; waits for it. */
        Measured found() {
            if (begun.isEmpty()) {
                return watch.stop() ? stopped() : Measured.NOTHING;
            }
            Map<Surface, LightMargin> bySurface = new LinkedHashMap<>();
            List<OpeningMargin> openings = new ArrayList<>();
            double seconds = 0;
            for (int i = 0; i < begun.size(); i++) {
                watch.progress(STEP, i, begun.size());
                Found found = Workers.result(begun.get(i));
                found.bySurface.forEach((surface, margin) -> bySurface.merge(surface, margin, LightMargin::or));
                openings.addAll(found.openings);
                seconds += found.seconds;
            }
            return new Measured(new DirectMargins(bySurface, openings, scope, watch.stop()), seconds);
        }
    }

    /**
     * What a search found.
     *
     * @param margins the margins
     * @param seconds how long it took, all threads together
     */
    record Measured(DirectMargins margins, double seconds) {
        static final Measured NOTHING = new Measured(NONE, 0);
    }

    /**
     * Begins to look for margins, beside other work. What is found does not depend on the number of workers.
     *
     * @param placed the scene, openings and detectors
     * @param proofs what is dark and what is lit
     * @param scope which to look for
     * @param doubted whether darkness is worth no more than its clearance, so that limits of direct light that it meets need one too
     * @param workers do the work
     * @param watch hears how far it is
     */
    static Search begin(
            PlacedScene placed, Proofs proofs, MarginScope scope, boolean doubted, Workers workers, Watch watch) {
        if (scope == MarginScope.NONE || watch.stop()) {
            return new Search(List.of(), scope, watch);
        }
        List<Group> groups = new ArrayList<>();
        List<Task> tasks = new ArrayList<>();
        Margins margins = new Margins(placed.scene(), placed.tree(), watch::stop);
        for (Demand demand : placed.demands()) {
            Group group = Group.of(demand, proofs);
            if (demand.requirement().condition() instanceof Requirement.NoDirect) {
                groups.add(group);
            } else if (doubted && demand.requirement().limits(Requirement.LightClass.DIRECT)) {
                tasks.add(leastClearance(margins, group, watch));
            }
        }
        if (groups.isEmpty() && tasks.isEmpty()) {
            return new Search(List.of(), scope, watch);
        }
        Set<Surface> dark = new LinkedHashSet<>();
        Set<Surface> lit = new LinkedHashSet<>();
        groups.forEach(group -> {
            dark.addAll(group.dark);
            lit.addAll(group.lit);
        });
        if (scope != MarginScope.ALL) {
            for (Group group : groups) {
                tasks.add(leastClearance(margins, group, watch));
                List<Surface> flat = group.lit.stream().filter(margins::isFlat).toList();
                tasks.add(Task.of(
                        flat.size(), () -> alike(margins, flat, margins.deepestIntrusion(flat, watch::stop))));
            }
        } else {
            dark.forEach(surface -> tasks.add(Task.of(1, () -> own(margins, surface, margins.clearance(surface)))));
            lit.stream()
                    .filter(margins::isFlat)
                    .forEach(surface -> tasks.add(Task.of(1, () -> own(margins, surface, margins.shadow(surface)))));
        }
        if (scope != MarginScope.REQUIREMENTS
                && !groups.isEmpty()
                && !placed.assembly().openings().isEmpty()) {
            OpeningMargins edges = new OpeningMargins(
                    placed.scene(),
                    placed.tree(),
                    List.copyOf(dark),
                    List.copyOf(lit),
                    placed.assembly().detectors(),
                    watch::stop);
            for (Opening opening : placed.assembly().openings()) {
                tasks.add(new Task(Integer.MAX_VALUE, () -> new Found(Map.of(), edges.of(opening), 0)));
            }
        }
        return new Search(begun(tasks, workers, watch), scope, watch);
    }

    private static Task leastClearance(Margins margins, Group group, Watch watch) {
        return Task.of(
                group.dark.size(), () -> alike(margins, group.dark, margins.leastClearance(group.dark, watch::stop)));
    }

    /** Begins with what takes longest, so that no thread is left with it at the end; in the order of the tasks. */
    private static List<Future<Found>> begun(List<Task> tasks, Workers workers, Watch watch) {
        List<Future<Found>> begun = new ArrayList<>(Collections.nCopies(tasks.size(), null));
        IntStream.range(0, tasks.size())
                .boxed()
                .sorted(Comparator.comparingInt(i -> -tasks.get(i).weight))
                .forEach(i -> begun.set(i, workers.beside(() -> timed(tasks.get(i), watch))));
        return begun;
    }

    private static Found timed(Task task, Watch watch) {
        if (watch.stop()) {
            return new Found(Map.of(), List.of(), 0);
        }
        long start = System.nanoTime();
        Found found = task.work.get();
        if (watch.stop()) {
            // What was still looked for when the proofs gave up is wrong.
            return new Found(Map.of(), List.of(), 1e-9 * (System.nanoTime() - start));
        }
        return new Found(found.bySurface, found.openings, 1e-9 * (System.nanoTime() - start));
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
