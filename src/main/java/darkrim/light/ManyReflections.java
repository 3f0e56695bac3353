package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.sampling.Streams;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Measures light after any number of reflections, apart by order and by path, in batches of independent samples. Batch {@code i} of a receiver
 * gives the same bits on any thread. Safe for use by many threads.
 *
 * <p>Apart from {@link Transport}, which measures direct and once-reflected light only, states a largest sample for every finish and is what verdicts rest on.
 * Both share the light that one surface sends; {@link ForwardTracer} shares no estimator with either.
 */
public final class ManyReflections {
    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final StartPoints starts;
    private final Streams streams;
    private final LitMirrors mirrors;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param seed seed of all random streams
     * @throws IllegalArgumentException if the pupil does not shine on the origin: nothing could be relative to that
     */
    public ManyReflections(Scene scene, FacetTree tree, long seed) {
        if (!(scene.referenceIrradiance() > 0)) {
            throw new IllegalArgumentException("the pupil does not shine on the origin of the layout");
        }
        this.scene = scene;
        this.tree = tree;
        this.pupil = new PupilSource(scene.beam());
        this.starts = new StartPoints(scene.corners(), tree);
        this.streams = new Streams(seed);
        this.mirrors = new LitMirrors(scene, pupil);
    }

    /**
     * No sample of an order can be larger than this, relative irradiance: a sample of direct light times what each reflection may throw. Infinite
     * where a finish has a mirror or a lobe, or the beam a window: two mirrors in turn send on all light of a small pupil, which hardly any walk
     * meets.
     *
     * @param order number of reflections, at least 1
     */
    public double largestSample(int order) {
        double thrown = 0;
        double factor = 0;
        for (Surface surface : scene.surfaces()) {
            Reflection reflection = surface.finish().reflection();
            if (reflection.hasMirror() || !reflection.lobes().isEmpty() || pupil.window != null) {
                return Double.POSITIVE_INFINITY;
            }
            thrown = Math.max(thrown, reflection.greatestBroad());
            factor = Math.max(factor, NextDirection.greatestFactor(reflection));
        }
        return pupil.largestSample(leastHeight())
                / scene.referenceIrradiance()
                * thrown
                * StrictMath.pow(factor, order - 1);
    }

    private double leastHeight() {
        double least = Double.POSITIVE_INFINITY;
        for (Surface surface : scene.surfaces()) {
            for (int i = 0; i < surface.facetCount(); i++) {
                least = Math.min(least, Senders.leastHeight(scene, pupil, surface.firstFacet() + i));
            }
        }
        return least;
    }

    /**
     * Measures one batch.
     *
     * @param receiver where
     * @param most how many reflections are followed, at least 1; what is reflected more often is left out
     * @param batch number of the batch
     * @param samples how many samples
     */
    public PathTally batch(Receiver receiver, int most, long batch, int samples) {
        return batch(receiver, most, batch, samples, (path, node, value) -> {});
    }

    /**
     * Measures the same batch and tells of every way of light on which it found some.
     *
     * @param receiver where
     * @param most how many reflections are followed, at least 1
     * @param batch number of the batch
     * @param samples how many samples
     * @param listener is told of every way, in the order of the samples
     */
    public PathTally batch(Receiver receiver, int most, long batch, int samples, PathListener listener) {
        UniformRandomProvider random = streams.stream(receiver.name() + " up to " + most + " reflections", batch);
        PointSampler point = new PointSampler(scene, starts, receiver);
        PathSums sums = new PathSums();
        PathWalk walk = new PathWalk(scene, tree, pupil, starts, mirrors, most, sums, listener);
        Accumulator[] orders = Accumulator.many(most + 1);
        Accumulator[] upTo = Accumulator.many(most + 1);
        for (int i = 0; i < samples; i++) {
            point.next(random);
            walk.sample(random, point);
            double sum = 0;
            for (int order = 0; order <= most; order++) {
                orders[order].add(walk.found[order]);
                sum += order == 0 ? 0 : walk.found[order];
                upTo[order].add(sum);
            }
        }
        double largest = Double.POSITIVE_INFINITY;
        return new PathTally(
                Accumulator.estimates(orders, largest), Accumulator.estimates(upTo, largest), sums.estimates());
    }
}
