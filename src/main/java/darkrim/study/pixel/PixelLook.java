package darkrim.study.pixel;

import darkrim.layout.Layout;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.WarmthSpec;
import darkrim.light.Estimate;
import darkrim.light.HemisphereTally;
import darkrim.light.HemisphereView;
import darkrim.light.Receiver;
import darkrim.light.Tally;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.scene.Warmth;
import darkrim.shadow.PupilView;
import darkrim.shadow.VisiblePupil;
import darkrim.study.NoSuchPoint;
import darkrim.study.SurfacePoint;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** Looks from places of a scene. The same bits for any number of threads. */
final class PixelLook {
    /** Independent bundles of rays: their spread tells the error. */
    static final int BUNDLES = 16;

    /** A pixel is told in photons per second, a radiance per square metre. */
    private static final double SQUARE_METRES = 1e-6;

    private final Layout layout;
    private final Scene scene;
    private final FacetTree tree;
    private final Optional<Warmth> warmth;
    private final HemisphereView view;
    private final Transport transport;
    private final VisiblePupil visible;
    private final Workers workers;

    PixelLook(Layout layout, Scene scene, FacetTree tree, Optional<Warmth> warmth, long seed, Workers workers) {
        this.layout = layout;
        this.scene = scene;
        this.tree = tree;
        this.warmth = warmth;
        this.view = new HemisphereView(scene, tree, warmth, seed);
        this.transport = new Transport(scene, tree, seed);
        this.visible = new VisiblePupil(scene, tree);
        this.workers = workers;
    }

    Scene scene() {
        return scene;
    }

    /** The point of a place. */
    SurfacePoint point(PixelPlace place) throws NoSuchPoint {
        return SurfacePoint.of(
                scene,
                tree,
                place.point().surface(),
                place.point().u(),
                place.point().v());
    }

    /** Bundles of rays from a point, under a name of the random stream. */
    List<HemisphereTally> bundles(String name, SurfacePoint at, int bundles, int side) {
        return IntStream.range(0, bundles)
                .mapToObj(i -> view.batch(name, at.position(), at.normal(), i, side))
                .toList();
    }

    /**
     * All that a place sees.
     *
     * @param place the place
     * @param at its point
     * @param side rays along each side of a bundle
     * @param watch may ask to stop
     * @return what it sees; empty where it was stopped before the end
     */
    Optional<PixelSight> sight(PixelPlace place, SurfacePoint at, int side, Watch watch) {
        String name = place.point().text();
        List<Callable<Optional<Object>>> work = new ArrayList<>();
        for (int i = 0; i < BUNDLES; i++) {
            int bundle = i;
            work.add(() -> unlessStopped(watch, () -> view.batch(name, at.position(), at.normal(), bundle, side)));
        }
        Receiver.AtPoint receiver = new Receiver.AtPoint(name, at.position(), at.normal());
        for (int i = 0; i < BUNDLES; i++) {
            int batch = i;
            work.add(() -> unlessStopped(
                    watch, () -> transport.batch(receiver, LightClass.ONCE_REFLECTED, batch, side * side)));
        }
        List<HemisphereTally> bundles = new ArrayList<>();
        Tally reflected = transport.unmeasured(receiver, LightClass.ONCE_REFLECTED);
        for (Optional<Object> done : workers.all(work.stream())) {
            if (done.isEmpty()) {
                return Optional.empty();
            }
            if (done.get() instanceof HemisphereTally bundle) {
                bundles.add(bundle);
            } else {
                reflected = reflected.and((Tally) done.get());
            }
        }
        return Optional.of(sight(place, at, new BundleReading(bundles), reflected));
    }

    private static Optional<Object> unlessStopped(Watch watch, Supplier<Object> work) {
        return watch.stop() ? Optional.empty() : Optional.of(work.get());
    }

    private PixelSight sight(PixelPlace place, SurfacePoint at, BundleReading reading, Tally reflected) {
        Optional<Double> pitch = PixelPlace.pixelPitch(layout, place.point().surface());
        double area = pitch.map(side -> side * side).orElse(1.0);
        double perRadiance = Math.PI * area * SQUARE_METRES;
        double efficiency = layout.warmth().map(WarmthSpec::quantumEfficiency).orElse(1.0);
        List<SeenThing> things = new ArrayList<>();
        for (int i = 0; i < reading.size(); i++) {
            if (reading.rays(i) > 0) {
                things.add(thing(i, reading, reflected, perRadiance, efficiency));
            }
        }
        things.sort(Comparator.comparingLong(SeenThing::rays).reversed().thenComparing(SeenThing::name));
        PupilView exact = visible.from(at.position(), at.normal());
        return new PixelSight(
                place,
                at,
                area,
                pitch.isPresent(),
                reading.rays(),
                exact.isNone() ? 0 : exact.irradiance(),
                things,
                reading.mean(bundle -> BundleReading.total(bundle, HemisphereTally::lit), Math.PI),
                reflected.irradiance(),
                new WarmLight(
                        reading.mean(
                                bundle -> BundleReading.total(
                                        bundle, (one, thing) -> one.photons(thing) + one.reflectedPhotons(thing)),
                                perRadiance * efficiency),
                        reading.mean(
                                bundle -> BundleReading.total(
                                        bundle, (one, thing) -> one.watts(thing) + one.reflectedWatts(thing)),
                                perRadiance)),
                perRadiance * efficiency * warmth.map(Warmth::mostPhotons).orElse(0.0));
    }

    private SeenThing thing(int i, BundleReading reading, Tally reflected, double perRadiance, double efficiency) {
        SeenThing.Kind kind = kind(i, reading.bundles().get(0));
        String name = switch (kind) {
            case SURFACE -> scene.surfaces().get(i).name();
            case PUPIL -> "(the pupil)";
            case OPEN -> "(the open: no part is met)";
            case INSIDE -> "(the inside of a part)";
        };
        return new SeenThing(
                kind,
                name,
                kind == SeenThing.Kind.SURFACE ? i : -1,
                reading.rays(i),
                reading.mean(bundle -> bundle.seen(i), Math.PI),
                reading.mean(bundle -> bundle.lit(i), Math.PI),
                onceReflected(i, reflected),
                kelvin(kind, i),
                new WarmLight(
                        reading.mean(bundle -> bundle.photons(i), perRadiance * efficiency),
                        reading.mean(bundle -> bundle.watts(i), perRadiance)),
                new WarmLight(
                        reading.mean(bundle -> bundle.reflectedPhotons(i), perRadiance * efficiency),
                        reading.mean(bundle -> bundle.reflectedWatts(i), perRadiance)));
    }

    private static SeenThing.Kind kind(int i, HemisphereTally tally) {
        if (i == tally.pupil()) {
            return SeenThing.Kind.PUPIL;
        }
        if (i == tally.open()) {
            return SeenThing.Kind.OPEN;
        }
        return i == tally.inside() ? SeenThing.Kind.INSIDE : SeenThing.Kind.SURFACE;
    }

    private double kelvin(SeenThing.Kind kind, int surface) {
        if (warmth.isEmpty()) {
            return Double.NaN;
        }
        return switch (kind) {
            case SURFACE -> warmth.get().kelvin(surface);
            case PUPIL -> warmth.get().pupilKelvin();
            case OPEN -> warmth.get().surroundingsKelvin();
            case INSIDE -> Double.NaN;
        };
    }

    /** By all parts of a finish together; their errors may hang together, so that they add up. */
    private static Estimate onceReflected(int surface, Tally reflected) {
        double mean = 0;
        double deviation = 0;
        for (var entry : reflected.by().entrySet()) {
            if (entry.getKey().surface() == surface) {
                mean += entry.getValue().mean();
                deviation += Math.sqrt(entry.getValue().variance());
            }
        }
        return new Estimate(reflected.irradiance().samples(), mean, deviation * deviation, Double.POSITIVE_INFINITY);
    }
}
