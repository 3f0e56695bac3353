package darkrim.layout.form;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.text.similarity.LevenshteinDistance;

/** Words for messages: suggestions, enumerations, shortened quotations. */
public final class Wording {
    private static final int LONGEST_QUOTATION = 60;
    private static final int LONGEST_ENUMERATION = 12;
    /** Below this many letters the beginning of a word says nothing. */
    private static final int SHORTEST_BEGINNING = 3;

    private Wording() {}

    /**
     * The known word that was most likely meant: least Levenshtein distance without regard to case, at most a third of
     * the letters; failing that a word that begins like it.
     */
    public static Optional<String> nearest(String word, Collection<String> known) {
        if (word.isEmpty() || word.length() > LONGEST_QUOTATION) {
            return Optional.empty();
        }
        String wanted = word.toLowerCase(Locale.ROOT);
        // One letter changed in a word of one letter is any other.
        int most = Math.min(word.length() - 1, Math.max(1, (word.length() + 1) / 3));
        LevenshteinDistance distance = new LevenshteinDistance(most);
        return known.stream()
                .filter(candidate -> distance.apply(wanted, candidate.toLowerCase(Locale.ROOT)) >= 0)
                .min(Comparator.comparing(candidate -> distance.apply(wanted, candidate.toLowerCase(Locale.ROOT))))
                .or(() -> known.stream()
                        .filter(candidate -> wanted.length() >= SHORTEST_BEGINNING
                                && candidate.toLowerCase(Locale.ROOT).startsWith(wanted))
                        .findFirst());
    }

    /** {@code did you mean 'x'?}, by {@link OtherWords} or the letters, or the known words where none is near. */
    public static String suggestion(String word, Collection<String> known) {
        return didYouMean(word, known)
                .orElseGet(() -> known.isEmpty() ? "none is defined" : "expected " + anyOf(known));
    }

    /** {@code did you mean 'x'?}, by {@link OtherWords} or the letters; empty where none of the known words is near. */
    static Optional<String> didYouMean(String word, Collection<String> known) {
        return OtherWords.ours(word, known)
                .or(() -> nearest(word, known))
                .map(near -> "did you mean '" + oneLine(near) + "'?");
    }

    /** {@code a, b or c}; a long enumeration is cut. */
    public static String anyOf(Collection<String> words) {
        return enumeration(words, " or ");
    }

    /** {@code a, b and c}; a long enumeration is cut. */
    public static String allOf(Collection<String> words) {
        return enumeration(words, " and ");
    }

    private static String enumeration(Collection<String> words, String last) {
        // What is known may be what the file calls it.
        List<String> all = words.stream().map(Wording::oneLine).toList();
        if (all.size() > LONGEST_ENUMERATION) {
            return String.join(", ", all.subList(0, LONGEST_ENUMERATION))
                    + last
                    + (all.size() - LONGEST_ENUMERATION)
                    + (all.size() == LONGEST_ENUMERATION + 1 ? " other" : " others");
        }
        if (all.size() < 2) {
            return String.join("", all);
        }
        return String.join(", ", all.subList(0, all.size() - 1)) + last + all.get(all.size() - 1);
    }

    /** The text on one line with control characters made visible. */
    public static String oneLine(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> shown.appendCodePoint(isControl(c) ? '\u00b7' : c));
        return shown.toString();
    }

    /** The text with control characters made visible, cut after 60 characters, on one line. */
    public static String shortened(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().limit(LONGEST_QUOTATION).forEach(c -> shown.appendCodePoint(isControl(c) ? '\u00b7' : c));
        if (text.codePointCount(0, text.length()) > LONGEST_QUOTATION) {
            shown.append("...");
        }
        return shown.toString();
    }

    /** Whether a code point would break a line, or act on a terminal, or hide. */
    public static boolean isControl(int codePoint) {
        int type = Character.getType(codePoint);
        return type == Character.CONTROL
                || type == Character.FORMAT
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR
                || type == Character.SURROGATE
                || type == Character.UNASSIGNED
                || type == Character.PRIVATE_USE;
    }

    /** A number for a message: up to six digits that matter, no useless zeros. */
    public static String number(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e6) {
            return String.valueOf((long) value);
        }
        String text = String.format(Locale.ROOT, "%.6g", value);
        if (!text.contains("e")) {
            return text.replaceAll("0+$", "").replaceAll("\\.$", "");
        }
        return text.replaceAll("\\.?0+e", "e").replaceAll("e([-+])0", "e$1").replace("e+", "e");
    }
}
