package darkrim.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** {@code darkrim completion}: a script with which a shell completes commands, options and file names. */
@Command(
        name = "completion",
        description =
                "Prints a script with which bash or zsh completes the commands, options and file names of an installed darkrim.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar completion > darkrim-completion.bash",
            "",
            "Where darkrim is installed, 'source <(darkrim completion)' in ~/.bashrc or",
            "~/.zshrc does it at every start of the shell."
        })
final class CompletionCommand implements Callable<Integer> {
    private final Surroundings surroundings;

    CompletionCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        surroundings.output().print(AutoComplete.bash("darkrim", Commands.all(surroundings)));
        surroundings.output().flush();
        return ExitCode.DONE;
    }
}
