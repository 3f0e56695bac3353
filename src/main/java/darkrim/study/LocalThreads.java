package darkrim.study;

import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** Threads of this program, each of which works out one point at a time. */
public final class LocalThreads implements PointWorkers {
    private final ExecutorService threads;

    /**
     * @param count number of threads, at least 1
     */
    public LocalThreads(int count) {
        threads = Executors.newFixedThreadPool(count, task -> {
            Thread thread = new Thread(task, "darkrim-point");
            // A point that is in work when the program is stopped does not hold it up.
            thread.setDaemon(true);
            return thread;
        });
    }

    @Override
    public int work(PointCheck check, List<Point> points, Consumer<PointResult> results, BooleanSupplier stop) {
        Queue<Future<PointResult>> coming = new ArrayDeque<>();
        points.forEach(point -> coming.add(threads.submit(() -> check.at(point))));
        try {
            return InOrder.handOver(coming, results, stop);
        } catch (ExecutionException broken) {
            if (broken.getCause() instanceof Error error) {
                throw error;
            }
            // A check declares no other exceptions.
            throw (RuntimeException) broken.getCause();
        } finally {
            coming.forEach(each -> each.cancel(false));
        }
    }

    @Override
    public void close() {
        threads.shutdownNow();
    }
}
