package darkrim.cli;

import java.io.IOException;
import java.util.Map;

/**
 * What the standard streams are connected to.
 *
 * @param output whether standard output is a terminal
 * @param errors whether standard error is a terminal
 */
record Terminal(boolean output, boolean errors) {
    /**
     * Asks the shell's {@code test -t}, since Java 17 knows only whether input and output together are a terminal and nothing of the error
     * stream. Without such a shell (Windows) nothing counts as a terminal: output is then plain.
     */
    static Terminal detect() {
        return new Terminal(isTerminal(1), isTerminal(2));
    }

    /** Whether to colour: on a terminal that can, unless the user says no (https://no-color.org). */
    boolean colour(Map<String, String> environment) {
        boolean refused = !environment.getOrDefault("NO_COLOR", "").isEmpty();
        boolean dumb = environment.getOrDefault("TERM", "dumb").equals("dumb");
        return output && !refused && !dumb;
    }

    /** Whether to show progress: where someone looks on, and the line can be written again. */
    boolean progress(Map<String, String> environment) {
        return errors && !environment.getOrDefault("TERM", "dumb").equals("dumb");
    }

    /** Whether someone can read a question on standard error and type an answer. */
    static boolean asksPerson() {
        return isTerminal(0) && isTerminal(2);
    }

    private static boolean isTerminal(int stream) {
        try {
            return new ProcessBuilder("/bin/sh", "-c", "test -t " + stream)
                            .inheritIO()
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException noShell) {
            return false;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
