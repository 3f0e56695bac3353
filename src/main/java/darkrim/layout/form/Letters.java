package darkrim.layout.form;

import java.util.Optional;
import java.util.regex.Pattern;

/** Which texts are allowed. The patterns are understood alike by Java and by JSON Schema. */
public enum Letters {
    /** One line of text, not empty. */
    LINE(
            "one line of text",
            "1 to 300 characters on one line, none of them hidden",
            "^(?=.*\\S)[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cn}\\p{Co}\\p{Cs}]{1,300}$"),
    /** One line of text, or nothing. */
    NOTE(
            "one line of text",
            "at most 1000 characters on one line, none of them hidden",
            "^[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cn}\\p{Co}\\p{Cs}]{0,1000}$"),
    /** A name that becomes a step of a path. */
    NAME(
            "a name",
            "1 to 100 characters without / * ? { } [ ], not beginning or ending in a space",
            "^(?! )[^/*?{}\\[\\]\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cn}\\p{Co}\\p{Cs}]{1,100}$(?<! )"),
    /** A name that formulas use. */
    DIMENSION(
            "a name",
            "at most 100 letters, digits and _, of which the first is a letter",
            "^[A-Za-z][A-Za-z0-9_]{0,99}$"),
    /** A pattern that selects surfaces. */
    PATTERN(
            "a pattern for surfaces, such as \"mosaic/**/edge/*\"",
            "a pattern for surfaces, such as \"mosaic/**/edge/*\", with braces in pairs",
            "^(?=.*\\S)(?!/)(?!.*//)[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cn}\\p{Co}\\p{Cs}]{1,300}$");

    /** What text programs make of quotation marks. */
    private static final Pattern PRINTED_QUOTES =
            Pattern.compile("[\u2018-\u201e\u00ab\u00bb\u2039\u203a].*[\u2018-\u201e\u00ab\u00bb\u2039\u203a]");

    private final String expected;
    private final String rule;
    private final Pattern pattern;

    Letters(String expected, String rule, String pattern) {
        this.expected = expected;
        this.rule = rule;
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
        if (this != LINE && this != NOTE && PRINTED_QUOTES.matcher(text).matches()) {
            return Optional.of("'" + Wording.shortened(text)
                    + "' stands in quotation marks of print, which belong to the text, expected \" or '");
        }
        if (pattern.matcher(text).matches() && (this != PATTERN || bracesPair(text))) {
            return Optional.empty();
        }
        return Optional.of("'" + Wording.shortened(text) + "' is not allowed here, expected " + rule);
    }

    /** Every brace that opens closes later. */
    private static boolean bracesPair(String text) {
        int open = 0;
        for (int i = 0; i < text.length() && open >= 0; i++) {
            open += text.charAt(i) == '{' ? 1 : text.charAt(i) == '}' ? -1 : 0;
        }
        return open == 0;
    }
}
