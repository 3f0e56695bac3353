package darkrim.study.live;

import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.verdict.Workers;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A layout whose named dimensions are dragged: says of every position what light does, first what is known at once, then in growing detail
 * ({@link LiveDetail}).
 *
 * <p>At most one position is in work. Later moves overtake earlier ones: when a position is done or given up, the latest is next. Sampling, and
 * proofs that take long, are given up as soon as there is a new move. Verdicts by quick proof are always finished, and margins for the first
 * {@value LiveStep#PATIENCE_MS} ms of a position, so that they follow a hand that never rests.
 *
 * <p>Verdicts and margins are those of a check of the layout at that position; what a quick proof leaves undecided is settled later. Safe for
 * use by many threads.
 */
public final class LiveLayout implements AutoCloseable {
    private final LayoutFamily family;
    private final Effort effort;
    private final Consumer<LiveState> listener;
    private final Workers workers;
    private final MarginMemory memory = new MarginMemory();
    private final Thread thread;

    /** Guards the three below. */
    private final Object lock = new Object();

    private Map<String, Double> chosen = Map.of();
    private long newest;
    private boolean waiting = true;

    private volatile boolean closed;
    private volatile long overtakenBefore;
    private volatile LiveState state;
    private volatile LiveState.Placed lastPlaced;

    /**
     * Begins with the layout as written.
     *
     * @param family the layouts
     * @param effort how hard to work; its choice of margins plays no part
     * @param listener receives every state, one at a time and never one of an earlier move after one of a later; it should return soon, since the
     *     work waits for it, and must not throw
     */
    public LiveLayout(LayoutFamily family, Effort effort, Consumer<LiveState> listener) {
        this.family = family;
        this.effort = effort;
        this.listener = listener;
        workers = new Workers(effort.threads());
        thread = new Thread(this::work, "darkrim-live");
        thread.setDaemon(true);
        thread.start();
    }

    /** The layouts. */
    public LayoutFamily family() {
        return family;
    }

    /** The values chosen instead of those of the file. */
    public Map<String, Double> chosen() {
        synchronized (lock) {
            return chosen;
        }
    }

    /** The newest state; empty until the first is known. */
    public Optional<LiveState> state() {
        return Optional.ofNullable(state);
    }

    /**
     * Moves one dimension; the others stay where they are. Returns at once.
     *
     * @param name name of the dimension
     * @param value its value, in mm, degrees or plain
     * @return number of the move
     * @throws IllegalArgumentException if the file does not define the name, or the value is not finite
     */
    public long move(String name, double value) {
        synchronized (lock) {
            Map<String, Double> next = new HashMap<>(chosen);
            next.put(name, value);
            return moveTo(next);
        }
    }

    /**
     * Moves to a position: dimensions that are not named are as the file has them. Returns at once.
     *
     * @param values values by name of the dimension, in mm, degrees or plain
     * @return number of the move
     * @throws IllegalArgumentException if the file does not define a name, or a value is not finite
     */
    public long moveTo(Map<String, Double> values) {
        values.forEach((name, value) -> {
            if (family.dimension(name).isEmpty()) {
                throw new IllegalArgumentException("there is no dimension '" + name + "'");
            }
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("the dimension '" + name + "' cannot be " + value);
            }
        });
        synchronized (lock) {
            chosen = Map.copyOf(values);
            newest++;
            overtakenBefore = newest;
            waiting = true;
            lock.notifyAll();
            return newest;
        }
    }

    /** Gives up what is in work. No state comes after this has returned, unless it is called by the listener. */
    @Override
    public void close() {
        closed = true;
        synchronized (lock) {
            lock.notifyAll();
        }
        if (Thread.currentThread() == thread) {
            workers.close();
            return;
        }
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException asked) {
                interrupted = true;
            }
        }
        workers.close();
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private void work() {
        while (true) {
            long move;
            Map<String, Double> values;
            synchronized (lock) {
                while (!waiting && !closed) {
                    try {
                        lock.wait();
                    } catch (InterruptedException unasked) {
                        return;
                    }
                }
                if (closed) {
                    return;
                }
                waiting = false;
                move = newest;
                values = chosen;
            }
            new LiveStep(family, effort, workers, memory, move, values, () -> closed, () -> overtakenBefore > move)
                    .run(Optional.ofNullable(lastPlaced), this::publish);
        }
    }

    private void publish(LiveState next) {
        if (closed) {
            return;
        }
        state = next;
        if (next instanceof LiveState.Placed placed) {
            lastPlaced = placed;
        }
        listener.accept(next);
    }
}
