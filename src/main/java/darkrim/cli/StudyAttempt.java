package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.study.UnusableStudy;
import darkrim.study.WorkersLost;
import java.io.IOException;
import java.io.PrintWriter;

/** A study that may come to nothing. */
interface StudyAttempt {
    /**
     * Does the study.
     *
     * @return its exit code
     */
    int run() throws UnusableInput, UnusableStudy, WorkersLost, IOException;

    /** The exit code of the study; where it came to nothing it is said why. */
    default int code(PrintWriter errors) {
        try {
            return run();
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), errors);
        } catch (UnusableStudy unusable) {
            errors.println("darkrim: " + unusable.getMessage() + "; nothing was done.");
        } catch (WorkersLost lost) {
            errors.println("darkrim: " + lost.getMessage() + ".");
        } catch (IOException notKept) {
            errors.println("darkrim: a finished point could not be kept: " + notKept.getMessage()
                    + "; what was kept before is good, and the same command goes on from there.");
        }
        return ExitCode.UNUSABLE;
    }
}
