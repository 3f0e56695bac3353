package darkrim.present;

import darkrim.layout.form.Wording;

/** Makes text of a layout harmless for a terminal and a table. */
public final class Printable {
    private static final String DOTS = "...";

    private Printable() {}

    /** The text on one line; what would act on a terminal, break a line or hide becomes a question mark. */
    public static String of(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> shown.appendCodePoint(Wording.isControl(c) ? '?' : c));
        return shown.toString();
    }

    /** The text, shortened in the middle to a width, so that the beginning and the end of a path can still be read. */
    public static String within(int width, String text) {
        if (text.length() <= width) {
            return text;
        }
        int kept = Math.max(2, width - DOTS.length());
        int head = kept / 2;
        return text.substring(0, head) + DOTS + text.substring(text.length() - (kept - head));
    }
}
