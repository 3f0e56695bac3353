package darkrim.cli;

import darkrim.layout.form.Wording;
import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/**
 * Makes control characters visible, but for ends of lines and tabs: a message may quote the name of a file or a word of the command line, and what
 * these hold must not act on the terminal. Expects the two halves of a character in one piece.
 */
final class VisibleWriter extends FilterWriter {
    private static final int DOT = '\u00b7';

    VisibleWriter(Writer target) {
        super(target);
    }

    @Override
    public void write(int letter) throws IOException {
        write(String.valueOf((char) letter), 0, 1);
    }

    @Override
    public void write(char[] letters, int from, int count) throws IOException {
        write(String.valueOf(letters, from, count), 0, count);
    }

    @Override
    public void write(String text, int from, int count) throws IOException {
        StringBuilder shown = new StringBuilder(count);
        String piece = text.substring(from, from + count);
        for (int at = 0; at < piece.length(); ) {
            int letter = piece.codePointAt(at);
            at += Character.charCount(letter);
            boolean windowsEnd = letter == '\r' && at < piece.length() && piece.charAt(at) == '\n';
            boolean shownAsItIs = letter == '\n' || letter == '\t' || windowsEnd || !Wording.isControl(letter);
            shown.appendCodePoint(shownAsItIs ? letter : DOT);
        }
        out.write(shown.toString());
    }
}
