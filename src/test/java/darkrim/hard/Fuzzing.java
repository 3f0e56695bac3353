package darkrim.hard;

import com.sun.management.OperatingSystemMXBean;
import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;

/**
 * Feeds a trial with inputs by chance and notes what must not be: an exception, an input that takes longer than {@value #MOST_SECONDS} s of
 * the processors or {@value #MOST_SECONDS_OF_CLOCK} s of the clock on a busy machine, or one for which more than {@link #MOST_BYTES} are allocated by the
 * thread that reads, which bounds what it holds at once.
 */
final class Fuzzing {
    static final int MOST_SECONDS = 10;
    static final int MOST_SECONDS_OF_CLOCK = 100;
    /** Bytes allocated for one input. */
    static final long MOST_BYTES = 1L << 29;

    private static final int MOST_FAULTS = 20;
    private static final OperatingSystemMXBean PROCESS =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private final Trial trial;
    private final long seed;
    private final List<Fault> faults = new ArrayList<>();
    private volatile byte[] current = {};
    private volatile long started;
    private volatile long startedOfProcessors;
    private final AtomicLong tried = new AtomicLong();
    private long used;
    private long slowest;
    private long largest;

    /**
     * An input that the program did not bear.
     *
     * @param number which one it was, from 0, of the seed
     * @param what what happened
     * @param input the input, a character for each byte
     */
    record Fault(long number, String what, String input) {}

    /** What came of it. */
    record Tally(
            String name,
            long tried,
            long used,
            double seconds,
            double slowestSeconds,
            double largestMegabytes,
            List<Fault> faults) {
        @Override
        public String toString() {
            return "%s: %,d inputs in %.1f s of the processors, %,d used, slowest %.2f s, most allocated %.0f MB, %d faults"
                    .formatted(name, tried, seconds, used, slowestSeconds, largestMegabytes, faults.size());
        }
    }

    private Fuzzing(Trial trial, long seed) {
        this.trial = trial;
        this.seed = seed;
    }

    /**
     * Tries inputs until there are enough of them.
     *
     * @param trial what reads them
     * @param seed same seed, same inputs
     * @param enough whether to stop; asked between inputs with their number
     */
    static Tally run(Trial trial, long seed, BooleanSupplier enough) throws InterruptedException {
        return new Fuzzing(trial, seed).watched(enough);
    }

    private Tally watched(BooleanSupplier enough) throws InterruptedException {
        Thread worker = new Thread(() -> work(enough), "trial-" + trial.name());
        // A trial that hangs must not keep the process.
        worker.setDaemon(true);
        long begin = PROCESS.getProcessCpuTime();
        started = System.nanoTime();
        startedOfProcessors = begin;
        worker.start();
        while (worker.isAlive()) {
            worker.join(200);
            if (worker.isAlive() && isEndless()) {
                StackTraceElement[] where = worker.getStackTrace();
                faults.add(fault("no end within " + MOST_SECONDS + " s, at "
                        + List.of(where).subList(0, Math.min(12, where.length))));
                break;
            }
        }
        double seconds = (PROCESS.getProcessCpuTime() - begin) * 1e-9;
        return new Tally(trial.name(), tried.get(), used, seconds, slowest * 1e-9, largest * 1e-6, List.copyOf(faults));
    }

    private void work(BooleanSupplier enough) {
        SplittableRandom seeds = new SplittableRandom(seed);
        while (!enough.getAsBoolean() && faults.size() < MOST_FAULTS) {
            current = trial.input(seeds.split());
            started = System.nanoTime();
            startedOfProcessors = PROCESS.getProcessCpuTime();
            long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
            try {
                used += trial.read(current) == Trial.End.USED ? 1 : 0;
            } catch (Throwable thrown) {
                note(String.valueOf(thrown) + " at "
                        + List.of(thrown.getStackTrace()).stream().limit(6).toList());
            }
            long bytes = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
            if (bytes > MOST_BYTES) {
                note("allocated " + bytes + " bytes");
            }
            largest = Math.max(largest, bytes);
            slowest = Math.max(slowest, System.nanoTime() - started);
            tried.incrementAndGet();
        }
    }

    private Fault fault(String what) {
        return new Fault(tried.get(), what, new String(current, StandardCharsets.ISO_8859_1));
    }

    private boolean isEndless() {
        return PROCESS.getProcessCpuTime() - startedOfProcessors > TimeUnit.SECONDS.toNanos(MOST_SECONDS)
                || System.nanoTime() - started > TimeUnit.SECONDS.toNanos(MOST_SECONDS_OF_CLOCK);
    }

    private void note(String what) {
        faults.add(fault(what));
    }
}
