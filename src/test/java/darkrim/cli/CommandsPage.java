package darkrim.cli;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The page of all commands, from the same declarations as the help. */
final class CommandsPage {
    private static final String JAR = "java -jar target/darkrim.jar";

    private CommandsPage() {}

    static String of(CommandLine program) {
        StringBuilder page = new StringBuilder("""
                # Commands

                Written by CommandsPageTest with -Dwrite.docs=true from what the program declares, as `--help` is. Before an installation write
                `%s` in place of `darkrim`. Every command also has `--help` and `--version`.

                | command | what it does |
                |---|---|
                """.formatted(JAR));
        List<CommandSpec> commands = program.getSubcommands().values().stream()
                .map(CommandLine::getCommandSpec)
                .filter(command -> !command.usageMessage().hidden())
                .toList();
        commands.forEach(command -> page.append("| [%s](#%s) | %s |%n"
                .replace("%n", "\n")
                .formatted(command.name(), command.name(), firstSentence(description(command)))));
        commands.forEach(command -> page.append(section(command)));
        return page.toString();
    }

    private static String section(CommandSpec command) {
        StringBuilder text = new StringBuilder("\n## " + command.name() + "\n" + description(command) + "\n\n");
        text.append("| give | what it says |\n|---|---|\n");
        Stream.concat(
                        command.positionalParameters().stream(),
                        command.options().stream().filter(option -> !option.usageHelp() && !option.versionHelp()))
                .filter(argument -> !argument.hidden())
                .forEach(argument -> text.append(row(argument)));
        String footer = Arrays.stream(command.usageMessage().footer())
                .map(line -> line.formatted().replace(JAR, "darkrim"))
                .collect(Collectors.joining("\n"));
        return text.append("\n```text\n")
                .append(footer.stripTrailing())
                .append("\n```\n")
                .toString();
    }

    private static String row(ArgSpec argument) {
        String names = argument instanceof OptionSpec option ? String.join("`, `", option.names()) : "";
        boolean value = argument.arity().max() > 0;
        String given = argument instanceof OptionSpec
                ? "`" + names + (value ? " " + argument.paramLabel() : "") + "`"
                : "`" + argument.paramLabel() + "`";
        String must = argument.required() ? " Must be given." : "";
        return "| " + given.replace("|", "\\|") + " | "
                + String.join(" ", argument.description()).formatted().replace("|", "\\|") + must + " |\n";
    }

    private static String description(CommandSpec command) {
        return String.join(" ", command.usageMessage().description()).formatted();
    }

    private static String firstSentence(String text) {
        int end = text.indexOf(". ");
        return end < 0 ? text : text.substring(0, end + 1);
    }
}
