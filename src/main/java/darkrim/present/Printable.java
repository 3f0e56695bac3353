package darkrim.present;

import darkrim.layout.form.Wording;
import java.util.Comparator;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Makes text of a layout harmless for a terminal and a table. */
public final class Printable {
    private static final String DOTS = "...";
    /** The numbers of a part in a grid, or a side. */
    private static final Pattern DISTINCTION = Pattern.compile("\\[\\d+(,\\d+)*]|/[-+][xyz](?=/|$)");

    private Printable() {}

    /** The text on one line; what would act on a terminal, break a line or hide becomes a question mark. */
    public static String of(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> shown.appendCodePoint(Wording.isControl(c) ? '?' : c));
        return shown.toString();
    }

    /**
     * The text, shortened to a width as near its middle as can be, so that the beginning and the end of a path can still be read. What tells parts
     * and faces of one name apart, such as {@code [2,1]} and {@code /-y}, is left out only where there is no room for it.
     */
    public static String within(int width, String text) {
        if (text.length() <= width) {
            return text;
        }
        int kept = Math.max(2, width - DOTS.length());
        int left = text.length() - kept;
        int middle = kept / 2;
        List<MatchResult> distinctions = DISTINCTION.matcher(text).results().toList();
        int head = IntStream.range(1, kept)
                .filter(from ->
                        distinctions.stream().allMatch(each -> each.end() <= from || each.start() >= from + left))
                .boxed()
                .min(Comparator.comparingInt(from -> Math.abs(from - middle)))
                .orElse(middle);
        return text.substring(0, head) + DOTS + text.substring(head + left);
    }
}
