package darkrim.cli;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;

/** {@code darkrim report}, run in this process. */
final class ReportRun {
    static final Map<String, String> NEW_YEAR = Map.of("SOURCE_DATE_EPOCH", "1767225600");

    static Run report(Map<String, String> environment, Object... arguments) {
        return report(Watch.NONE, environment, arguments);
    }

    static Run report(Watch watch, Map<String, String> environment, Object... arguments) {
        StringWriter output = new StringWriter();
        StringWriter errors = new StringWriter();
        Surroundings surroundings =
                new Surroundings(OutputWriter.to(output), new PrintWriter(errors), Ink.PLAIN, () -> watch);
        String[] words = List.of(arguments).stream().map(Object::toString).toArray(String[]::new);
        int code = new CommandLine(new ReportCommand(surroundings, environment)).execute(words);
        return new Run(code, output.toString(), errors.toString());
    }

    private ReportRun() {}
}
