package darkrim.study;

/** Thrown when a point that is asked for does not exist; the message says why, in a few words for the user. */
public final class NoSuchPoint extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param message why, without a full stop
     */
    public NoSuchPoint(String message) {
        super(message);
    }
}
