package darkrim.study.live;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Requirement;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import java.nio.file.Path;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Time from a move of a dimension to the verdicts of direct light and all their margins, on every core, as a hand drags it to and fro over the
 * range in 50 steps. Percentiles matter more than the mean.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 15)
@Measurement(iterations = 2, time = 15)
public class DragBenchmark {
    private static final int STEPS = 50;

    /** Layout, dimension, from, to. */
    @Param({
        "nightglow-a opening 37.0 38.8",
        "nightglow-a lid_height 3.0 4.4",
        "nightglow-b opening 36.6 37.6",
        "nightglow-b lid_height 1.3 2.0",
        "nightglow-b wall_tilt 2 6"
    })
    public String drag;

    private final BlockingQueue<LiveState> states = new LinkedBlockingQueue<>();
    private LiveLayout live;
    private String dimension;
    private double from;
    private double to;
    private long direct;
    private int step;

    /** Opens the layout. */
    @Setup
    public void open() throws UnusableInput {
        String[] words = drag.split(" ");
        dimension = words[1];
        from = Double.parseDouble(words[2]);
        to = Double.parseDouble(words[3]);
        LayoutFamily family = LayoutFamily.of(Path.of("geometries", words[0] + ".yaml"));
        direct = family.written().requirements().stream()
                .filter(requirement -> !(requirement.condition() instanceof Requirement.AtMost))
                .count();
        live = new LiveLayout(family, Effort.asAsked(), states::add);
    }

    /** Stops the work. */
    @TearDown
    public void close() {
        live.close();
    }

    /** One step of a drag. */
    @Benchmark
    public LiveState step() throws InterruptedException {
        step = (step + 1) % (2 * STEPS);
        double share = Math.abs(step - STEPS) / (double) STEPS;
        long move = live.move(dimension, from + share * (to - from));
        while (true) {
            LiveState state = states.take();
            if (state.move() == move
                    && !(state instanceof LiveState.Placed placed
                            && placed.margins().size() < direct)) {
                return state;
            }
        }
    }
}
