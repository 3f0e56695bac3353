package darkrim.cli;

import java.util.regex.Pattern;

/** Quotes words for a shell (IEEE Std 1003.1, Shell Command Language, 2.2.2). */
final class ShellQuote {
    private static final Pattern PLAIN = Pattern.compile("[A-Za-z0-9_./:=@%+-]+");

    private ShellQuote() {}

    /** The word as it is where no shell sees anything in it, else in single quotes. */
    static String of(String word) {
        return PLAIN.matcher(word).matches() ? word : "'" + word.replace("'", "'\\''") + "'";
    }
}
