package darkrim.study;

/** Thrown when what was asked of a study cannot be done; the message says what is wrong and what was expected, without a full stop. */
public final class UnusableStudy extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param message for the user
     */
    public UnusableStudy(String message) {
        super(message);
    }
}
