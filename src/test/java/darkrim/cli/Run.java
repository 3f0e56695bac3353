package darkrim.cli;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.function.Supplier;

/**
 * A run of the command line inside the test.
 *
 * @param code exit code
 * @param output standard output
 * @param errors standard error
 */
record Run(int code, String output, String errors) {
    static Run of(String... arguments) {
        return watched(() -> Watch.NONE, arguments);
    }

    static Run watched(Supplier<Watch> watch, String... arguments) {
        StringWriter output = new StringWriter();
        StringWriter errors = new StringWriter();
        Surroundings surroundings =
                new Surroundings(OutputWriter.to(output), new PrintWriter(errors), Ink.PLAIN, watch);
        int code = Main.run(surroundings, arguments);
        return new Run(code, output.toString(), errors.toString());
    }
}
