package darkrim.trace;

import java.util.Random;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** Rays between points strewn evenly over the cube of +-110 mm, each to the other point at the farthest. */
public class TraceBenchmark extends RayBenchmark {
    private static final int RAYS = 1 << 14;

    /** The facets. */
    @Param
    public BenchmarkScene scene;

    private final double[] ends = new double[6 * RAYS];
    private int next;

    /** Builds the tree and the rays. */
    @Setup
    public void build() {
        build(scene.corners(), BenchmarkScene.BOUND);
        Random random = new Random(11);
        for (int i = 0; i < ends.length; i++) {
            ends[i] = 220 * random.nextDouble() - 110;
        }
    }

    @Override
    void next(Ray on) {
        int at = 6 * next;
        next = (next + 1) % RAYS;
        double x = ends[at];
        double y = ends[at + 1];
        double z = ends[at + 2];
        on.set(x, y, z, ends[at + 3] - x, ends[at + 4] - y, ends[at + 5] - z, 1, Ray.NO_PLANE);
    }
}
