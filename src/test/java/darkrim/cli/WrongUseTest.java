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
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** Whatever is wrong with a command line is said in a line that tells what was expected, in the words of this program, of every command. */
class WrongUseTest {
    /** What no reader of a value takes: no number, no word of a list, no name of a point with its shares. */
    private static final String BAD = ":?";

    @TempDir
    private Path folder;

    private static List<CommandSpec> commands() {
        return program().getSubcommands().values().stream()
                .map(CommandLine::getCommandSpec)
                .toList();
    }

    private static CommandLine program() {
        return Commands.all(new Surroundings(
                OutputWriter.to(new StringWriter()), new PrintWriter(new StringWriter()), Ink.PLAIN, () -> Watch.NONE));
    }

    /** The words that a command cannot do without, but for one argument; 1 is a number, a name and a file alike. */
    private static List<String> words(CommandSpec command, ArgSpec without) {
        List<String> words = new ArrayList<>(List.of(command.name()));
        for (ArgSpec each : command.args()) {
            if (each.required() && each != without) {
                if (each instanceof OptionSpec option) {
                    words.add(option.longestName());
                }
                words.add("1");
            }
        }
        if (command.userObject() instanceof OptionChoices choices) {
            for (List<String> choice : choices.choices()) {
                words.add(shownName(choice.get(isOf(without, choice.get(0)) ? 1 : 0)));
                words.add("1");
            }
        }
        return words;
    }

    private static boolean isOf(ArgSpec argument, String shown) {
        return argument instanceof OptionSpec option && option.longestName().equals(shownName(shown));
    }

    /** Without its value, as the help shows it. */
    private static String shownName(String shown) {
        return shown.substring(0, shown.indexOf(' '));
    }

    private static void assertSaid(CommandSpec command, List<String> words, String... expected) {
        Run run = Run.of(words.toArray(String[]::new));
        assertThat(run.code()).as(words.toString()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.output()).isEmpty();
        List<String> lines = new ArrayList<>();
        Stream.of(expected).map(line -> "darkrim: " + line).forEach(lines::add);
        lines.add("'darkrim " + command.name() + " --help' shows how it is used.");
        assertThat(run.errors().lines())
                .as(words.toString())
                .hasSameSizeAs(lines)
                .zipSatisfy(lines, (line, begin) -> assertThat(line).startsWith(begin));
        assertThat(run.errors())
                .doesNotContainPattern("Invalid|Missing|Unknown|Unmatched|specified|required|Exception|is not a ")
                .doesNotContain("null");
    }

    private static List<String> and(List<String> words, String... more) {
        return Stream.concat(words.stream(), Stream.of(more)).toList();
    }

    private static boolean isFlag(OptionSpec option) {
        return option.arity().max() == 0;
    }

    @ParameterizedTest
    @MethodSource("commands")
    void whatIsMissingIsNamedWithWhatWasExpected(CommandSpec command) {
        for (ArgSpec each : command.args()) {
            if (each.required()) {
                String missing = each instanceof OptionSpec option
                        ? option.longestName() + " " + option.paramLabel()
                        : lastOf(command.positionalParameters());
                assertSaid(command, words(command, each), missing + " is missing, expected ");
            }
        }
    }

    /** Words without names are taken in turn: whichever is left out, the last is missing. */
    private static String lastOf(List<PositionalParamSpec> words) {
        return words.stream()
                .filter(ArgSpec::required)
                .reduce((first, second) -> second)
                .orElseThrow()
                .paramLabel();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void anOptionWithoutItsValueIsNamed(CommandSpec command) {
        for (OptionSpec option : command.options()) {
            if (!isFlag(option)) {
                assertSaid(
                        command,
                        and(words(command, option), option.longestName()),
                        option.longestName() + " has no value, expected " + option.longestName() + " "
                                + option.paramLabel());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("commands")
    void aValueThatCannotBeReadIsQuotedBesideWhatWasExpected(CommandSpec command) {
        for (OptionSpec option : command.options()) {
            String name = option.longestName();
            List<String> words = words(command, option);
            if (isFlag(option)) {
                assertSaid(command, and(words, name + "=" + BAD), name + " takes no value, got '" + BAD + "'");
            } else if (isOf(option, Path.class)) {
                assertSaid(command, and(words, name, ""), name + ": expected the name of a file, got ''");
            } else if (option.converters().length > 0) {
                assertSaid(command, and(words, name, BAD), name + ": ");
                String said =
                        Run.of(and(words, name, BAD).toArray(String[]::new)).errors();
                assertThat(said).contains("expected ").contains("'" + BAD + "'");
            } else {
                // A text: every value can be read.
                assertThat(isOf(option, String.class)).as(name).isTrue();
            }
        }
    }

    /** Whether values are of a type, or a list of such. */
    private static boolean isOf(OptionSpec option, Class<?> type) {
        Class<?>[] each = option.typeInfo().getAuxiliaryTypes();
        return option.typeInfo().getType() == type || (each.length == 1 && each[0] == type);
    }

    @ParameterizedTest
    @MethodSource("commands")
    void anOptionThatIsGivenTwiceIsNamed(CommandSpec command) {
        for (OptionSpec option : command.options()) {
            boolean once = !option.isMultiValue() && !option.usageHelp() && !option.versionHelp();
            if (once && (isFlag(option) || option.converters().length == 0)) {
                String[] twice = isFlag(option)
                        ? new String[] {option.longestName(), option.longestName()}
                        : new String[] {option.longestName(), "1", option.longestName(), "2"};
                assertSaid(
                        command,
                        and(words(command, option), twice),
                        option.longestName() + " is given twice, expected once");
            }
        }
    }

    @ParameterizedTest
    @MethodSource("commands")
    void anUnknownOptionAndAWordTooManyAreNamed(CommandSpec command) {
        List<String> words = words(command, null);
        assertSaid(command, and(words, "--no-such", "7"), "there is no option '--no-such', ");
        assertSaid(command, and(words, "--no-such=7"), "there is no option '--no-such', ");
        if (!command.name().equals("finishes")) {
            int optional = (int) command.positionalParameters().stream()
                    .filter(each -> !each.required())
                    .count();
            List<String> full =
                    and(words, Stream.generate(() -> "1").limit(optional).toArray(String[]::new));
            assertSaid(command, and(full, "more"), "'more' is one word too many, expected ");
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            chekc 1 --sed 3         | there is no command 'chekc', did you mean 'check'?
            help check              | there is no command 'help', did you mean '--help'?
            version                 | there is no command 'version', did you mean '--version'?
            --sed 3 check 1         | there is no option '--sed', expected --help or --version
            check -x 1              | there is no option '-x', expected --json,
            check 1 --bogus         | there is no option '--bogus', expected --json, --csv, --junit, --margins,
            check 1 --hlep          | there is no option '--hlep', did you mean '--help'?
            section 1 -o a --section z=1 | there is no option '--section', did you mean '--plane'?
            check 1 --section z=1   | there is no option '--section', expected --json, --csv,
            check -vx 1             | there is no option '-x', expected --json,
            draw 1 -o a.png -O 3    | there is no option '-O', did you mean '-o'?
            check 1 -samples 3      | there is no option '-samples', did you mean '--samples'?
            check 1 --json --csv x  | --json has no value, expected --json FILE
            check --json --csv x 1  | --json has no value, expected --json FILE
            check 1 --samples=      | --samples: expected a whole number, at least 1, such as 2e8, got ''
            """)
    void aMistakeIsSaidOnceAndNothingThatFollowsFromIt(String words, String expected) {
        Run run = Run.of(words.split(" "));
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).startsWith("darkrim: " + expected).hasLineCount(2);
    }

    /** Each option once, by its long name, and help after what may be meant. */
    @Test
    void optionsAreListedByTheirLongNames() {
        Run run = Run.of("faces", "1", "--bogus");
        assertThat(run.errors())
                .startsWith("darkrim: there is no option '--bogus', expected --part, --names, --warm, --overwrite,"
                        + " --verbose, --csv, --json, --help or --version\n");
    }

    @Test
    void everythingThatIsWrongIsSaidAtOnce() {
        Run run = Run.of("section", "--plane", "q", "--therads=2", "--seed", "x");
        assertThat(run.errors().lines())
                .containsExactly(
                        "darkrim: --plane: expected x, y or z, an equals sign and a place in mm, such as y=0, got 'q'",
                        "darkrim: --seed: expected a whole number from 0 to 9007199254740991, got 'x'",
                        "darkrim: --output FILE is missing, expected the drawing: .svg, .pdf or .dxf; may be repeated",
                        "darkrim: LAYOUT is missing, expected the layout file (YAML)",
                        "darkrim: there is no option '--therads', did you mean '--threads'?",
                        "'darkrim section --help' shows how it is used.");
    }

    @Test
    void anEmptyNameOfALayoutIsRefusedOnce() {
        assertThat(Run.of("check", "").errors().lines())
                .containsExactly(
                        "darkrim: LAYOUT: expected the name of a file, got ''",
                        "'darkrim check --help' shows how it is used.");
    }

    /** The library would take such a file for a list of further words. */
    @Test
    void aNameThatBeginsWithAnAtSignIsTheNameOfAFile() throws IOException {
        Path file = Files.writeString(folder.resolve("words"), "--version");
        Run run = Run.of("check", "@" + file);
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).startsWith("@" + file + ": there is no such file [unreadable]");
    }
}
