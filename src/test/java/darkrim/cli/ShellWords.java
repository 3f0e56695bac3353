package darkrim.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words of a command as a shell would part them, single quotes understood. */
final class ShellWords {
    private static final Pattern WORD = Pattern.compile("(?:'[^']*'|[^\\s'])+");

    private ShellWords() {}

    static String[] of(String command) {
        List<String> words = new ArrayList<>();
        Matcher matcher = WORD.matcher(command);
        while (matcher.find()) {
            words.add(matcher.group().replace("'", ""));
        }
        return words.toArray(String[]::new);
    }
}
