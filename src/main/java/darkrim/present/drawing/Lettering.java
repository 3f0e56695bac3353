package darkrim.present.drawing;

import darkrim.present.Printable;

/**
 * How wide words are on paper: not less than in any common sans-serif font, so that words that are kept apart stay apart whatever font a reader's
 * machine puts in the place of the one that is asked for. Widths in ems are those of the widest such font looked at (Verdana's are left out), from
 * memory.
 */
final class Lettering {
    private static final String NARROW = " .,:;'|!ijlI()[]/-ft";
    private static final String WIDE = "mwMW%@+<>=";

    private Lettering() {}

    /** Width of words, mm, for letters of a size, mm. */
    static double width(String text, double size, boolean bold) {
        double ems = text.codePoints().mapToDouble(Lettering::ems).sum();
        return ems * size * (bold ? 1.1 : 1);
    }

    private static double ems(int letter) {
        if (letter > 0x2e80) {
            return 1.05;
        }
        return NARROW.indexOf(letter) >= 0
                ? 0.42
                : WIDE.indexOf(letter) >= 0 ? 0.95 : Character.isUpperCase(letter) ? 0.75 : 0.62;
    }

    /** Words shortened in the middle until they are no wider than a width, mm. */
    static String within(double width, String text, double size, boolean bold) {
        String shown = Printable.of(text);
        int letters = shown.length();
        while (letters > 5 && width(shown, size, bold) > width) {
            letters--;
            shown = Printable.within(letters, Printable.of(text));
        }
        return shown;
    }
}
