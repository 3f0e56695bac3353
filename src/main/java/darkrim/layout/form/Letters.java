package darkrim.layout.form;

import java.util.Optional;
import java.util.regex.Pattern;

/** Which texts are allowed. The patterns are understood alike by Java and by JSON Schema. */
public enum Letters {
    /** One line of text, not empty. */
    LINE("one line of text", "^(?=.*\\S)[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cn}\\p{Co}\\p{Cs}]{1,300}$"),
    /** One line of text, or nothing. */
    NOTE("one line of text", "^[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cn}\\p{Co}\\p{Cs}]{0,1000}$"),
    /** A name that becomes a step of a path. */
    NAME(
            "a name of at most 100 letters, without / * ? { } [ ], without control characters, not beginning or ending in a space",
            "^(?! )[^/*?{}\\[\\]\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cn}\\p{Co}\\p{Cs}]{1,100}$(?<! )"),
    /** A name that formulas use. */
    DIMENSION("a name of letters, digits and _ that begins with a letter", "^[A-Za-z][A-Za-z0-9_]{0,99}$"),
    /** A pattern that selects surfaces. */
    PATTERN(
            "a pattern for surfaces, such as \"mosaic/**/edge/*\"",
            "^(?=.*\\S)(?!/)(?!.*//)[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cn}\\p{Co}\\p{Cs}]{1,300}$");

    private final String expected;
    private final Pattern pattern;

    Letters(String expected, String pattern) {
        this.expected = expected;
        this.pattern = Pattern.compile(pattern);
    }

    /** What is expected, for messages. */
    public String expected() {
        return expected;
    }

    /** The regular expression that a text must match. */
    public String pattern() {
        return pattern.pattern();
    }

    /** What is wrong with a text; empty where nothing is. */
    Optional<String> problem(String text) {
        if (pattern.matcher(text).matches() && (this != PATTERN || bracesPair(text))) {
            return Optional.empty();
        }
        return Optional.of("'" + Wording.shortened(text) + "' is not allowed here, expected " + expected);
    }

    /** Braces open and close once, not inside each other. */
    private static boolean bracesPair(String text) {
        boolean open = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if ((c == '{' && open) || (c == '}' && !open)) {
                return false;
            }
            open = c == '{' || (open && c != '}');
        }
        return !open;
    }
}
