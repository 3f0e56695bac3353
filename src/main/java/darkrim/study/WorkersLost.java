package darkrim.study;

/** Thrown when those who work out the points of a study cannot be reached or cannot go on; the message says why, for the user. */
public final class WorkersLost extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param message what happened, without a full stop
     * @param cause what was reported; null if nothing was
     */
    public WorkersLost(String message, Throwable cause) {
        super(message, cause);
    }
}
