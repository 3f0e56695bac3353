package darkrim.view.work;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.verdict.Watch;
import darkrim.view.parts.Stage;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/**
 * Reads a layout and checks it, away from the window. The parts come first, then values and verdicts, then margins. What is asked for
 * later puts an end to what was asked for before.
 */
public final class Loader implements AutoCloseable {
    private final Path layout;
    private final Effort effort;
    private final Consumer<UnaryOperator<Content>> post;
    private final AtomicInteger asked = new AtomicInteger();
    private final ExecutorService worker = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "darkrim-view-check");
        thread.setDaemon(true);
        return thread;
    });

    /**
     * @param layout the layout file
     * @param effort how hard to work
     * @param post takes changes of the contents to the window's thread
     */
    public Loader(Path layout, Effort effort, Consumer<UnaryOperator<Content>> post) {
        this.layout = layout;
        this.effort = effort;
        this.post = post;
    }

    /**
     * Reads the file as it stands now and works out its light.
     *
     * @param saved a result that was written before, to be used instead of a check
     */
    public void load(Optional<Path> saved) {
        int turn = asked.incrementAndGet();
        worker.execute(() -> guarded(turn, saved));
    }

    private void guarded(int turn, Optional<Path> saved) {
        try {
            run(turn, saved);
        } catch (UnusableInput unusable) {
            post(turn, content -> content.refused(unusable.findings()));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError broken) {
            post(turn, content -> content.doing("", -1).noting("the program broke while it checked: " + broken));
        }
    }

    private void run(int turn, Optional<Path> saved) throws UnusableInput {
        post(turn, content -> content.doing("reading the layout", -1));
        LayoutReading reading = LayoutReader.read(layout);
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        if (reading.layout().isEmpty() || !reading.partsComplete()) {
            throw new UnusableInput(findings.sorted());
        }
        Layout read = reading.layout().get();
        Stage stage = Stage.of(read, findings);
        post(turn, content -> content.with(stage).noting(""));
        if (saved.isPresent()) {
            try {
                Facts facts = SavedFacts.read(saved.get(), read.source().sha256());
                post(turn, content -> content.with(facts).doing("", -1));
                return;
            } catch (SavedFacts.Unusable unusable) {
                post(turn, content -> content.noting(unusable.getMessage() + "; checked anew instead"));
            }
        }
        check(turn, MarginScope.NONE, "checked here, without margins yet");
        check(turn, MarginScope.LEAST, "checked here");
        post(turn, content -> content.doing("", -1));
    }

    private void check(int turn, MarginScope margins, String source) throws UnusableInput {
        if (asked.get() != turn) {
            return;
        }
        Facts facts = Facts.of(Check.of(layout, effort.with(margins), new Listening(turn)), source);
        post(turn, content -> content.with(facts));
    }

    private void post(int turn, UnaryOperator<Content> change) {
        if (asked.get() == turn) {
            post.accept(content -> asked.get() == turn ? change.apply(content) : content);
        }
    }

    @Override
    public void close() {
        asked.incrementAndGet();
        worker.shutdownNow();
    }

    /** Tells the window how far a check is, a few times a second, and ends it when something else is asked for. */
    private final class Listening implements Watch {
        private static final long PAUSE_NANOSECONDS = 100_000_000;

        private final int turn;
        private long told = System.nanoTime() - PAUSE_NANOSECONDS;

        Listening(int turn) {
            this.turn = turn;
        }

        @Override
        public void progress(String step, long done, long most) {
            long now = System.nanoTime();
            if (now - told >= PAUSE_NANOSECONDS) {
                told = now;
                double share = most > 0 ? (double) done / most : -1;
                post(turn, content -> content.doing(step, share));
            }
        }

        @Override
        public boolean stop() {
            return asked.get() != turn;
        }
    }
}
