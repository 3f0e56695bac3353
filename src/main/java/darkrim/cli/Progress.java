package darkrim.cli;

import darkrim.verdict.Watch;
import java.io.PrintStream;
import java.time.Duration;
import java.util.function.BooleanSupplier;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarConsumer;
import me.tongfei.progressbar.ProgressBarStyle;

/** Shows how far the work is, with the time left, in one line that is written again and wiped at the end. */
final class Progress implements Watch, AutoCloseable {
    private static final int WIDTH = 79;

    private final PrintStream terminal;
    private final BooleanSupplier stop;
    private String step = "";
    private ProgressBar bar;

    /**
     * @param terminal where it is shown
     * @param stop whether to stop
     */
    Progress(PrintStream terminal, BooleanSupplier stop) {
        this.terminal = terminal;
        this.stop = stop;
    }

    @Override
    public void progress(String newStep, long done, long most) {
        if (bar == null || !newStep.equals(step)) {
            close();
            step = newStep;
            bar = new ProgressBarBuilder()
                    .setTaskName(newStep)
                    .setInitialMax(most)
                    .startsFrom(done, Duration.ZERO)
                    .setStyle(ProgressBarStyle.ASCII)
                    .setConsumer(new Line())
                    .build();
        }
        // More work may come up on the way.
        bar.maxHint(most);
        bar.stepTo(done);
    }

    @Override
    public boolean stop() {
        return stop.getAsBoolean();
    }

    @Override
    public void close() {
        if (bar != null) {
            bar.close();
            bar = null;
            terminal.print("\r" + " ".repeat(WIDTH) + "\r");
            terminal.flush();
        }
    }

    /** One line of a terminal. The library's own would start a second library to find the terminal's width. */
    private final class Line implements ProgressBarConsumer {
        @Override
        public int getMaxRenderedLength() {
            return WIDTH;
        }

        @Override
        public void accept(String line) {
            terminal.print("\r" + line);
            terminal.flush();
        }

        @Override
        public void close() {}
    }
}
