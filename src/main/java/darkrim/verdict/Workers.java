package darkrim.verdict;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;

/** A fixed number of threads that work through lists of tasks; results come in the order of the tasks, whoever did them. */
public final class Workers implements AutoCloseable {
    private final ExecutorService threads;

    /**
     * @param count number of threads, at least 1
     */
    public Workers(int count) {
        threads = Executors.newFixedThreadPool(count, task -> {
            Thread thread = new Thread(task, "darkrim-worker");
            thread.setDaemon(true);
            return thread;
        });
    }

    /**
     * Does all tasks and waits for them.
     *
     * @throws IllegalStateException if the waiting thread is interrupted; an exception of a task is thrown on
     */
    public <T> List<T> all(Stream<? extends Callable<T>> tasks) {
        List<Future<T>> futures = tasks.map(threads::submit).toList();
        return futures.stream().map(Workers::result).toList();
    }

    private static <T> T result(Future<T> future) {
        try {
            return future.get();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while working", interrupted);
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (failed.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException(failed.getCause());
        }
    }

    @Override
    public void close() {
        threads.shutdownNow();
    }
}
