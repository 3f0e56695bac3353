package darkrim.cli;

import darkrim.verdict.Verdict;

/** What the program says to the shell when it ends. */
final class ExitCode {
    /** Every requirement holds. */
    static final int PASS = 0;
    /** What was asked for is done, by a command that judges nothing. */
    static final int DONE = 0;
    /** A requirement does not hold. */
    static final int FAIL = 1;
    /** The layout, an option or an output file cannot be used. */
    static final int UNUSABLE = 2;
    /** No requirement fails, but at least one is not decided; or the work was stopped. */
    static final int UNDECIDED = 3;
    /** Something broke inside the program. */
    static final int BROKEN = 4;

    private ExitCode() {}

    static int of(Verdict verdict) {
        return switch (verdict) {
            case PASS -> PASS;
            case FAIL -> FAIL;
            case UNDECIDED -> UNDECIDED;
        };
    }
}
