package darkrim.trace;

import java.util.Random;
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

/** Time of one ray, nearest and blocked, on one thread. The rays run between points strewn evenly over the cube of +-110 mm. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class TraceBenchmark {
    private static final int RAYS = 1 << 14;

    /** The facets. */
    @Param
    public BenchmarkScene scene;

    private FacetTree tree;
    private final Ray ray = new Ray();
    private final double[] ends = new double[6 * RAYS];
    private int next;

    /** Builds the tree and the rays. */
    @Setup
    public void build() {
        double[] corners = scene.corners();
        tree = FacetTree.build(corners, new int[corners.length / 9], BenchmarkScene.BOUND);
        Random random = new Random(11);
        for (int i = 0; i < ends.length; i++) {
            ends[i] = 220 * random.nextDouble() - 110;
        }
    }

    /** The nearest facet between two points. */
    @Benchmark
    public int nearest() {
        return tree.nearest(nextRay());
    }

    /** Whether anything lies between two points. */
    @Benchmark
    public boolean blocked() {
        return tree.blocked(nextRay());
    }

    private Ray nextRay() {
        int at = 6 * next;
        next = (next + 1) % RAYS;
        double x = ends[at];
        double y = ends[at + 1];
        double z = ends[at + 2];
        ray.set(x, y, z, ends[at + 3] - x, ends[at + 4] - y, ends[at + 5] - z, 1, Ray.NO_PLANE);
        return ray;
    }
}
