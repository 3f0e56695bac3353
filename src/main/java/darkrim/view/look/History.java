package darkrim.view.look;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * What was, is and may be again: one step back at a time, and forward while nothing new was done.
 *
 * @param <T> an immutable state
 */
public final class History<T> {
    private static final int MOST = 500;

    private final Deque<T> before = new ArrayDeque<>();
    private final Deque<T> after = new ArrayDeque<>();
    private T now;

    /**
     * @param first the first state
     */
    public History(T first) {
        now = first;
    }

    /** The state now. */
    public T now() {
        return now;
    }

    /** A new state, to which a step can lead back. */
    public void enter(T next) {
        if (next.equals(now)) {
            return;
        }
        before.push(now);
        if (before.size() > MOST) {
            before.removeLast();
        }
        after.clear();
        now = next;
    }

    /** A first state anew, without a way back or forward. */
    public void begin(T first) {
        before.clear();
        after.clear();
        now = first;
    }

    /** A new state in the place of the present one, as while something is dragged. */
    public void replace(T next) {
        now = next;
    }

    /** Whether there is a step back. */
    public boolean canGoBack() {
        return !before.isEmpty();
    }

    /** Whether there is a step forward. */
    public boolean canGoForward() {
        return !after.isEmpty();
    }

    /** One step back, if there is one. */
    public T back() {
        if (canGoBack()) {
            after.push(now);
            now = before.pop();
        }
        return now;
    }

    /** One step forward, if there is one. */
    public T forward() {
        if (canGoForward()) {
            before.push(now);
            now = after.pop();
        }
        return now;
    }
}
