package darkrim.light;

import darkrim.layout.Requirement.LightClass;
import darkrim.sampling.SamplePoints;
import darkrim.sampling.Streams;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import java.lang.ref.SoftReference;
import java.util.Arrays;
import java.util.Collection;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Measures direct and once-reflected light at receivers of a scene, in batches of independent samples. Batch {@code i} of a receiver and
 * class gives the same bits on any thread. Safe for use by many threads.
 */
public final class Transport {
    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final StartPoints starts;
    private final Streams streams;
    private final boolean[] lit;
    private final boolean linking;
    /**
     * Given up where memory runs short, for the links of a receiver take up to a megabyte: found anew they are the same to the last bit.
     */
    private final Map<Receiver, SoftReference<Reflectors>> reflectors = new ConcurrentHashMap<>();

    /** Found when first asked for; only {@link #senders} may touch it. */
    private Senders senders;

    /**
     * @param scene the scene
     * @param tree the tree over the scene's facets
     * @param seed seed of all random streams
     * @throws IllegalArgumentException if the pupil does not shine on the origin: nothing could be relative to that
     */
    public Transport(Scene scene, FacetTree tree, long seed) {
        this(scene, tree, new StartPoints(scene.corners(), tree), new Streams(seed), allLit(scene), true);
    }

    private Transport(
            Scene scene, FacetTree tree, StartPoints starts, Streams streams, boolean[] lit, boolean linking) {
        if (!(scene.referenceIrradiance() > 0)) {
            throw new IllegalArgumentException("the pupil does not shine on the origin of the layout");
        }
        this.scene = scene;
        this.tree = tree;
        this.pupil = new PupilSource(scene.beam());
        this.starts = starts;
        this.streams = streams;
        this.lit = lit;
        this.linking = linking;
    }

    /**
     * The same transport that knows some surfaces to get no direct light: they send no once-reflected light, and it need not be looked for.
     *
     * @param dark surfaces of the scene that are proved dark
     */
    public Transport knowingDark(Collection<Surface> dark) {
        boolean[] stillLit = lit.clone();
        dark.forEach(surface -> stillLit[surface.index()] = false);
        return new Transport(scene, tree, starts, streams, stillLit, linking);
    }

    /** The same transport that draws points evenly and looks from them anywhere: what links are held against. */
    Transport withoutLinks() {
        return new Transport(scene, tree, starts, streams, lit, false);
    }

    /** A transport with a tree of its own. */
    public static Transport of(Scene scene, long seed) {
        return new Transport(scene, FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound()), seed);
    }

    /** The scene. */
    public Scene scene() {
        return scene;
    }

    /** The tree over the scene's facets. */
    public FacetTree tree() {
        return tree;
    }

    /** No sample of a class of light at a receiver can be larger than this, relative irradiance. */
    public double largestSample(Receiver receiver, LightClass light) {
        if (light == LightClass.ONCE_REFLECTED) {
            return reflectors(receiver).largestSample();
        }
        double sample = receiver instanceof Receiver.OnSurface on
                ? largestDirect(on.surface())
                : pupil.largestSample(height(((Receiver.AtPoint) receiver).position()));
        return sample / scene.referenceIrradiance();
    }

    /** Nothing measured yet at a receiver, and the largest sample not looked for: that takes a while in a scene of many facets. */
    public Tally unmeasured(Receiver receiver, LightClass light) {
        return Tally.none(light, Double.POSITIVE_INFINITY, cells(receiver), Double.POSITIVE_INFINITY);
    }

    /** Nothing measured yet at a receiver. */
    public Tally nothing(Receiver receiver, LightClass light) {
        double largest = largestSample(receiver, light);
        boolean linked = light == LightClass.ONCE_REFLECTED
                && reflectors(receiver).links().isPresent();
        return Tally.none(light, largest, cells(receiver), linked ? largest * cells(receiver) : largest);
    }

    /**
     * Measures one batch.
     *
     * @param receiver where
     * @param light which light
     * @param batch number of the batch
     * @param samples how many samples
     */
    public Tally batch(Receiver receiver, LightClass light, long batch, int samples) {
        return batch(receiver, light, batch, samples, SamplePoints.Kind.PAIRED);
    }

    /**
     * Measures one batch. The cells of a map without links are means over as many samples as fall in them, which only independent points leave
     * unbiased: there the points are independent whatever is asked for.
     *
     * @param receiver where
     * @param light which light
     * @param batch number of the batch
     * @param samples how many samples
     * @param kind how they lie to each other
     */
    public Tally batch(Receiver receiver, LightClass light, long batch, int samples, SamplePoints.Kind kind) {
        UniformRandomProvider random = streams.stream(receiver.name() + " " + light, batch);
        boolean linked = light == LightClass.ONCE_REFLECTED
                && reflectors(receiver).links().isPresent();
        SamplePoints.Kind even = cells(receiver) == 0 || linked ? kind : SamplePoints.Kind.INDEPENDENT;
        SamplePoints points = SamplePoints.of(even, random, samples, halved(receiver, linked));
        PointSampler point = new PointSampler(scene, starts, receiver);
        if (light == LightClass.DIRECT) {
            return new DirectBatch(scene, tree, pupil, cells(receiver))
                    .tally(points, point, samples, largestSample(receiver, LightClass.DIRECT));
        }
        return new ReflectedBatch(scene, tree, pupil, starts, reflectors(receiver), lit, cells(receiver))
                .tally(points, point, samples);
    }

    /**
     * Measures one batch over a part of a surface. What it finds is for showing, not for judging: it states no largest sample.
     *
     * @param patch where; not without area
     * @param light which light
     * @param batch number of the batch
     * @param samples how many samples
     */
    public Estimate batch(Patch patch, LightClass light, long batch, int samples) {
        UniformRandomProvider random = streams.stream(patch.name() + " " + light, batch);
        Receiver whole = new Receiver.OnSurface(patch.surface());
        PointSampler point = new PointSampler(scene, starts, whole);
        DirectLight direct = new DirectLight(scene, tree, pupil);
        ReflectedLight reflected = light == LightClass.DIRECT
                ? null
                : new ReflectedLight(scene, tree, pupil, starts, reflectors(whole), lit);
        Accumulator sum = new Accumulator();
        for (int i = 0; i < samples; i++) {
            point.next(random, patch);
            sum.add(
                    reflected != null
                            ? reflected.sample(random, point)
                            : direct.sample(
                                    random, point.x, point.y, point.z, point.nx, point.ny, point.nz, point.plane));
        }
        return sum.estimate(Double.POSITIVE_INFINITY);
    }

    /** The coordinates of a sample that matter most, the first ones that it asks for: where it starts and where it looks. */
    private static int[] halved(Receiver receiver, boolean linked) {
        if (receiver instanceof Receiver.AtPoint) {
            return linked ? new int[] {0, 0, 1, 0, 2} : new int[] {0, 1};
        }
        if (linked) {
            return new int[] {0, 0, 3, 0, 4, 0, 1, 2};
        }
        return ((Receiver.OnSurface) receiver).surface().facetCount() == 1
                ? new int[] {3, 4, 1, 2}
                : new int[] {3, 4, 0, 2};
    }

    private double height(Vector3D position) {
        return pupil.height(position.getX(), position.getY(), position.getZ());
    }

    private double largestDirect(Surface surface) {
        double least = Double.POSITIVE_INFINITY;
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            for (int k = 0; k < 3; k++) {
                least = Math.min(least, height(scene.corner(f, k)));
            }
        }
        return pupil.largestSample(least);
    }

    private Reflectors reflectors(Receiver receiver) {
        Reflectors found = null;
        while (found == null) {
            found = reflectors
                    .compute(receiver, (at, kept) -> kept != null && kept.get() != null ? kept : find(at))
                    .get();
        }
        return found;
    }

    private SoftReference<Reflectors> find(Receiver receiver) {
        return new SoftReference<>(new Reflectors(scene, senders(), receiver, starts.lift(), linking));
    }

    private synchronized Senders senders() {
        if (senders == null) {
            senders = new Senders(scene, tree, starts, pupil, streams, lit);
        }
        return senders;
    }

    /** By surface number: nothing is known to be dark. */
    static boolean[] allLit(Scene scene) {
        boolean[] lit = new boolean[scene.surfaces().size()];
        Arrays.fill(lit, true);
        return lit;
    }

    private static int cells(Receiver receiver) {
        return receiver instanceof Receiver.OnSurface on && on.surface().grid().isPresent()
                ? on.surface().grid().get().count()
                : 0;
    }
}
