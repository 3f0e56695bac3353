package darkrim.cli;

import darkrim.trace.FacetTree;
import darkrim.trace.KernelChoice;
import darkrim.trace.Ray;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code darkrim bench-trace}: how fast the ray core is, on files that another ray kernel can read too. Not for designers, so not in the help. */
@Command(
        name = "bench-trace",
        hidden = true,
        description = {
            "Traces the rays of a file through the facets of another on one thread, prints how many a second, and writes what they met.",
            "SCENE holds 9 numbers a facet, RAYS 8 a ray: start, direction, least and greatest distance; OUT gets a"
                    + " 32-bit facet number for every ray, -1 for none, and then a distance for every ray, infinity for"
                    + " none. All little-endian; numbers are 64 bits long, distances in lengths of the direction."
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false)
final class BenchTraceCommand implements Callable<Integer> {
    /** Rays for the compiler to learn from. */
    private static final int WARM_UP = 2_000_000;

    private static final int ROUNDS = 5;

    private final Surroundings surroundings;

    @Parameters(index = "0", paramLabel = "SCENE", description = "The file of facets.")
    private Path scene;

    @Parameters(index = "1", paramLabel = "RAYS", description = "The file of rays.")
    private Path rays;

    @Parameters(index = "2", paramLabel = "OUT", description = "The file for facets and distances.")
    private Path out;

    @Option(names = "--overwrite", description = "Replace OUT if there is such a file.")
    private boolean overwrite;

    private FacetTree tree;
    private double[] ways;
    private int count;
    private final Ray ray = new Ray();

    BenchTraceCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        OutputFile output = new OutputFile("OUT", out, overwrite);
        List<String> problems = new ArrayList<>();
        double[] corners = BenchFile.read(scene, 9, "facet", problems);
        ways = BenchFile.read(rays, 8, "ray", problems);
        BenchFile.checkNumbers(scene, corners, problems);
        BenchFile.checkRays(rays, ways, problems);
        output.problem(scene).ifPresent(why -> problems.add(out + ": " + why));
        if (!problems.isEmpty()) {
            problems.forEach(problem -> surroundings.errors().println("darkrim: " + problem + "."));
            surroundings.errors().flush();
            return ExitCode.UNUSABLE;
        }
        count = ways.length / 8;
        double bound = 0;
        for (double coordinate : corners) {
            bound = Math.max(bound, Math.abs(coordinate));
        }
        for (int i = 0; i < count; i++) {
            for (int k = 0; k < 3; k++) {
                bound = Math.max(bound, Math.abs(start(i, k)));
            }
        }
        long begun = System.nanoTime();
        tree = FacetTree.build(corners, new int[corners.length / 9], bound);
        double building = 1e-9 * (System.nanoTime() - begun);
        ByteBuffer met = ByteBuffer.allocate(12 * count).order(ByteOrder.LITTLE_ENDIAN);
        for (int done = 0; done < WARM_UP && count > 0; done += count) {
            nearest(met);
            blocked();
        }
        double nearest = Double.POSITIVE_INFINITY;
        double blocked = Double.POSITIVE_INFINITY;
        int stopped = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long at = clock();
            nearest(met);
            nearest = Math.min(nearest, 1e-9 * (clock() - at));
            at = clock();
            stopped = blocked();
            blocked = Math.min(blocked, 1e-9 * (clock() - at));
        }
        surroundings
                .output()
                .print(String.format(
                        Locale.ROOT,
                        "%d facets, tree built in %.3f s; %d rays, %d of them blocked; %s.%n"
                                + "nearest %.3f million rays/s, blocked %.3f million rays/s: the best of %d rounds, processor time.%n",
                        corners.length / 9,
                        building,
                        count,
                        stopped,
                        KernelChoice.description(),
                        1e-6 * count / nearest,
                        1e-6 * count / blocked,
                        ROUNDS));
        surroundings.output().flush();
        return output.write(met.array(), surroundings.errors()) ? ExitCode.DONE : ExitCode.UNUSABLE;
    }

    private static long clock() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private void nearest(ByteBuffer met) {
        for (int i = 0; i < count; i++) {
            setOut(i);
            int facet = tree.nearest(ray);
            met.putInt(4 * i, facet);
            met.putDouble(4 * count + 8 * i, facet < 0 ? Double.POSITIVE_INFINITY : ways[8 * i + 6] + ray.distance());
        }
    }

    private int blocked() {
        int stopped = 0;
        for (int i = 0; i < count; i++) {
            setOut(i);
            stopped += tree.blocked(ray) ? 1 : 0;
        }
        return stopped;
    }

    /** A ray with a least distance starts there: a coordinate of that place, mm. */
    private double start(int i, int k) {
        return ways[8 * i + k] + ways[8 * i + 6] * ways[8 * i + 3 + k];
    }

    private void setOut(int i) {
        ray.set(
                start(i, 0),
                start(i, 1),
                start(i, 2),
                ways[8 * i + 3],
                ways[8 * i + 4],
                ways[8 * i + 5],
                ways[8 * i + 7] - ways[8 * i + 6],
                Ray.NO_PLANE);
    }
}
