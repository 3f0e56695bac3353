package darkrim.view.work;

import darkrim.view.look.History;
import darkrim.view.look.Look;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * What the window shows: contents, and the look at them with its way back. Holds no controls. Used from one thread, the window's; those who
 * listen are told after each change.
 */
public final class ViewModel {
    private final List<Runnable> contentListeners = new ArrayList<>();
    private final List<Runnable> lookListeners = new ArrayList<>();
    private final History<Look> history;
    private Content content = Content.NOTHING;
    private boolean dragging;

    /**
     * @param first the first look
     */
    public ViewModel(Look first) {
        history = new History<>(first);
    }

    /** What there is to show. */
    public Content content() {
        return content;
    }

    /** How it is looked at. */
    public Look look() {
        return history.now();
    }

    /** Tells a listener of new contents. */
    public void onContent(Runnable listener) {
        contentListeners.add(listener);
    }

    /** Tells a listener of a new look. */
    public void onLook(Runnable listener) {
        lookListeners.add(listener);
    }

    /** New contents. */
    public void show(UnaryOperator<Content> change) {
        content = change.apply(content);
        contentListeners.forEach(Runnable::run);
    }

    /** Another look, to which a step leads back. */
    public void change(UnaryOperator<Look> change) {
        dragging = false;
        history.enter(change.apply(look()));
        tell();
    }

    /** Another look in a movement: all of them until {@link #rest} are one step. */
    public void drag(UnaryOperator<Look> change) {
        Look next = change.apply(look());
        if (dragging) {
            history.replace(next);
        } else {
            history.enter(next);
            dragging = true;
        }
        tell();
    }

    /** A movement has ended. */
    public void rest() {
        dragging = false;
    }

    /** The first look at something new, without a way back to before it. */
    public void begin(Look first) {
        history.replace(first);
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
        lookListeners.forEach(Runnable::run);
    }
}
