package darkrim.view.work;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Work in the background of which only the latest counts: what is asked for puts an end to what was asked for before. */
final class Errand implements AutoCloseable {
    /** Work hears of its end within tenths of a second; more is not waited for, s. */
    private static final long LONGEST_END = 3;

    private final Consumer<UnaryOperator<Content>> post;
    private final AtomicInteger asked = new AtomicInteger();
    private final ExecutorService worker;

    /** What is to be done. */
    interface Work {
        /**
         * Does it.
         *
         * @param stop whether to stop
         * @param post takes changes of the contents to the window's thread, where they count only if nothing else was asked for since
         */
        void run(BooleanSupplier stop, Consumer<UnaryOperator<Content>> post);
    }

    /**
     * @param name name of the thread
     * @param post takes changes of the contents to the window's thread
     */
    Errand(String name, Consumer<UnaryOperator<Content>> post) {
        this.post = post;
        worker = Executors.newSingleThreadExecutor(work -> {
            Thread thread = new Thread(work, name);
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Asks for something, in the place of what was asked for before. */
    void ask(Work work) {
        if (worker.isShutdown()) {
            // The window is closed; what was on its way to it comes too late.
            return;
        }
        int turn = asked.incrementAndGet();
        BooleanSupplier stop = () -> asked.get() != turn;
        Consumer<UnaryOperator<Content>> guarded =
                change -> post.accept(content -> asked.get() == turn ? change.apply(content) : content);
        worker.execute(() -> {
            try {
                if (!stop.getAsBoolean()) {
                    work.run(stop, guarded);
                }
            } catch (RuntimeException | StackOverflowError | OutOfMemoryError broken) {
                guarded.accept(
                        content -> content.doing("", -1).noting("the program broke in the background: " + broken));
            }
        });
    }

    /** Ends what is being done. */
    void stop() {
        asked.incrementAndGet();
    }

    @Override
    public void close() {
        asked.incrementAndGet();
        worker.shutdownNow();
        try {
            // A program that runs for it, such as a mesher, is ended and its files are removed by then.
            worker.awaitTermination(LONGEST_END, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
