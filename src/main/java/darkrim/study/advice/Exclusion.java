package darkrim.study.advice;

/**
 * Two requirements that no values within the ranges fulfil together; the same twice: one that none fulfils.
 *
 * @param one a requirement
 * @param other the other
 */
public record Exclusion(String one, String other) {
    /** Whether one requirement alone leaves nothing. */
    public boolean single() {
        return one.equals(other);
    }
}
