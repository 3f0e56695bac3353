package darkrim.shadow;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.verdict.Watch;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What a point sees of the pupil, three ways: by rays to points strewn over the square about it, each on its own; by gathering, in one walk, the
 * facets that may matter to any of them, which is the least that tracing them as a bundle costs; and exactly. Prints microseconds of processor
 * time, and from how many rays on either is cheaper.
 *
 * <p>A program of its own: the question is where lines cross, not how long one call takes. Arguments: a layout and names of surfaces.
 */
public final class SharedOriginBenchmark {
    private static final int POINTS = 400;
    private static final int RAYS = 256;
    private static final int ROUNDS = 12;

    private final Scene scene;
    private final FacetTree tree;
    private final VisiblePupil visible;
    private final Tolerance tolerance;
    private final Ray ray = new Ray();
    private final double[] square = new double[12];
    private long count;

    private SharedOriginBenchmark(PlacedScene placed) {
        scene = placed.scene();
        tree = placed.tree();
        visible = new VisiblePupil(scene, tree);
        tolerance = Tolerance.of(scene.bound(), ProofSettings.DEFAULT.gapWidth());
        Pupil pupil = scene.covering().pupil();
        Outline outline = pupil.outline();
        for (int i = 0; i < 4; i++) {
            Vector3D corner = pupil.frame().at((i % 2 * 2 - 1) * outline.reach(), (i / 2 * 2 - 1) * outline.reach());
            square[3 * i] = corner.getX();
            square[3 * i + 1] = corner.getY();
            square[3 * i + 2] = corner.getZ();
        }
    }

    /** Prints a row a surface. */
    public static void main(String[] arguments) throws Exception {
        PlacedScene placed = PlacedScene.of(Path.of(arguments[0]), Effort.asAsked(), new Findings(), Watch.NONE);
        SharedOriginBenchmark benchmark = new SharedOriginBenchmark(placed);
        System.out.println(
                "| surface | facets | a ray | one walk for all | exact | walk pays from | exact pays from |");
        System.out.println("|---|---|---|---|---|---|---|");
        for (int i = 1; i < arguments.length; i++) {
            benchmark.row(placed.scene().surface(arguments[i]).orElseThrow());
        }
    }

    private void row(Surface surface) {
        double[] best = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        for (int round = 0; round < ROUNDS; round++) {
            for (int way = 0; way < 3; way++) {
                SplittableRandom random = new SplittableRandom(3);
                long begun = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
                for (int i = 0; i < POINTS; i++) {
                    look(way, surface, random);
                }
                long spent = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begun;
                best[way] = Math.min(best[way], 1e-3 * spent / POINTS / (way == 0 ? RAYS : 1));
            }
        }
        System.out.printf(
                Locale.ROOT,
                "| %s | %d | %.3f | %.2f | %.2f | %.0f rays | %.0f rays |%n",
                surface.name(),
                scene.facetCount(),
                best[0],
                best[1],
                best[2],
                best[1] / best[0],
                best[2] / best[0]);
        if (count == 0) {
            throw new AssertionError("nothing stood in the way");
        }
    }

    private void look(int way, Surface surface, SplittableRandom random) {
        int facet = surface.firstFacet() + random.nextInt(surface.facetCount());
        double a = random.nextDouble();
        double b = (1 - a) * random.nextDouble();
        // A little above the surface, so that the walk does not meet it.
        Vector3D point = Vector3D.Sum.create()
                .addScaled(a, scene.corner(facet, 0))
                .addScaled(b, scene.corner(facet, 1))
                .addScaled(1 - a - b, scene.corner(facet, 2))
                .addScaled(1e-6, scene.normal(facet))
                .get();
        switch (way) {
            case 0 -> rays(point, random.split(), scene.plane(facet));
            case 1 -> {
                double[] eye = {point.getX(), point.getY(), point.getZ()};
                ShaftBoxes cone = new ShaftBoxes(square, eye, 0, tolerance);
                tree.passing(cone::mayTouch, f -> count++);
            }
            default -> count += visible.from(point, scene.normal(facet)).isNone() ? 1 : 0;
        }
    }

    private void rays(Vector3D point, SplittableRandom random, int plane) {
        for (int i = 0; i < RAYS; i++) {
            double u = random.nextDouble();
            double v = random.nextDouble();
            double x = square[0] + u * (square[3] - square[0]) + v * (square[6] - square[0]) - point.getX();
            double y = square[1] + u * (square[4] - square[1]) + v * (square[7] - square[1]) - point.getY();
            double z = square[2] + u * (square[5] - square[2]) + v * (square[8] - square[2]) - point.getZ();
            ray.set(point.getX(), point.getY(), point.getZ(), x, y, z, 1, plane);
            count += tree.blocked(ray) ? 1 : 0;
        }
    }
}
