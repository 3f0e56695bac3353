package darkrim.diagnostic;

/**
 * One thing that is wrong, or deserves attention, in what the user wrote.
 *
 * @param severity whether the input is unusable or only doubtful
 * @param code stable short name of this kind of finding, such as {@code unknown-key}; docs/findings.md explains each
 * @param place where it stands
 * @param message what is wrong and what was expected, one line of plain English
 */
public record Finding(Severity severity, String code, Place place, String message) {
    /** How bad a finding is. */
    public enum Severity {
        /** The input cannot be used. */
        ERROR,
        /** The input is used; the finding is shown with the result. */
        WARNING
    }

    /** An error at a place. */
    public static Finding error(String code, Place place, String message) {
        return new Finding(Severity.ERROR, code, place, message);
    }

    /** A warning at a place. */
    public static Finding warning(String code, Place place, String message) {
        return new Finding(Severity.WARNING, code, place, message);
    }

    /** The form {@code file:line:column: message [code]}. */
    @Override
    public String toString() {
        String mark = severity == Severity.WARNING ? "warning: " : "";
        return place + ": " + mark + message + " [" + code + "]";
    }
}
