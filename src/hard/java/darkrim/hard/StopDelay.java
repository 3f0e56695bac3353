package darkrim.hard;

import com.sun.management.OperatingSystemMXBean;
import darkrim.diagnostic.UnusableInput;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.verdict.Watch;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * How long a check goes on after it is asked to stop: {@code StopDelay MOMENTS MOST_SECONDS LAYOUT...} asks each layout's check at so many moments
 * of its time; exit code 1 if one went on for longer, counted in time of the processors for each thread, which a busy machine does not lengthen.
 */
public final class StopDelay {
    private static final int THREADS = 2;
    /** A check of which nothing is learned after this. */
    private static final double LONGEST_SECONDS = 120;

    private static final OperatingSystemMXBean PROCESS =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private StopDelay() {}

    /** How long a check took, and for how long it went on after it was asked to stop, seconds. */
    private record Run(double seconds, double clock, double processors, String step) {}

    /** Asks to stop once, from a moment on, and knows when. */
    private static final class Bell implements Watch {
        private final long moment;
        private volatile long asked;
        private volatile long askedOfProcessors;
        private volatile String step = "reading";
        private volatile String stepWhenAsked = "";

        private Bell(double seconds) {
            moment = System.nanoTime() + (long) (seconds * 1e9);
        }

        /** Rings whether or not anyone asks. */
        private void ring() {
            long left;
            while ((left = moment - System.nanoTime()) > 0) {
                try {
                    TimeUnit.NANOSECONDS.sleep(left);
                } catch (InterruptedException over) {
                    return;
                }
            }
            stepWhenAsked = step;
            askedOfProcessors = PROCESS.getProcessCpuTime();
            asked = System.nanoTime();
        }

        @Override
        public void progress(String name, long done, long most) {
            step = name;
        }

        @Override
        public boolean stop() {
            return asked != 0;
        }
    }

    /** Asks every layout at every moment and prints a line for each and one for all. */
    public static void main(String[] arguments) throws Exception {
        int moments = Integer.parseInt(arguments[0]);
        double most = Double.parseDouble(arguments[1]);
        List<String> layouts = Arrays.asList(arguments).subList(2, arguments.length);
        int asked = 0;
        int late = 0;
        Run slowest = new Run(0, 0, 0, "");
        for (String layout : layouts) {
            double whole = run(Path.of(layout), LONGEST_SECONDS).seconds();
            Run worst = new Run(0, 0, 0, "");
            for (int k = 1; k <= moments; k++) {
                Run run = run(Path.of(layout), whole * k / (moments + 1));
                asked += run.step().isEmpty() ? 0 : 1;
                late += run.processors() > most ? 1 : 0;
                worst = run.processors() > worst.processors() ? run : worst;
            }
            System.out.printf(
                    Locale.ROOT,
                    "%s: %.2f s, at most %.2f s of a processor (%.2f s of the clock) after a stop while %s%n",
                    layout,
                    whole,
                    worst.processors(),
                    worst.clock(),
                    worst.step());
            slowest = worst.processors() > slowest.processors() ? worst : slowest;
        }
        System.out.printf(
                Locale.ROOT,
                "stops asked: %d, longest %.2f s of a processor (%.2f s of the clock), later than %.1f s: %d%n",
                asked,
                slowest.processors(),
                slowest.clock(),
                most,
                late);
        System.exit(late == 0 ? 0 : 1);
    }

    private static Run run(Path layout, double stopAfter) throws UnusableInput, InterruptedException {
        long start = System.nanoTime();
        Bell bell = new Bell(stopAfter);
        Thread ringing = new Thread(bell::ring, "bell");
        ringing.setDaemon(true);
        Thread looking = new Thread(() -> show(bell), "looking");
        looking.setDaemon(true);
        ringing.start();
        looking.start();
        Check.of(layout, new Effort(THREADS, Optional.of(1L), Optional.of(1_000_000L)), bell);
        long end = System.nanoTime();
        ringing.interrupt();
        looking.interrupt();
        looking.join();
        double seconds = (end - start) * 1e-9;
        return bell.asked == 0
                ? new Run(seconds, 0, 0, "")
                : new Run(
                        seconds,
                        (end - bell.asked) * 1e-9,
                        (PROCESS.getProcessCpuTime() - bell.askedOfProcessors) * 1e-9 / THREADS,
                        bell.stepWhenAsked);
    }

    /** With -Dshow=true, what is at work one second after it was asked to stop. */
    private static void show(Bell bell) {
        try {
            while (bell.asked == 0 || System.nanoTime() - bell.asked < 1_000_000_000L) {
                Thread.sleep(20);
            }
        } catch (InterruptedException over) {
            return;
        }
        if (Boolean.getBoolean("show")) {
            for (Map.Entry<Thread, StackTraceElement[]> each :
                    Thread.getAllStackTraces().entrySet()) {
                if (Arrays.stream(each.getValue())
                        .anyMatch(call -> call.getClassName().startsWith("darkrim.shadow"))) {
                    System.out.println(bell.stepWhenAsked + ": " + List.of(each.getValue()));
                }
            }
        }
    }
}
