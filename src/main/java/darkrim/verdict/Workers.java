package darkrim.verdict;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.concurrent.PriorityBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;

/**
 * A fixed number of threads that work through lists of tasks; results come in the order of the tasks, whoever did them. What is begun beside other
 * work is done by threads that would have to wait.
 */
public final class Workers implements AutoCloseable {
    private final ExecutorService threads;
    private final int count;
    private final AtomicLong numbers = new AtomicLong();

    /**
     * @param count number of threads, at least 1
     */
    public Workers(int count) {
        this.count = count;
        threads = new ThreadPoolExecutor(
                count, count, 0, TimeUnit.SECONDS, new PriorityBlockingQueue<>(), Workers::thread);
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "darkrim-worker");
        thread.setDaemon(true);
        return thread;
    }

    /** A task in a queue: what somebody waits for comes before what is done beside it, and then what was handed in first. */
    private static final class Task<T> extends FutureTask<T> implements Comparable<Task<?>> {
        private final boolean beside;
        private final long number;

        Task(Callable<T> work, boolean beside, long number) {
            super(work);
            this.beside = beside;
            this.number = number;
        }

        @Override
        public int compareTo(Task<?> other) {
            return beside == other.beside ? Long.compare(number, other.number) : Boolean.compare(beside, other.beside);
        }
    }

    /** Number of threads. */
    int count() {
        return count;
    }

    /**
     * Does all tasks and waits for them.
     *
     * @throws IllegalStateException if the waiting thread is interrupted; an exception of a task is thrown on
     */
    public <T> List<T> all(Stream<? extends Callable<T>> tasks) {
        List<Future<T>> futures = tasks.map(task -> begin(task, false)).toList();
        return futures.stream().map(Workers::result).toList();
    }

    /** Begins a task that is done whenever a thread has nothing else to do; those begun first come first. */
    public <T> Future<T> beside(Callable<T> task) {
        return begin(task, true);
    }

    /** Begins a task that somebody will soon wait for. */
    <T> Future<T> begin(Callable<T> task) {
        return begin(task, false);
    }

    private <T> Future<T> begin(Callable<T> work, boolean beside) {
        Task<T> task = new Task<>(work, beside, numbers.getAndIncrement());
        threads.execute(task);
        return task;
    }

    /**
     * What a task has found; waits for it.
     *
     * @throws IllegalStateException if the waiting thread is interrupted; an exception of the task is thrown on
     */
    public static <T> T result(Future<T> future) {
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
