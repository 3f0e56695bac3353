package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** The page of all commands is what the program declares, and each example in a help can be given. */
class CommandsPageTest {
    private static final Path PAGE = Path.of("docs/commands.md");
    private static final Pattern EXAMPLE = Pattern.compile("java -jar target/darkrim\\.jar ([^>#|]+)");

    private static final int COLUMNS = 80;

    private static CommandLine program() {
        return Commands.all(new Surroundings(
                OutputWriter.to(new StringWriter()), new PrintWriter(new StringWriter()), Ink.PLAIN, () -> Watch.NONE));
    }

    /** Run with {@code -Dwrite.docs=true} after a change of a command. */
    @Test
    void thePageIsWhatTheProgramDeclares() throws IOException {
        String expected = CommandsPage.of(program());
        if (Boolean.getBoolean("write.docs")) {
            Files.writeString(PAGE, expected);
        }
        assertThat(Files.readString(PAGE)).isEqualTo(expected);
        assertThat(Commands.names()).allSatisfy(name -> assertThat(expected).contains("\n## " + name + "\n"));
    }

    /** All words are understood, and the layouts that are named exist; the pages' commands are run elsewhere. */
    @ParameterizedTest
    @MethodSource("darkrim.cli.Commands#names")
    void everyHelpHasAnExampleThatIsUnderstood(String name) {
        List<String> examples = examples(program().getSubcommands().get(name));
        assertThat(examples).isNotEmpty();
        for (String example : examples) {
            String[] words = ShellWords.of(example);
            assertThat(words[0]).isEqualTo(name);
            program().parseArgs(words);
            assertThat(words)
                    .filteredOn(word -> word.startsWith("geometries/") && !word.contains("*"))
                    .allSatisfy(word -> assertThat(Path.of(word)).exists());
        }
    }

    /** A line that is longer is broken anywhere on a terminal of 80 columns: an example cannot be copied then. */
    @ParameterizedTest
    @MethodSource("darkrim.cli.Commands#names")
    void everyHelpFitsIntoATerminal(String name) {
        CommandLine command = program().getSubcommands().get(name);
        assertThat(command.getCommandSpec().usageMessage().footer())
                .allSatisfy(line -> assertThat(line.formatted()).hasSizeLessThanOrEqualTo(COLUMNS));
        assertThat(command.getUsageMessage().lines())
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(COLUMNS));
    }

    /** Whoever looks for a command reads a sentence of each. */
    @Test
    void theHelpOfTheProgramHasASentenceForEachCommand() {
        String help = program().getUsageMessage();
        assertThat(help.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(COLUMNS));
        program().getSubcommands().forEach((name, command) -> {
            String sentence =
                    command.getCommandSpec().usageMessage().description()[0].formatted();
            assertThat(sentence.indexOf(". ")).as(name).isNegative();
        });
    }

    /** What cannot be understood is not passed by the check above. */
    @Test
    void anExampleWithAWrongOptionWouldBeFound() {
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> program().parseArgs("check", "geometries/nightglow-b.yaml", "--jsn", "x"))
                .isInstanceOf(CommandLine.ParameterException.class);
    }

    private static List<String> examples(CommandLine command) {
        String footer = String.join(
                        "\n", command.getCommandSpec().usageMessage().footer())
                .formatted()
                .replaceAll("\\\\\n\\s*", "");
        List<String> examples = new ArrayList<>();
        for (String line : footer.lines().toList()) {
            Matcher example = EXAMPLE.matcher(line);
            while (example.find()) {
                examples.add(example.group(1).strip());
            }
        }
        return examples;
    }
}
