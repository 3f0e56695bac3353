package darkrim.cli;

import java.io.PrintStream;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Ends the program in good order on Ctrl-C or a request to terminate: asks the work to stop, waits while what is finished is printed, and
 * ends with the exit code of what was printed.
 */
final class Interruption {
    /** How long a step that cannot be stopped may take until the program ends without a result. */
    private static final long PATIENCE_SECONDS = 30;

    private final PrintStream errors;
    private final CountDownLatch finished = new CountDownLatch(1);
    private volatile boolean asked;
    private volatile int code = ExitCode.UNDECIDED;

    Interruption(PrintStream errors) {
        this.errors = errors;
    }

    /** Begins to listen. */
    void listen() {
        Runtime.getRuntime().addShutdownHook(new Thread(this::stop, "darkrim-stop"));
    }

    /** Whether the user asked to stop. */
    boolean asked() {
        return asked;
    }

    /** Ends the program once everything is printed. */
    void exit(int exitCode) {
        code = exitCode;
        finished.countDown();
        // While the program is being stopped this waits for stop() below, which ends it with the same code.
        System.exit(exitCode);
    }

    private void stop() {
        if (finished.getCount() == 0) {
            return;
        }
        asked = true;
        errors.println("darkrim: stopping; what is finished follows.");
        try {
            if (!finished.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                errors.println("darkrim: stopped before there was a result.");
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
        errors.flush();
        Runtime.getRuntime().halt(code);
    }
}
