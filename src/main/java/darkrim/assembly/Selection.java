package darkrim.assembly;

import com.google.re2j.Pattern;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.stream.Stream;

/**
 * A pattern that selects surfaces by their path.
 *
 * <p>{@code *} stands for any text within one step of the path, {@code **} for any number of steps, {@code ?} for one character,
 * {@code {a,b}} for either; everything else, also {@code [} and {@code ]}, stands for itself, and so does the comma of a number such as
 * {@code [1,2]}. A pattern that matches the beginning of a path up to a {@code /} selects everything below it.
 *
 * <p>The pattern becomes a regular expression for an engine without backtracking (RE2), so that no pattern takes more than time in
 * proportion to its length and the path's.
 */
public final class Selection {
    private static final int LONGEST = 1000;
    private static final String REGULAR_SIGNS = "\\^$.|?*+()[]{}";

    private final String text;
    private final Pattern pattern;

    private Selection(String text, Pattern pattern) {
        this.text = text;
        this.pattern = pattern;
    }

    /**
     * A selection from its pattern.
     *
     * @throws IllegalArgumentException if the pattern is empty, longer than 1000 characters, or its braces do not match
     */
    public static Selection of(String text) {
        if (text.isEmpty() || text.length() > LONGEST) {
            throw new IllegalArgumentException(
                    "a pattern needs from 1 to " + LONGEST + " characters, got " + text.length());
        }
        return new Selection(text, Pattern.compile("(?s)" + regularExpression(text) + "(?:/.*)?"));
    }

    /** Whether it selects a surface. */
    public boolean selects(String path) {
        return pattern.matches(path);
    }

    /** Those of some surfaces that it selects, in their order. */
    public List<String> of(Stream<String> paths) {
        return paths.filter(this::selects).toList();
    }

    /** The pattern. */
    @Override
    public String toString() {
        return text;
    }

    private static String regularExpression(String text) {
        StringBuilder out = new StringBuilder();
        Deque<Integer> open = new ArrayDeque<>();
        boolean inNumber = false;
        for (int at = 0; at < text.length(); at++) {
            char sign = text.charAt(at);
            inNumber = sign == '[' || (inNumber && "]/{}".indexOf(sign) < 0);
            switch (sign) {
                case '*' -> at = star(text, at, out);
                case '?' -> out.append("[^/]");
                case '{' -> {
                    open.push(at);
                    out.append("(?:");
                }
                case '}' -> {
                    if (open.poll() == null) {
                        throw new IllegalArgumentException("the } at character " + (at + 1) + " has no { before it");
                    }
                    out.append(')');
                }
                case ',' -> out.append(open.isEmpty() || inNumber ? "," : "|");
                default ->
                    out.append(REGULAR_SIGNS.indexOf(sign) >= 0 ? "\\" : "").append(sign);
            }
        }
        if (!open.isEmpty()) {
            throw new IllegalArgumentException("the { at character " + (open.peek() + 1) + " has no } after it");
        }
        return out.toString();
    }

    /** Writes one or several stars; gives the place of the last character used. */
    private static int star(String text, int from, StringBuilder out) {
        int end = from;
        while (end < text.length() && text.charAt(end) == '*') {
            end++;
        }
        if (end - from == 1) {
            out.append("[^/]*");
        } else if (end < text.length() && text.charAt(end) == '/' && startsStep(text, from)) {
            // Any steps, also none: the slash after them belongs to them.
            out.append("(?:[^/]*/)*");
            end++;
        } else {
            out.append(".*");
        }
        return end - 1;
    }

    private static boolean startsStep(String text, int at) {
        return at == 0 || "/{,".indexOf(text.charAt(at - 1)) >= 0;
    }
}
