package darkrim.trace;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Time to build a tree over the wavy ring of {@link KernelFiles}, by one thread and by two. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xms3g", "-Xmx3g", "-XX:+UseSerialGC"})
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class BuildBenchmark {
    private double[] corners;
    private int[] planes;
    private ForkJoinPool pool;

    /** Facets, about. */
    @Param({"1000", "10000", "100000", "1000000"})
    public int facets;

    /** Threads that build. */
    @Param({"1", "2"})
    public int threads;

    /** Makes the facets. */
    @Setup
    public void prepare() {
        corners = ScalingBenchmark.ring(facets);
        planes = new int[corners.length / 9];
        pool = new ForkJoinPool(threads);
    }

    /** Ends the threads. */
    @TearDown
    public void end() {
        pool.shutdown();
    }

    /** A fresh tree. */
    @Benchmark
    public FacetTree build() {
        return pool.submit(() -> FacetTree.build(corners, planes, BenchmarkScene.BOUND))
                .join();
    }
}
