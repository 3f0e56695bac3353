package darkrim.cli;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.util.function.Supplier;

/**
 * What a command is given by the program around it, so that tests can give it something else.
 *
 * @param output where results go
 * @param errors where findings and complaints go
 * @param ink colour of verdicts
 * @param watch makes what watches the work; closed where it can be
 */
record Surroundings(PrintWriter output, PrintWriter errors, Ink ink, Supplier<? extends Watch> watch) {}
