package darkrim.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Says that the program broke: what to do in plain words; the details for its makers go into a file. */
final class Breakage {
    private Breakage() {}

    /**
     * Reports a failure of the program itself.
     *
     * @param failure what broke
     * @param input what was being checked, for the report
     * @param verbose whether the details are shown too
     * @param errors where to
     */
    static void report(Throwable failure, String input, boolean verbose, PrintWriter errors) {
        if (failure instanceof OutOfMemoryError) {
            errors.println("darkrim: " + input + " needs more memory than Java was given; give it more, for example "
                    + Started.wordsWithMemory() + " ...");
        } else {
            errors.println("darkrim: the program broke while checking " + input + "; this is a mistake of ours, not of "
                    + "the layout. Please report it with the layout file" + details(failure, input) + ".");
        }
        if (verbose) {
            failure.printStackTrace(errors);
        }
        errors.flush();
    }

    private static String details(Throwable failure, String input) {
        try {
            Path file = Files.createTempFile("darkrim-report-", ".txt");
            try (PrintWriter writer = new PrintWriter(Files.newBufferedWriter(file, StandardCharsets.UTF_8))) {
                writer.println("Darkrim " + Version.number() + ", Java " + System.getProperty("java.version") + ", "
                        + System.getProperty("os.name"));
                writer.println("layout: " + input);
                failure.printStackTrace(writer);
            }
            return " and the file " + file;
        } catch (IOException noFile) {
            return " and this line: " + failure.getClass().getSimpleName();
        }
    }
}
