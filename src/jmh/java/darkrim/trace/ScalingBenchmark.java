package darkrim.trace;

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
import org.openjdk.jmh.annotations.Warmup;

/** How the time of a ray grows with the facets: the wavy ring of {@link KernelFiles}, finer and finer, with its coherent and incoherent rays. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xmx3g", "-XX:+UseSerialGC"})
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class ScalingBenchmark {
    private final Ray ray = new Ray();
    private FacetTree tree;
    private double[] ways;
    private int at;

    /** Facets, about. */
    @Param({"1000", "10000", "100000", "1000000"})
    public int facets;

    /** Whether neighbouring rays run alike. */
    @Param({"coherent", "incoherent"})
    public String rays;

    /** The ring of about so many facets, twice as many around as across. */
    static double[] ring(int facets) {
        int across = (int) Math.round(Math.sqrt(facets / 4.0));
        return KernelFiles.ring(2 * across, across);
    }

    /** Makes rays and tree. */
    @Setup
    public void prepare() {
        boolean coherent = "coherent".equals(rays);
        double[] corners = ring(facets);
        ways = KernelFiles.rays(coherent, new double[] {100, 100, 40}, coherent ? 150 : 0);
        tree = FacetTree.build(corners, new int[corners.length / 9], 150);
    }

    /** The nearest facet. */
    @Benchmark
    public int nearest() {
        return tree.nearest(nextRay());
    }

    /** Whether there is any. */
    @Benchmark
    public boolean blocked() {
        return tree.blocked(nextRay());
    }

    private Ray nextRay() {
        double[] w = ways;
        int i = at;
        ray.set(w[i], w[i + 1], w[i + 2], w[i + 3], w[i + 4], w[i + 5], w[i + 7], Ray.NO_PLANE);
        at = i + 8 == w.length ? 0 : i + 8;
        return ray;
    }
}
