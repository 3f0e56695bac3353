package darkrim.cli;

import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** All that is wrong with a command line, in the words of this program. */
final class WrongUse {
    /** What people try who look for help, and the option that gives it. */
    private static final Map<String, String> OTHERWISE_COMMANDS = Map.of("help", "--help", "version", "--version");

    /** What another command calls the same. */
    private static final Map<String, String> OTHERWISE_OPTIONS =
            Map.of("--section", "--plane", "--plane", "--section", "--at", "--seen-from", "--seen-from", "--at");

    private static final int SHORT_OPTION = 2;

    private final List<String> given;
    private final Set<String> found = new LinkedHashSet<>();
    private final Set<ArgSpec> refused = new HashSet<>();
    private final Set<String> refusedWords = new HashSet<>();
    /** Whether an option has no value: the words after it are left over then, and nothing is known of them. */
    private boolean valueMissing;

    private WrongUse(String... given) {
        this.given = List.of(given);
    }

    /**
     * What is wrong and what was expected, a line each without a full stop.
     *
     * @param line the program
     * @param wrong what was found first
     * @param given all words of the command line
     */
    static List<String> of(CommandLine line, ParameterException wrong, String... given) {
        WrongUse use = new WrongUse(given);
        collect(line);
        ParseResult result = line.parseArgs(given);
        while (result != null) {
            boolean known = use.add(result);
            result = known ? result.subcommand() : null;
        }
        return use.found.isEmpty() ? List.of(wrong.getMessage()) : List.copyOf(use.found);
    }

    private static void collect(CommandLine line) {
        line.getCommandSpec().parser().collectErrors(true);
        line.getSubcommands().values().forEach(WrongUse::collect);
    }

    /** Adds what is wrong with the words of one command; false where there is no such command, so that its words mean nothing. */
    private boolean add(ParseResult result) {
        boolean known = true;
        for (Exception error : result.errors()) {
            if (error instanceof MissingParameterException missing) {
                missing.getMissing().stream()
                        .filter(each -> !refused.contains(each))
                        .forEach(each -> found.add(missing(each)));
            } else if (error instanceof OverwrittenOptionException twice) {
                found.add(((OptionSpec) twice.getOverwritten()).longestName() + " is given twice, expected once");
            } else if (error instanceof UnmatchedArgumentException unmatched) {
                known = unmatched(result.commandSpec(), unmatched.getUnmatched());
            } else if (error instanceof ParameterException wrong) {
                refused.add(wrong.getArgSpec());
                refusedWords.add(wrong.getValue());
                found.add(refused(wrong));
            }
        }
        if (known && result.commandSpec().userObject() instanceof OptionChoices command) {
            command.choices().stream().filter(this::isMissing).forEach(choice -> found.add(missing(choice)));
        }
        return known;
    }

    /** Of options of which one must be given: what is missing, also said by the command itself where nothing else is wrong. */
    static String missing(List<String> choice) {
        return choice.get(0) + " is missing, expected it or " + String.join(" or ", choice.subList(1, choice.size()));
    }

    private boolean isMissing(List<String> choice) {
        return choice.stream()
                .map(shown -> shown.substring(0, shown.indexOf(' ')))
                .noneMatch(name -> given.stream().anyMatch(word -> bare(word).equals(name)));
    }

    private String missing(ArgSpec missing) {
        if (missing instanceof OptionSpec option
                && List.of(option.names()).stream().anyMatch(given::contains)) {
            valueMissing = true;
            return option.longestName() + " has no value, expected " + shown(option);
        }
        return shown(missing) + " is missing, expected " + sentence(missing);
    }

    private static String shown(ArgSpec argument) {
        return argument instanceof OptionSpec option
                ? option.longestName() + " " + option.paramLabel()
                : argument.paramLabel();
    }

    /** The first sentence of the description, to be gone on with. */
    private static String sentence(ArgSpec argument) {
        String text = String.join(" ", argument.description()).formatted();
        int end = text.indexOf(". ");
        String first = end < 0 ? text.replaceFirst("\\.$", "") : text.substring(0, end);
        return Character.toLowerCase(first.charAt(0)) + first.substring(1);
    }

    private static String refused(ParameterException wrong) {
        ArgSpec argument = wrong.getArgSpec();
        String name = argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
        if (argument.arity().max() == 0) {
            return name + " takes no value, got '" + Wording.shortened(wrong.getValue()) + "'";
        }
        // The library puts a beginning of its own before what the reader of the value says.
        String message = wrong.getMessage();
        return name + ": " + message.substring(message.indexOf(": ") + 2);
    }

    private boolean unmatched(CommandSpec command, List<String> words) {
        boolean commands = !command.subcommands().isEmpty();
        int values = 0;
        for (String word : words) {
            if (word.startsWith("-") && word.length() > 1) {
                found.add("there is no option '" + Wording.shortened(bare(word)) + "', "
                        + nearestOption(command, bare(word)));
                // What follows an unknown option may be meant for it.
                values += word.contains("=") ? 0 : 1;
            } else if (values > 0) {
                values--;
            } else if (commands) {
                found.add("there is no command '" + Wording.shortened(word) + "', " + nearestCommand(command, word));
                return false;
            } else if (!valueMissing && !refusedWords.contains(word)) {
                found.add("'" + Wording.shortened(word) + "' is one word too many, expected " + room(command));
            }
        }
        return true;
    }

    /** An unknown option without its value and without the library's remark on letters that stand together. */
    private static String bare(String word) {
        return word.replaceFirst("(?s)[= ].*", "");
    }

    /** The option that was most likely meant, or all, those that help last. */
    private static String nearestOption(CommandSpec command, String word) {
        List<String> names = new ArrayList<>();
        List<String> helping = new ArrayList<>();
        command.options().stream().filter(option -> !option.hidden()).forEach(option -> {
            for (String name : option.names()) {
                // Of a single letter no other letter is meant.
                if (name.length() > SHORT_OPTION || name.equalsIgnoreCase(word)) {
                    (option.usageHelp() || option.versionHelp() ? helping : names).add(name);
                }
            }
        });
        String other = OTHERWISE_OPTIONS.get(word);
        if (names.contains(other)) {
            return "did you mean '" + other + "'?";
        }
        List<String> all = Stream.concat(names.stream(), helping.stream()).toList();
        // 'section' has the end of 'version', but is no slip of it.
        List<String> likely = all.stream()
                .filter(name -> names.contains(name) || initial(name) == initial(word))
                .toList();
        return Wording.nearest(word, likely).isPresent()
                ? Wording.suggestion(word, likely)
                : "expected " + Wording.anyOf(all);
    }

    private static int initial(String option) {
        return option.replaceFirst("^-+", "").chars().findFirst().orElse('-');
    }

    private static String nearestCommand(CommandSpec command, String word) {
        String option = OTHERWISE_COMMANDS.get(word);
        return option != null
                ? "did you mean '" + option + "'?"
                : Wording.suggestion(
                        word,
                        command.subcommands().keySet().stream()
                                .filter(Commands.names()::contains)
                                .toList());
    }

    /** The words that a command takes beside its options. */
    private static String room(CommandSpec command) {
        List<String> labels = command.positionalParameters().stream()
                .map(PositionalParamSpec::paramLabel)
                .toList();
        return labels.isEmpty() ? "options only" : "no more than " + String.join(" and ", labels);
    }
}
