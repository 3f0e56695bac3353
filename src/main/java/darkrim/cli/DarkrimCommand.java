package darkrim.cli;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code darkrim}: names the commands. */
@Command(
        name = "darkrim",
        description = "Tells the designer of a black baffle whether light falls where it must not.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar check geometries/nightglow-b.yaml",
            "",
            "'darkrim check --help' shows the options and the exit codes; likewise for the",
            "other commands."
        })
final class DarkrimCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        List<String> names = Commands.names();
        int last = names.size() - 1;
        throw new ParameterException(
                spec.commandLine(),
                "a command is missing, expected " + String.join(", ", names.subList(0, last)) + " or "
                        + names.get(last));
    }
}
