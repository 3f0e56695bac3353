package darkrim.study.rejection;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.ManyReflections;
import darkrim.light.PathTally;
import darkrim.light.Receiver;
import darkrim.light.Tally;
import darkrim.light.Transport;
import darkrim.scene.DistantBody;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.ProofSettings;
import darkrim.study.ProvenLight;
import darkrim.study.rejection.OrderLight.Evidence;
import darkrim.trace.FacetTree;
import darkrim.verdict.ConfidenceSequence;
import darkrim.verdict.Evidence.ProvedDark;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The light of a body in one direction: sampled, and where nothing is found, proved to be none if it can be.
 *
 * <p>Direct and once-reflected light are bounded by {@link ConfidenceSequence}. Light after more reflections is bounded by mean + z s + ln(2 / r) b / n, at
 * the risk r, half for each: z s is the normal law. The last term is for what n samples all missed: the chance that they miss what a share p of all samples
 * would meet is (1 - p)^n, and no sample is larger than b ({@link ManyReflections#largestSample}). Where finishes have mirrors or lobes neither holds: two
 * mirrors in turn send a small body's light on to the receiver in full, and hardly any sample meets it. There no bound is known.
 *
 * <p>All bounds of the direction hold together, so that they can be added up: each has the same share of the risk, one for each receiver and order (union
 * bound).
 */
final class DirectionLight {
    private static final ProofSettings QUICK = new ProofSettings(0.01, 2_000, ProofSettings.DEFAULT.gapWidth());

    private final Scene lit;
    private final FacetTree tree;
    private final List<Surface> receivers;
    private final Transport transport;
    private final ManyReflections many;
    private final int most;
    private final int batches;
    /** Of each bound. */
    private final double risk;

    private final Workers workers;
    private final Watch watch;
    private final boolean doubted;
    private final double perIrradiance;
    private final double area;

    /**
     * @param scene the scene
     * @param body where the light comes from
     * @param receivers surfaces on which it is counted
     * @param seed seed of the random numbers
     * @param settings how much is looked at
     * @param doubted whether facets stand for curved surfaces, so that a proof about them is none
     * @param confidence of all bounds of one direction together
     * @param workers do the work
     * @param watch may stop it
     */
    DirectionLight(
            Scene scene,
            DistantBody body,
            List<Surface> receivers,
            long seed,
            RejectionSettings settings,
            boolean doubted,
            double confidence,
            Workers workers,
            Watch watch) {
        lit = body.over(scene);
        tree = FacetTree.build(lit.corners(), lit.copyPlanes(), lit.bound());
        this.receivers = receivers;
        transport = new Transport(lit, tree, seed);
        many = new ManyReflections(lit, tree, seed);
        most = settings.most();
        batches = settings.batches();
        risk = (1 - confidence) / (receivers.size() * (most + 1.0));
        this.doubted = doubted;
        this.workers = workers;
        this.watch = watch;
        perIrradiance = 1 / DistantBody.facing(lit);
        area = receivers.stream().mapToDouble(Surface::area).sum();
    }

    /** Light by the number of reflections. */
    List<OrderLight> orders() {
        List<OrderLight> orders = new ArrayList<>();
        orders.add(bounded(0, LightClass.DIRECT));
        orders.add(bounded(1, LightClass.ONCE_REFLECTED));
        if (most > 1) {
            List<PathTally> found = followed();
            for (int order = 2; order <= most; order++) {
                int which = order;
                double largest = many.largestSample(order);
                orders.add(mean(
                        order,
                        found.stream().map(each -> each.orders().get(which)).toList(),
                        estimate -> usual(estimate, largest)));
            }
        }
        return prove(orders);
    }

    private OrderLight bounded(int order, LightClass light) {
        List<Estimate> found = new ArrayList<>();
        for (Surface receiver : receivers) {
            Receiver on = new Receiver.OnSurface(receiver);
            Tally sum = transport.nothing(on, light);
            List<Tally> each = workers.all(IntStream.range(0, batches).mapToObj(batch ->
                    (Callable<Tally>) () -> transport.batch(on, light, batch, RejectionSettings.BATCH)));
            for (Tally batch : each) {
                sum = sum.and(batch);
            }
            found.add(sum.irradiance());
        }
        ConfidenceSequence bounds = new ConfidenceSequence(risk);
        return mean(order, found, estimate -> bounds.upper(estimate.times(perIrradiance), 1));
    }

    private List<PathTally> followed() {
        List<PathTally> found = new ArrayList<>();
        for (Surface receiver : receivers) {
            Receiver on = new Receiver.OnSurface(receiver);
            PathTally sum = PathTally.none(most);
            List<PathTally> each = workers.all(IntStream.range(0, batches).mapToObj(batch ->
                    (Callable<PathTally>) () -> many.batch(on, most, batch, RejectionSettings.BATCH)));
            for (PathTally batch : each) {
                sum = sum.and(batch);
            }
            found.add(sum);
        }
        return found;
    }

    /** Whether a finish has a mirror or a lobe. */
    static boolean isShiny(Scene scene) {
        return scene.surfaces().stream()
                .map(each -> each.finish().reflection())
                .anyMatch(each -> each.hasMirror() || !each.lobes().isEmpty());
    }

    private double usual(Estimate estimate, double largest) {
        double quantile = NormalDistribution.of(0, 1).inverseSurvivalProbability(risk / 2);
        double unseen = -StrictMath.log(risk / 2) * largest / estimate.samples();
        return perIrradiance * (estimate.mean() + quantile * estimate.standardError() + unseen);
    }

    private interface Bound {
        double of(Estimate relative);
    }

    /** The mean over the area of all receivers, over the irradiance of the body. */
    private OrderLight mean(int order, List<Estimate> found, Bound bound) {
        double value = 0;
        double squares = 0;
        double atMost = 0;
        for (int i = 0; i < receivers.size(); i++) {
            double share = receivers.get(i).area() / area;
            Estimate estimate = found.get(i);
            value += share * perIrradiance * estimate.mean();
            double error = share * perIrradiance * estimate.standardError();
            squares += error * error;
            atMost += share * bound.of(estimate);
        }
        return new OrderLight(
                order, value > 0 ? Evidence.SAMPLED : Evidence.NONE_FOUND, value, Math.sqrt(squares), atMost);
    }

    /** Tries to prove what was not found; what is proved of facets alone, with no clearance known, is no proof. */
    private List<OrderLight> prove(List<OrderLight> orders) {
        boolean noDirect = orders.get(0).evidence() == Evidence.NONE_FOUND;
        boolean noOnce = orders.get(1).evidence() == Evidence.NONE_FOUND;
        if (watch.stop() || doubted || !(noDirect || noOnce)) {
            return orders;
        }
        ProvenLight proven = new ProvenLight(lit, tree, QUICK, watch::stop);
        List<OrderLight> known = new ArrayList<>(orders);
        if (noDirect && receivers.stream().allMatch(each -> isDark(proven, each))) {
            known.set(0, OrderLight.proved(0));
        }
        if (!noOnce) {
            return known;
        }
        if (lit.surfaces().stream()
                .filter(each -> each.finish().reflects())
                .allMatch(each -> sendsNothing(proven, each))) {
            known.set(1, OrderLight.proved(1));
        }
        return known;
    }

    /** Whether no receiver sees a surface that reflects, or else the surface is dark. */
    private boolean sendsNothing(ProvenLight proven, Surface surface) {
        Set<Surface> others = new HashSet<>(lit.surfaces());
        others.remove(surface);
        boolean unseen = receivers.stream().allMatch(each -> proven.mostReflected(each, others, 0) == 0);
        return unseen || isDark(proven, surface);
    }

    private static boolean isDark(ProvenLight proven, Surface surface) {
        return proven.darkness(surface) instanceof ProvedDark;
    }
}
