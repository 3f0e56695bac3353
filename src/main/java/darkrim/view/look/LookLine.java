package darkrim.view.look;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * A look with its way back, and those who follow it. Two views that hold the same one are always looked at alike. Used from one thread, the
 * window's; those who listen are told after each change.
 */
public final class LookLine {
    private final List<Runnable> listeners = new ArrayList<>();
    private final History<Look> history;
    private boolean dragging;

    /**
     * @param first the first look
     */
    public LookLine(Look first) {
        history = new History<>(first);
    }

    /** The look now. */
    public Look now() {
        return history.now();
    }

    /** Tells a listener of a new look. */
    public void listen(Runnable listener) {
        listeners.add(listener);
    }

    /** Another look, to which a step leads back. */
    public void change(UnaryOperator<Look> change) {
        dragging = false;
        history.enter(change.apply(now()));
        tell();
    }

    /** Another look in a movement: all of them until {@link #rest} are one step. */
    public void drag(UnaryOperator<Look> change) {
        Look next = change.apply(now());
        if (dragging) {
            history.replace(next);
        } else {
            // A movement that has not gone anywhere yet has not begun: the way back would be lost.
            dragging = !next.equals(now());
            history.enter(next);
        }
        tell();
    }

    /** A movement has ended. */
    public void rest() {
        dragging = false;
    }

    /** The first look at something new, without a way back to before it. */
    public void begin(Look first) {
        dragging = false;
        history.begin(first);
        tell();
    }

    /** One step back. */
    public void undo() {
        dragging = false;
        history.back();
        tell();
    }

    /** One step forward. */
    public void redo() {
        dragging = false;
        history.forward();
        tell();
    }

    /** Whether a step back is possible. */
    public boolean canUndo() {
        return history.canGoBack();
    }

    /** Whether a step forward is possible. */
    public boolean canRedo() {
        return history.canGoForward();
    }

    private void tell() {
        listeners.forEach(Runnable::run);
    }
}
