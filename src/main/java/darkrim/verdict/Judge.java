package darkrim.verdict;

import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SamplingSpec;
import darkrim.light.Transport;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/**
 * Decides requirements: by proof what geometry alone decides, the rest by sampling until each is decided at the stated confidence or the
 * budget ends.
 *
 * <p>Every surface is first measured alike, for the record. Then the samples of what is undecided are doubled as {@link Steering} says. The
 * risk (one minus the confidence) is shared equally by all numbers that sampling has to decide; for each of them {@link
 * ConfidenceSequence} keeps its share over all looks.
 */
public final class Judge {
    /** Surfaces proved between two words of how far it is. */
    private static final int PROVED_AT_ONCE = 32;

    /** So many times more samples are taken where a bound was proved. */
    private static final int AGAINST_PROOF = 4;

    private final Transport transport;
    private final Prover prover;
    private final Workers workers;
    private final SamplingSpec effort;
    private final Plan plan;

    /**
     * @param transport measures light
     * @param prover says what geometry alone decides
     * @param workers do the work
     * @param effort confidence and budget
     * @param plan what is measured first, and how often it is looked at
     */
    public Judge(Transport transport, Prover prover, Workers workers, SamplingSpec effort, Plan plan) {
        this.transport = transport;
        this.prover = prover;
        this.workers = workers;
        this.effort = effort;
        this.plan = plan;
    }

    /**
     * Decides demands.
     *
     * @param demands what is asked
     * @param proofs what {@link #prove} found for them
     * @param watch hears how far it is
     * @throws IllegalStateException if samples contradict a proof: one of the two is wrong
     */
    public Judgement decide(List<Demand> demands, Proofs proofs, Watch watch) {
        return decide(demands, proofs, watch, look -> {});
    }

    /**
     * Decides demands and hands over what is known after each look: its bounds hold at every look.
     *
     * @param demands what is asked
     * @param proofs what {@link #prove} found for them
     * @param watch hears how far it is
     * @param looks receives what is known after each look but the last
     * @throws IllegalStateException if samples contradict a proof: one of the two is wrong
     */
    public Judgement decide(List<Demand> demands, Proofs proofs, Watch watch, Consumer<Judgement> looks) {
        Set<Surface> judged = new HashSet<>();
        demands.forEach(demand -> judged.addAll(demand.surfaces()));
        Measurements measured = new Measurements(
                transport.knowingDark(proofs.provedDark()), workers, judged, plan.measured() == Plan.Measured.VALUES);
        Settled settled = new Settled(proofs, measured);
        List<Target> targets = targets(demands, settled);
        Set<Measurements.Order> asked = new LinkedHashSet<>();
        targets.forEach(
                target -> asked.add(new Measurements.Order(target.surface(), target.light(), plan.firstBatches())));
        Set<Measurements.Order> others = others(demands, settled);
        others.removeAll(asked);
        // What decides comes first, in case the budget does not reach for all.
        boolean going = measured.fill(affordable(asked, measured), watch, effort.mostSamples())
                && measured.boundUnmeasured(asked, watch)
                && measured.fill(affordable(others, measured), watch, effort.mostSamples());
        settled.refuseContradictions();

        double share = (1 - effort.confidence()) / Math.max(1, targets.size());
        Map<Target, Outcome> outcomes = new LinkedHashMap<>();
        int round = 1;
        while (true) {
            look(targets, outcomes, measured, share);
            if (!going || round == plan.looks()) {
                break;
            }
            List<Measurements.Order> next = new Steering(targets, outcomes, measured).next(left(measured));
            if (next.isEmpty()) {
                break;
            }
            looks.accept(judgement(demands, settled, measured, outcomes, false));
            going = measured.doubleThem(next, watch, effort.mostSamples());
            round++;
        }
        settled.refuseContradictions();
        return judgement(demands, settled, measured, outcomes, !going);
    }

    private Judgement judgement(
            List<Demand> demands,
            Settled settled,
            Measurements measured,
            Map<Target, Outcome> outcomes,
            boolean stopped) {
        List<RequirementResult> results = new ArrayList<>();
        for (int i = 0; i < demands.size(); i++) {
            results.add(result(i, demands.get(i), settled, outcomes));
        }
        List<SurfaceResult> perSurface = transport.scene().surfaces().stream()
                .map(surface -> new SurfaceResult(
                        surface,
                        measured.tally(surface, LightClass.DIRECT),
                        measured.tally(surface, LightClass.ONCE_REFLECTED),
                        settled.proofs().darkness(surface),
                        settled.proofs().bound(surface)))
                .toList();
        return new Judgement(
                results, perSurface, measured.samples(), 1 - effort.confidence(), stopped, measured.means());
    }

    /** What is measured beside what decides. */
    private Set<Measurements.Order> others(List<Demand> demands, Settled settled) {
        Set<Measurements.Order> others = new LinkedHashSet<>();
        if (plan.measured() == Plan.Measured.EVERYTHING) {
            for (LightClass light : LightClass.values()) {
                transport.scene().surfaces().forEach(surface -> others.add(forRecord(surface, light, settled)));
            }
        }
        if (plan.measured() == Plan.Measured.VALUES) {
            for (Demand demand : demands) {
                for (Surface surface : demand.surfaces()) {
                    settled.sampledValue(demand.requirement().condition(), surface)
                            .ifPresent(light -> others.add(order(surface, light)));
                }
            }
        }
        return others;
    }

    /** Where a bound was proved, samples are held against it: they must be many enough to tell a wrong one. */
    private Measurements.Order forRecord(Surface surface, LightClass light, Settled settled) {
        boolean held = light == LightClass.ONCE_REFLECTED
                && settled.proofs().bound(surface).isPresent();
        return new Measurements.Order(surface, light, plan.firstBatches() * (held ? AGAINST_PROOF : 1L));
    }

    private Measurements.Order order(Surface surface, LightClass light) {
        return new Measurements.Order(surface, light, plan.firstBatches());
    }

    /** Proves what geometry alone can say of what is asked. */
    public Proofs prove(List<Demand> demands, Watch watch) {
        Map<Surface, Evidence> dark = darkness(demands, watch);
        return new BoundSearch(prover, workers, watch).with(demands, dark);
    }

    /**
     * Says of every surface whose direct light is asked for, and of every one that reflects, whether it is proved dark, lit by a witness, or
     * open: what is proved dark sends no once-reflected light either.
     */
    private Map<Surface, Evidence> darkness(List<Demand> demands, Watch watch) {
        Set<Surface> asked = new LinkedHashSet<>();
        for (Demand demand : demands) {
            if (Settled.asksForDirect(demand.requirement().condition())) {
                asked.addAll(demand.surfaces());
            }
        }
        transport.scene().surfaces().stream()
                .filter(surface -> surface.finish().reflects())
                .forEach(asked::add);
        List<Surface> order = List.copyOf(asked);
        Map<Surface, Evidence> dark = new LinkedHashMap<>();
        watch.progress("proving darkness", 0, order.size());
        List<Future<Evidence>> begun = order.stream()
                .map(surface -> workers.begin(() -> watch.stop() ? unknown(surface) : prover.darkness(surface)))
                .toList();
        for (int i = 0; i < order.size(); i++) {
            if (i > 0 && i % PROVED_AT_ONCE == 0) {
                watch.progress("proving darkness", i, order.size());
            }
            dark.put(order.get(i), Workers.result(begun.get(i)));
        }
        watch.progress("proving darkness", order.size(), order.size());
        return dark;
    }

    /** Of a surface that was not looked at, all is open. */
    private static Evidence unknown(Surface surface) {
        return new Evidence.OpenArea(surface.area(), 1);
    }

    private static List<Target> targets(List<Demand> demands, Settled settled) {
        List<Target> targets = new ArrayList<>();
        for (int i = 0; i < demands.size(); i++) {
            Demand demand = demands.get(i);
            for (Surface surface : demand.surfaces()) {
                if (!settled.decides(demand.requirement().condition(), surface)) {
                    targets.addAll(Target.of(i, demand, surface));
                }
            }
        }
        return targets;
    }

    /** Looks at every undecided target that has got more samples since the last time. */
    private static void look(List<Target> targets, Map<Target, Outcome> outcomes, Measurements measured, double risk) {
        for (Target target : targets) {
            Outcome known = outcomes.get(target);
            int look = measured.look(target.surface(), target.light());
            boolean more = known == null
                    || (known.verdict() == Verdict.UNDECIDED && ((Evidence.Sampled) known.evidence()).looks() < look);
            if (more) {
                outcomes.put(target, target.outcome(measured.tally(target.surface(), target.light()), risk, look));
            }
        }
    }

    /** Batches that the budget still allows. */
    private long left(Measurements measured) {
        return (effort.mostSamples() - measured.samples()) / Measurements.BATCH;
    }

    /** Cuts the first orders to what the budget allows, all alike: no sample says yet whose turn it is. */
    private List<Measurements.Order> affordable(Set<Measurements.Order> orders, Measurements measured) {
        long left = left(measured);
        long wanted = orders.stream().mapToLong(Measurements.Order::batches).sum();
        if (wanted <= left) {
            return List.copyOf(orders);
        }
        long each = left / orders.size();
        return orders.stream()
                .map(order -> new Measurements.Order(order.surface(), order.light(), Math.min(each, order.batches())))
                .filter(order -> order.batches() > 0)
                .toList();
    }

    private static RequirementResult result(int number, Demand demand, Settled settled, Map<Target, Outcome> outcomes) {
        if (demand.decided().isPresent()) {
            return demand.decided().get();
        }
        List<Outcome> all = new ArrayList<>();
        for (Surface surface : demand.surfaces()) {
            if (settled.decides(demand.requirement().condition(), surface)) {
                all.addAll(settled.outcomes(demand.requirement().condition(), surface));
            } else {
                Target.of(number, demand, surface).forEach(target -> all.add(outcomes.get(target)));
            }
        }
        return RequirementResult.of(demand.requirement(), all);
    }
}
