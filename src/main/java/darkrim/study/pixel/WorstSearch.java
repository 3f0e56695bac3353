package darkrim.study.pixel;

import darkrim.light.HemisphereTally;
import darkrim.study.NoSuchPoint;
import darkrim.study.PointName;
import darkrim.study.SurfacePoint;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;

/**
 * Looks for the worst pixel: over a grid on every active area, then around the best places with halved steps. All places are looked at with the
 * same random numbers, so that what differs between two comes from the geometry. It is a search: a pixel between the places may be worse.
 */
final class WorstSearch {
    /** Places along each side of an active area, from one corner pixel to the other. */
    static final int GRID = 7;
    /** Places of the grid around which the search goes on. */
    static final int KEPT = 3;
    /** How often the step is halved: from a sixth of the side to a 96th. */
    static final int HALVINGS = 4;

    private static final int BUNDLES = 2;
    private static final int SIDE = 40;

    /** What the search went through. */
    record Outcome(PixelPlace place, double value, int tried, long raysEach) {}

    private record Tried(PointName point, double value) {}

    private final PixelLook look;
    private final boolean byWarmth;
    private final Workers workers;
    private final Watch watch;
    private final Map<PointName, Double> known = new LinkedHashMap<>();

    WorstSearch(PixelLook look, boolean byWarmth, Workers workers, Watch watch) {
        this.look = look;
        this.byWarmth = byWarmth;
        this.workers = workers;
        this.watch = watch;
    }

    /**
     * The worst place found.
     *
     * @param areas names of the surfaces to search, each with half a pixel as a share of its side
     */
    Outcome over(Map<String, Double> areas) {
        List<PointName> grid = new ArrayList<>();
        areas.forEach((surface, in) -> {
            for (int j = 0; j < GRID; j++) {
                for (int i = 0; i < GRID; i++) {
                    grid.add(new PointName(surface, along(i, in), along(j, in)));
                }
            }
        });
        List<Tried> best = worst(tried(grid));
        double step = 1.0 / (GRID - 1);
        for (int k = 0; k < HALVINGS && !watch.stop(); k++) {
            step /= 2;
            List<PointName> around = new ArrayList<>();
            for (Tried centre : best) {
                double in = areas.get(centre.point.surface());
                for (int j = -1; j <= 1; j++) {
                    for (int i = -1; i <= 1; i++) {
                        around.add(new PointName(
                                centre.point.surface(),
                                within(centre.point.u() + i * step, in),
                                within(centre.point.v() + j * step, in)));
                    }
                }
            }
            best = worst(tried(around));
        }
        Tried found = best.get(0);
        return new Outcome(
                new PixelPlace(found.point, PixelPlace.Why.WORST),
                found.value,
                known.size(),
                (long) BUNDLES * SIDE * SIDE);
    }

    private static double along(int i, double in) {
        return in + (1 - 2 * in) * i / (GRID - 1);
    }

    private static double within(double share, double in) {
        return Math.max(in, Math.min(1 - in, share));
    }

    private List<Tried> tried(List<PointName> points) {
        List<PointName> unknown = points.stream()
                .distinct()
                .filter(point -> !known.containsKey(point))
                .toList();
        watch.progress("searching the worst pixel", known.size(), known.size() + (long) unknown.size());
        List<Double> values = workers.all(unknown.stream().<Callable<Double>>map(point -> () -> value(point)));
        for (int i = 0; i < values.size(); i++) {
            known.put(unknown.get(i), values.get(i));
        }
        return known.entrySet().stream()
                .map(entry -> new Tried(entry.getKey(), entry.getValue()))
                .toList();
    }

    private static List<Tried> worst(List<Tried> tried) {
        return tried.stream()
                .sorted(Comparator.comparingDouble(Tried::value)
                        .reversed()
                        .thenComparing(one -> one.point.surface())
                        .thenComparing(one -> one.point.v())
                        .thenComparing(one -> one.point.u()))
                .limit(KEPT)
                .toList();
    }

    private double value(PointName point) {
        SurfacePoint at;
        try {
            at = look.point(new PixelPlace(point, PixelPlace.Why.WORST));
        } catch (NoSuchPoint outside) {
            return Double.NEGATIVE_INFINITY;
        }
        BundleReading reading = new BundleReading(look.bundles("worst", at, BUNDLES, SIDE));
        return byWarmth
                ? reading.mean(
                                bundle -> BundleReading.total(
                                        bundle, (one, thing) -> one.photons(thing) + one.reflectedPhotons(thing)),
                                1)
                        .mean()
                : reading.mean(bundle -> BundleReading.total(bundle, HemisphereTally::lit), Math.PI)
                        .mean();
    }
}
