package darkrim.verdict;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SamplingSpec;
import darkrim.light.Transport;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Decides requirements: direct light by proof, the rest by sampling until each is decided at the stated confidence or the budget ends.
 *
 * <p>Every surface is first measured alike, for the record. Then the samples of each undecided surface are doubled from look to look. The
 * risk (one minus the confidence) is shared equally by all numbers that sampling has to decide; for each of them {@link
 * ConfidenceSequence} keeps its share over all looks.
 */
public final class Judge {
    /** Surfaces proved between two looks at whether to stop. */
    private static final int PROVED_AT_ONCE = 32;

    private final Transport transport;
    private final Function<Surface, Evidence> darkness;
    private final Workers workers;
    private final SamplingSpec effort;
    private final Plan plan;

    /**
     * @param transport measures light
     * @param darkness says of a surface whether it is proved dark, lit by a witness, or open
     * @param workers do the work
     * @param effort confidence and budget
     * @param plan what is measured first, and how often it is looked at
     */
    public Judge(
            Transport transport,
            Function<Surface, Evidence> darkness,
            Workers workers,
            SamplingSpec effort,
            Plan plan) {
        this.transport = transport;
        this.darkness = darkness;
        this.workers = workers;
        this.effort = effort;
        this.plan = plan;
    }

    /**
     * Decides demands.
     *
     * @param demands what is asked
     * @param dark what {@link #prove} found for them
     * @param watch hears how far it is
     * @throws IllegalStateException if a sample of direct light reaches a surface that is proved dark: one of the two is wrong
     */
    public Judgement decide(List<Demand> demands, Map<Surface, Evidence> dark, Watch watch) {
        Set<Surface> provedDark = dark.entrySet().stream()
                .filter(entry -> entry.getValue() instanceof Evidence.ProvedDark)
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
        Measurements measured = new Measurements(transport.knowingDark(provedDark), workers);
        List<Surface> surfaces = transport.scene().surfaces();
        List<Target> targets = targets(demands, dark);
        Set<Measurements.Order> asked = new LinkedHashSet<>();
        targets.forEach(
                target -> asked.add(new Measurements.Order(target.surface(), target.light(), plan.firstBatches())));
        Set<Measurements.Order> others = new LinkedHashSet<>();
        for (LightClass light : plan.everySurface() ? LightClass.values() : new LightClass[0]) {
            surfaces.forEach(surface -> others.add(new Measurements.Order(surface, light, plan.firstBatches())));
        }
        others.removeAll(asked);
        // What decides comes first, in case the budget does not reach for all.
        boolean going = measured.fill(affordable(asked, measured), watch, effort.mostSamples())
                && measured.fill(affordable(others, measured), watch, effort.mostSamples());
        refuseContradictions(dark, measured);

        double risk = 1 - effort.confidence();
        double share = risk / Math.max(1, targets.size());
        Map<Target, Outcome> outcomes = new LinkedHashMap<>();
        int look = 1;
        while (true) {
            Set<Measurements.Order> next = look(targets, outcomes, measured, share, look);
            if (!going || next.isEmpty() || look == plan.looks()) {
                break;
            }
            List<Measurements.Order> affordable = affordable(next, measured);
            if (affordable.isEmpty()) {
                break;
            }
            going = measured.fill(affordable, watch, effort.mostSamples());
            look++;
        }
        refuseContradictions(dark, measured);

        List<RequirementResult> results = new ArrayList<>();
        for (int i = 0; i < demands.size(); i++) {
            results.add(result(i, demands.get(i), dark, outcomes, measured));
        }
        List<SurfaceResult> perSurface = surfaces.stream()
                .map(surface -> new SurfaceResult(
                        surface,
                        measured.tally(surface, LightClass.DIRECT),
                        measured.tally(surface, LightClass.ONCE_REFLECTED),
                        Optional.ofNullable(dark.get(surface))))
                .toList();
        return new Judgement(results, perSurface, measured.samples(), risk, !going);
    }

    /**
     * Says of every surface whose direct light is asked for, and of every one that reflects, whether it is proved dark, lit by a witness, or
     * open: what is proved dark sends no once-reflected light either.
     */
    public Map<Surface, Evidence> prove(List<Demand> demands, Watch watch) {
        Set<Surface> asked = new LinkedHashSet<>();
        for (Demand demand : demands) {
            if (asksForDirect(demand.requirement().condition())) {
                asked.addAll(demand.surfaces());
            }
        }
        transport.scene().surfaces().stream()
                .filter(surface -> surface.finish().reflectance() > 0)
                .forEach(asked::add);
        List<Surface> order = List.copyOf(asked);
        Map<Surface, Evidence> dark = new LinkedHashMap<>();
        for (int from = 0; from < order.size(); from += PROVED_AT_ONCE) {
            watch.progress("proving darkness", from, order.size());
            List<Surface> some = order.subList(from, Math.min(order.size(), from + PROVED_AT_ONCE));
            boolean stopped = watch.stop();
            List<Evidence> evidence = stopped
                    ? some.stream().map(Judge::unknown).toList()
                    : workers.all(some.stream().map(surface -> () -> darkness.apply(surface)));
            for (int i = 0; i < some.size(); i++) {
                dark.put(some.get(i), evidence.get(i));
            }
        }
        watch.progress("proving darkness", order.size(), order.size());
        return dark;
    }

    /** Of a surface that was not looked at, all is open. */
    private static Evidence unknown(Surface surface) {
        return new Evidence.OpenArea(surface.area(), 1);
    }

    private static boolean asksForDirect(Requirement.Condition condition) {
        return condition instanceof Requirement.NoDirect
                || (condition instanceof Requirement.AtMost most && most.light() == LightClass.DIRECT);
    }

    /** Whether a proof settles a condition. Darkness is about direct light only: once-reflected light may still reach what is dark. */
    private static boolean isByProof(Requirement.Condition condition, Evidence evidence) {
        return condition instanceof Requirement.NoDirect
                || (asksForDirect(condition) && evidence instanceof Evidence.ProvedDark);
    }

    private static List<Target> targets(List<Demand> demands, Map<Surface, Evidence> dark) {
        List<Target> targets = new ArrayList<>();
        for (int i = 0; i < demands.size(); i++) {
            Demand demand = demands.get(i);
            for (Surface surface : demand.surfaces()) {
                if (!isByProof(demand.requirement().condition(), dark.get(surface))) {
                    targets.addAll(Target.of(i, demand, surface));
                }
            }
        }
        return targets;
    }

    /** Looks at every undecided target; returns what must be measured next. A demand that has failed asks for no more. */
    private static Set<Measurements.Order> look(
            List<Target> targets, Map<Target, Outcome> outcomes, Measurements measured, double risk, int look) {
        Set<Integer> failed = new LinkedHashSet<>();
        for (Target target : targets) {
            Outcome known = outcomes.get(target);
            if (known == null || known.verdict() == Verdict.UNDECIDED) {
                known = target.outcome(measured.tally(target.surface(), target.light()), risk, look);
                outcomes.put(target, known);
            }
            if (known.verdict() == Verdict.FAIL) {
                failed.add(target.demand());
            }
        }
        Set<Measurements.Order> next = new LinkedHashSet<>();
        for (Target target : targets) {
            if (outcomes.get(target).verdict() == Verdict.UNDECIDED && !failed.contains(target.demand())) {
                long batches = measured.batches(target.surface(), target.light());
                next.add(new Measurements.Order(target.surface(), target.light(), batches));
            }
        }
        return next;
    }

    /** Cuts the orders to what the budget still allows, all alike. */
    private List<Measurements.Order> affordable(Set<Measurements.Order> orders, Measurements measured) {
        long left = (effort.mostSamples() - measured.samples()) / Measurements.BATCH;
        long wanted = orders.stream().mapToLong(Measurements.Order::batches).sum();
        if (wanted > 0 && wanted <= left) {
            return List.copyOf(orders);
        }
        // Where nothing could be measured before, nothing can be doubled: the budget has ended.
        long each = orders.isEmpty() ? 0 : left / orders.size();
        return orders.stream()
                .map(order -> new Measurements.Order(order.surface(), order.light(), Math.min(each, order.batches())))
                .filter(order -> order.batches() > 0)
                .toList();
    }

    private static RequirementResult result(
            int number,
            Demand demand,
            Map<Surface, Evidence> dark,
            Map<Target, Outcome> outcomes,
            Measurements measured) {
        List<Outcome> all = new ArrayList<>();
        for (Surface surface : demand.surfaces()) {
            Evidence evidence = dark.get(surface);
            if (isByProof(demand.requirement().condition(), evidence)) {
                double mean =
                        measured.tally(surface, LightClass.DIRECT).irradiance().mean();
                all.add(new Outcome(surface, Outcome.WHOLE, verdict(evidence), mean, evidence));
            } else {
                Target.of(number, demand, surface).forEach(target -> all.add(outcomes.get(target)));
            }
        }
        return RequirementResult.of(demand.requirement(), all);
    }

    private static Verdict verdict(Evidence evidence) {
        if (evidence instanceof Evidence.ProvedDark) {
            return Verdict.PASS;
        }
        return evidence instanceof Evidence.WitnessRay ? Verdict.FAIL : Verdict.UNDECIDED;
    }

    private static void refuseContradictions(Map<Surface, Evidence> dark, Measurements measured) {
        dark.forEach((surface, evidence) -> {
            double mean =
                    measured.tally(surface, LightClass.DIRECT).irradiance().mean();
            if (evidence instanceof Evidence.ProvedDark && mean > 0) {
                throw new IllegalStateException(
                        "surface " + surface.name()
                                + " is proved dark, yet a ray reaches it: please report this layout, and do not trust this result");
            }
        });
    }
}
