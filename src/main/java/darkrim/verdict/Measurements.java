package darkrim.verdict;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Receiver;
import darkrim.light.Tally;
import darkrim.light.Transport;
import darkrim.sampling.SamplePoints;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Future;

/**
 * What has been measured at every surface so far, in batches of {@link #BATCH} samples that are counted for each surface and class. For use
 * by one thread, which hands the batches to workers.
 */
final class Measurements {
    /** Samples of one batch: large enough to hide the cost of handing it to a thread. */
    static final int BATCH = 2048;

    private final Transport transport;
    private final Workers workers;
    private final Map<LightClass, Tally[]> tallies = new EnumMap<>(LightClass.class);
    private final Map<LightClass, long[]> batches = new EnumMap<>(LightClass.class);
    private final Map<LightClass, int[]> doubled = new EnumMap<>(LightClass.class);
    private final BatchMeans means = new BatchMeans();
    private final boolean keepMeans;
    private final Set<Surface> judged;

    /** More batches for one surface and class. */
    record Order(Surface surface, LightClass light, long batches) {}

    private record Unit(Order order, long batch) {}

    /**
     * @param judged surfaces of which something is asked: bounds are wanted there, and a bound needs independent samples. Elsewhere samples may depend
     *     on each other, which tells a mean better
     * @param keepMeans whether the mean of each batch is kept
     */
    Measurements(Transport transport, Workers workers, Set<Surface> judged, boolean keepMeans) {
        this.judged = judged;
        this.keepMeans = keepMeans;
        this.transport = transport;
        this.workers = workers;
        int surfaces = transport.scene().surfaces().size();
        for (LightClass light : LightClass.values()) {
            tallies.put(light, new Tally[surfaces]);
            batches.put(light, new long[surfaces]);
            doubled.put(light, new int[surfaces]);
        }
    }

    Tally tally(Surface surface, LightClass light) {
        Tally known = tallies.get(light)[surface.index()];
        return known != null ? known : transport.unmeasured(new Receiver.OnSurface(surface), light);
    }

    /** Finds the largest sample where orders could not be afforded: where none can be larger than 0, that decides. False if it was stopped. */
    boolean boundUnmeasured(Iterable<Order> orders, Watch watch) {
        for (Order order : orders) {
            Tally[] all = tallies.get(order.light());
            int at = order.surface().index();
            if (all[at] == null) {
                if (watch.stop()) {
                    return false;
                }
                all[at] = transport.nothing(new Receiver.OnSurface(order.surface()), order.light());
            }
        }
        return true;
    }

    long batches(Surface surface, LightClass light) {
        return batches.get(light)[surface.index()];
    }

    /** Which of the sizes fixed beforehand the samples of a surface and class have: from 1, one more with each doubling. */
    int look(Surface surface, LightClass light) {
        return 1 + doubled.get(light)[surface.index()];
    }

    BatchMeans means() {
        return means;
    }

    long samples() {
        return BATCH * batches.values().stream().flatMapToLong(Arrays::stream).sum();
    }

    /** Fills orders that double what has been measured; false if it was stopped. */
    boolean doubleThem(List<Order> orders, Watch watch, long most) {
        orders.forEach(order -> doubled.get(order.light())[order.surface().index()]++);
        return fill(orders, watch, most);
    }

    /** Fills orders in slices, so that progress is seen and a stop is heard; false if it was stopped. */
    boolean fill(List<Order> orders, Watch watch, long most) {
        List<Unit> units = new ArrayList<>();
        for (Order order : orders) {
            long first = batches(order.surface(), order.light());
            for (long i = 0; i < order.batches(); i++) {
                units.add(new Unit(order, first + i));
            }
        }
        int slice = 256;
        for (int from = 0; from < units.size(); from += slice) {
            if (watch.stop()) {
                return false;
            }
            List<Unit> part = units.subList(from, Math.min(units.size(), from + slice));
            List<Optional<Tally>> done = measure(part, watch);
            // A slice counts as a whole or not at all.
            if (done.stream().anyMatch(Optional::isEmpty)) {
                return false;
            }
            for (int i = 0; i < done.size(); i++) {
                add(part.get(i).order(), done.get(i).get());
            }
            watch.progress("sampling light, at most", samples(), most);
        }
        return true;
    }

    /**
     * Measures units. The first at a surface finds by what light it is reached, and others at the same surface would wait for that: it is begun
     * well before them.
     */
    private List<Optional<Tally>> measure(List<Unit> part, Watch watch) {
        List<Integer> firsts = new ArrayList<>();
        for (int i = 0; i < part.size(); i++) {
            if (i == 0 || !part.get(i).order().equals(part.get(i - 1).order())) {
                firsts.add(i);
            }
        }
        List<Future<Optional<Tally>>> begun = new ArrayList<>(Collections.nCopies(part.size(), null));
        int ahead = 0;
        for (int own = 0; own < firsts.size(); own++) {
            for (; ahead < Math.min(firsts.size(), own + 2 * workers.count()); ahead++) {
                int at = firsts.get(ahead);
                begun.set(at, workers.begin(() -> measure(part.get(at), watch)));
            }
            int end = own + 1 < firsts.size() ? firsts.get(own + 1) : part.size();
            for (int i = firsts.get(own) + 1; i < end; i++) {
                Unit unit = part.get(i);
                begun.set(i, workers.begin(() -> measure(unit, watch)));
            }
        }
        return begun.stream().map(Workers::result).toList();
    }

    private Optional<Tally> measure(Unit unit, Watch watch) {
        if (watch.stop()) {
            return Optional.empty();
        }
        Receiver receiver = new Receiver.OnSurface(unit.order().surface());
        SamplePoints.Kind kind =
                judged.contains(unit.order().surface()) ? SamplePoints.Kind.PAIRED : SamplePoints.Kind.SCRAMBLED;
        return Optional.of(transport.batch(receiver, unit.order().light(), unit.batch(), BATCH, kind));
    }

    /** Adds in the order of the batches, so that sums do not depend on who came first. */
    private void add(Order order, Tally tally) {
        int at = order.surface().index();
        Tally[] all = tallies.get(order.light());
        all[at] = all[at] == null ? tally : all[at].and(tally);
        batches.get(order.light())[at]++;
        if (keepMeans) {
            means.add(order.surface(), order.light(), tally);
        }
    }
}
