package darkrim.trace;

import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** How the time of a ray grows with the facets: the wavy ring of {@link KernelFiles}, finer and finer, with its coherent and incoherent rays. */
public class ScalingBenchmark extends RayBenchmark {
    private BenchmarkRays ways;
    private int next;

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
        ways = new BenchmarkRays(coherent, coherent ? 150 : 0);
        build(ring(facets), 150);
    }

    @Override
    void next(Ray on) {
        ways.set(on, next);
        next = next + 1 == ways.count() ? 0 : next + 1;
    }
}
