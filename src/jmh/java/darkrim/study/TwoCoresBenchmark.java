package darkrim.study;

import com.sun.management.OperatingSystemMXBean;
import darkrim.trace.BenchmarkRays;
import darkrim.trace.FacetTree;
import darkrim.trace.KernelFiles;
import darkrim.trace.Ray;
import darkrim.verdict.Watch;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * How many times faster two threads are than one: checks of layouts, and rays alone. One and two take turns in one warm process; the best
 * round of each counts.
 *
 * <p>A program of its own, since JMH takes no turns. Arguments: layouts. On a busy machine two threads do not get two cores: then only
 * processor time says something. The last column is what it allows at most: the time of one thread over that which the calling thread spends
 * alone plus half of what the two workers spend together. It knows nothing of one that waits for the other.
 */
public final class TwoCoresBenchmark {
    private static final int ROUNDS = Integer.getInteger("rounds", 10);
    private static final OperatingSystemMXBean SYSTEM =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private TwoCoresBenchmark() {}

    /** Work that may be shared by threads. */
    private interface Work {
        void run(int threads) throws Exception;
    }

    /** Prints a table. */
    public static void main(String[] arguments) throws Exception {
        System.out.println(
                "| work | one thread, s | two, s | times faster | processor time, one, s | two, s | of these alone, s | allows | load |");
        System.out.println("|---|---|---|---|---|---|---|---|---|");
        for (String layout : arguments) {
            compare(
                    "check of " + Path.of(layout).getFileName(),
                    threads -> Check.of(Path.of(layout), Effort.asAsked().on(threads), Watch.NONE));
        }
        rays("21,000", KernelFiles.ring(150, 70));
        rays("1,000,000", KernelFiles.ring(1000, 500));
    }

    private static void rays(String facets, double[] corners) throws Exception {
        BenchmarkRays ways = new BenchmarkRays(false, 0);
        FacetTree tree = FacetTree.build(corners, new int[corners.length / 9], 150);
        compare("rays through " + facets + " facets", threads -> trace(tree, ways, threads));
    }

    private static void trace(FacetTree tree, BenchmarkRays ways, int threads) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        List<Callable<Integer>> shares = new ArrayList<>();
        int count = ways.count();
        for (int t = 0; t < threads; t++) {
            int from = (int) ((long) count * t / threads);
            int to = (int) ((long) count * (t + 1) / threads);
            shares.add(() -> stopped(tree, ways, from, to));
        }
        int stopped = 0;
        for (Future<Integer> share : pool.invokeAll(shares)) {
            stopped += share.get();
        }
        pool.shutdown();
        if (stopped == 0) {
            throw new AssertionError("no ray met anything");
        }
    }

    private static int stopped(FacetTree tree, BenchmarkRays ways, int from, int to) {
        Ray ray = new Ray();
        int stopped = 0;
        for (int i = from; i < to; i++) {
            ways.set(ray, i);
            stopped += tree.nearest(ray) >= 0 ? 1 : 0;
            ways.set(ray, i);
            stopped += tree.blocked(ray) ? 1 : 0;
        }
        return stopped;
    }

    private static void compare(String what, Work work) throws Exception {
        double[] wall = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] processor = wall.clone();
        double alone = Double.POSITIVE_INFINITY;
        for (int round = -ROUNDS / 2; round < ROUNDS; round++) {
            for (int threads = 1; threads <= 2; threads++) {
                System.gc();
                long spent = SYSTEM.getProcessCpuTime();
                long own = THREADS.getCurrentThreadCpuTime();
                long begun = System.nanoTime();
                work.run(threads);
                double seconds = 1e-9 * (System.nanoTime() - begun);
                own = THREADS.getCurrentThreadCpuTime() - own;
                spent = SYSTEM.getProcessCpuTime() - spent;
                if (round >= 0) {
                    wall[threads - 1] = Math.min(wall[threads - 1], seconds);
                    processor[threads - 1] = Math.min(processor[threads - 1], 1e-9 * spent);
                    alone = Math.min(alone, 1e-9 * own);
                }
            }
        }
        System.out.printf(
                Locale.ROOT,
                "| %s | %.3f | %.3f | %.2f | %.3f | %.3f | %.4f | %.2f | %.1f |%n",
                what,
                wall[0],
                wall[1],
                wall[0] / wall[1],
                processor[0],
                processor[1],
                alone,
                processor[0] / (alone + (processor[1] - alone) / 2),
                SYSTEM.getSystemLoadAverage());
    }
}
