package darkrim.trace;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Time of one ray, nearest and blocked, on one thread. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xmx3g", "-XX:+UseSerialGC"})
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public abstract class RayBenchmark {
    private final Ray ray = new Ray();
    private FacetTree tree;

    /** Builds the tree. */
    final void build(double[] corners, double bound) {
        tree = FacetTree.build(corners, new int[corners.length / 9], bound);
    }

    /** Sets the next ray out. */
    abstract void next(Ray on);

    /** The nearest facet. */
    @Benchmark
    public int nearest() {
        next(ray);
        return tree.nearest(ray);
    }

    /** Whether anything is met. */
    @Benchmark
    public boolean blocked() {
        next(ray);
        return tree.blocked(ray);
    }
}
