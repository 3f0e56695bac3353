package darkrim.study.advice;

/** What was asked cannot be done; the message says why, without a full stop. */
public final class UnusableAdvice extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param message what is wrong and what was expected
     */
    public UnusableAdvice(String message) {
        super(message);
    }
}
