package darkrim.view.files;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/** Files that are written away from the window's thread, one after the other. Whoever closes it waits for what was asked for. */
public final class FileWork implements AutoCloseable {
    private static final long PATIENCE_SECONDS = 30;

    private final ExecutorService worker = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "darkrim-view-write");
        thread.setDaemon(true);
        return thread;
    });

    /** Asks for a file. Returns at once. */
    public void ask(Runnable writing) {
        worker.execute(writing);
    }

    /** Waits until all is written, but for half a minute at most. */
    @Override
    public void close() {
        worker.shutdown();
        try {
            worker.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
