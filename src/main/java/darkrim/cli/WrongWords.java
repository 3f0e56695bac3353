package darkrim.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** All that is wrong with a command line: the library stops at the first wrong word, so what is wrong is left out and the rest read again. */
final class WrongWords {
    private WrongWords() {}

    /**
     * What is wrong, a line each without a full stop.
     *
     * @param line the program
     * @param wrong what the library found first
     * @param given all words of the command line
     */
    static List<String> of(CommandLine line, ParameterException wrong, String... given) {
        List<String> found = new ArrayList<>();
        List<String> rest = new ArrayList<>(List.of(given));
        Optional<ParameterException> next = Optional.of(wrong);
        while (next.isPresent()) {
            found.add(WrongUse.words(next.get()));
            next = leaveOut(next.get(), rest) ? first(line, rest) : Optional.empty();
        }
        return found;
    }

    private static Optional<ParameterException> first(CommandLine line, List<String> words) {
        try {
            line.parseArgs(words.toArray(String[]::new));
            return Optional.empty();
        } catch (ParameterException wrong) {
            return Optional.of(wrong);
        }
    }

    /** Leaves out what was found wrong; false where that would make something else wrong, such as a word that must be there. */
    private static boolean leaveOut(ParameterException wrong, List<String> words) {
        if (wrong instanceof UnmatchedArgumentException unmatched) {
            List<String> left = unmatched.getUnmatched();
            String word = left.stream()
                    .filter(each -> each.startsWith("-"))
                    .findFirst()
                    .orElse(left.get(0));
            int at = words.lastIndexOf(word);
            if (at < 0) {
                return false;
            }
            words.remove(at);
            // What follows an unknown option is meant for it.
            if (word.startsWith("-") && at < words.size() && !words.get(at).startsWith("-")) {
                words.remove(at);
            }
            return true;
        }
        return wrong.getArgSpec() instanceof OptionSpec option
                && !option.required()
                && wrong.getValue() != null
                && leaveOut(option, wrong.getValue(), words);
    }

    private static boolean leaveOut(OptionSpec option, String value, List<String> words) {
        for (String name : option.names()) {
            for (int at = 0; at < words.size(); at++) {
                if (words.get(at).equals(name + "=" + value)) {
                    words.remove(at);
                    return true;
                }
                boolean apart = at + 1 < words.size() && words.get(at + 1).equals(value);
                if (words.get(at).equals(name) && apart) {
                    words.subList(at, at + 2).clear();
                    return true;
                }
            }
        }
        return false;
    }
}
