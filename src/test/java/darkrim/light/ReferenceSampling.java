package darkrim.light;

import darkrim.layout.Requirement.LightClass;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.verdict.Workers;
import java.util.concurrent.Callable;
import java.util.function.BinaryOperator;
import java.util.function.Function;
import java.util.function.LongFunction;
import java.util.stream.LongStream;

/**
 * Samples until the standard error is small enough: batches 0, 1, 2, ... in rounds that threads share. Which batches are taken depends on
 * their results only, so the answer is the same for any number of threads.
 */
final class ReferenceSampling {
    static final int BATCH = 20_000;

    /** Aims a little below the largest standard error allowed. */
    static final double AIM = 0.00198;

    private static final long SEED = 20_260;
    private static final int FIRST_ROUND = 8;
    private static final long MOST_BATCHES = 5_000;
    private static final int THREADS = 2;

    private ReferenceSampling() {}

    /** Measures light until a number of the tally is known well enough. */
    static Tally light(Scene scene, Receiver receiver, LightClass light, double aim, Function<Tally, Estimate> number) {
        Transport transport = Transport.of(scene, SEED);
        return until(aim, i -> transport.batch(receiver, light, i, BATCH), Tally::and, number);
    }

    /** Measures light by a given number of batches. */
    static Tally light(Scene scene, Receiver receiver, LightClass light, long batches) {
        Transport transport = Transport.of(scene, SEED);
        return round(0, batches, i -> transport.batch(receiver, light, i, BATCH), Tally::and);
    }

    /** Measures the view factor from a receiver to a surface. */
    static Estimate viewFactor(Scene scene, Receiver receiver, Surface surface) {
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        return until(
                AIM,
                i -> new ViewFactors(scene, tree, SEED + i).between(receiver, surface, BATCH),
                Estimate::and,
                estimate -> estimate);
    }

    /** Follows light from the pupil until the irradiance of a surface is known after a number of reflections. */
    static Estimate forward(Scene scene, Surface surface, int reflections) {
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        return until(
                AIM,
                i -> new ForwardTracer(scene, tree, SEED + i)
                        .trace(BATCH, reflections + 1)
                        .irradiance(surface, reflections),
                Estimate::and,
                estimate -> estimate);
    }

    private static <T> T until(double aim, LongFunction<T> batch, BinaryOperator<T> and, Function<T, Estimate> number) {
        T sum = round(0, FIRST_ROUND, batch, and);
        long done = FIRST_ROUND;
        while (true) {
            Estimate estimate = number.apply(sum);
            if (!(estimate.mean() > 0)) {
                throw new AssertionError("no light found: " + estimate);
            }
            double over = estimate.standardError() / (aim * estimate.mean());
            if (over <= 1) {
                return sum;
            }
            double due = done * over * over;
            if (!(due <= MOST_BATCHES)) {
                throw new AssertionError(estimate + " would need " + due + " batches of " + BATCH);
            }
            long next = Math.min(4 * done, Math.max(done + 1, (long) Math.ceil(due)));
            sum = and.apply(sum, round(done, next, batch, and));
            done = next;
        }
    }

    private static <T> T round(long from, long to, LongFunction<T> batch, BinaryOperator<T> and) {
        try (Workers workers = new Workers(THREADS)) {
            return workers.all(LongStream.range(from, to).mapToObj(i -> (Callable<T>) () -> batch.apply(i))).stream()
                    .reduce(and)
                    .orElseThrow();
        }
    }
}
