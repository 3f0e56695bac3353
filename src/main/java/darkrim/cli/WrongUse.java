package darkrim.cli;

import darkrim.layout.form.Wording;
import java.nio.file.InvalidPathException;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says in plain words what is wrong with a command line. */
final class WrongUse {
    private WrongUse() {}

    /** What is wrong and what was expected, without a full stop. */
    static String words(ParameterException wrong) {
        // The library keeps no more of the cause than its name.
        if (wrong.getValue() != null
                && String.valueOf(wrong.getMessage()).contains(InvalidPathException.class.getName())) {
            return "'" + Wording.shortened(wrong.getValue())
                    + "' is not the name of a file here; if it has letters beyond ASCII, expected a locale that has them,"
                    + " such as LC_ALL=C.UTF-8";
        }
        if (!(wrong instanceof UnmatchedArgumentException unmatched)) {
            return wrong.getMessage();
        }
        CommandLine command = wrong.getCommandLine();
        List<String> left = unmatched.getUnmatched();
        String first =
                left.stream().filter(word -> word.startsWith("-")).findFirst().orElse(left.get(0));
        String quoted = "'" + Wording.shortened(first) + "'";
        if (first.startsWith("-")) {
            List<String> options = new ArrayList<>();
            command.getCommandSpec().options().forEach(option -> options.addAll(List.of(option.names())));
            return "there is no option " + quoted + ", " + Wording.suggestion(first, options);
        }
        return command.getSubcommands().isEmpty()
                ? "one layout at a time: " + quoted + " is one word too many"
                : "there is no command " + quoted + ", "
                        + Wording.suggestion(first, command.getSubcommands().keySet());
    }
}
