package darkrim.cli;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.UnusableInput;
import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.util.List;
import java.util.function.Supplier;

/**
 * What a command is given by the program around it, so that tests can give it something else.
 *
 * @param output where results go
 * @param errors where findings and complaints go
 * @param ink colour of verdicts
 * @param watch makes what watches the work
 */
record Surroundings(OutputWriter output, PrintWriter errors, Ink ink, Supplier<? extends Watch> watch) {
    /** Work that is watched and may be refused. */
    interface Work<T, E extends Exception> {
        /** Does it. */
        T with(Watch watch) throws UnusableInput, E;
    }

    /** Does some work while its progress is shown. */
    <T, E extends Exception> T watched(Work<T, E> work) throws UnusableInput, E {
        Watch watcher = watch.get();
        try {
            return work.with(watcher);
        } finally {
            if (watcher instanceof Progress progress) {
                progress.close();
            }
        }
    }

    /** Shows warnings and the text of a result. */
    void show(List<Finding> warnings, String text) {
        warnings.forEach(errors::println);
        errors.flush();
        output.print(text);
        output.flush();
    }
}
