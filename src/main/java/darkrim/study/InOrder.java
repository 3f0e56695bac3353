package darkrim.study;

import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** Hands over, in their order, results that come in any order. */
public final class InOrder {
    private static final long GLANCE_MILLISECONDS = 100;

    private InOrder() {}

    /**
     * Waits for results and hands each over as soon as it and all before it are there.
     *
     * @param coming the results, in their order; each is taken out when it is handed over, so that it need not be kept
     * @param results receives them, in the calling thread
     * @param stop asked several times a second, in the calling thread; once it says yes, no more are handed over
     * @return how many were handed over
     * @throws ExecutionException if the next result will not come
     * @throws IllegalStateException if the calling thread is interrupted
     */
    public static <R> int handOver(Queue<? extends Future<R>> coming, Consumer<? super R> results, BooleanSupplier stop)
            throws ExecutionException {
        int done = 0;
        while (!coming.isEmpty() && !stop.getAsBoolean()) {
            Optional<R> next = glance(coming.element());
            if (next.isPresent()) {
                coming.remove();
                results.accept(next.get());
                done++;
            }
        }
        return done;
    }

    private static <R> Optional<R> glance(Future<R> future) throws ExecutionException {
        try {
            return Optional.of(future.get(GLANCE_MILLISECONDS, TimeUnit.MILLISECONDS));
        } catch (TimeoutException notYet) {
            return Optional.empty();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while working", interrupted);
        }
    }
}
