package darkrim.layout.mesh;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.util.Locale;

/**
 * One solid of a text STL file at a time: ends after its line {@code endsolid}, so that each can be read as a file of its own. Normals are
 * replaced by zeros: they are not used, and programs write {@code nan} for those of facets without area. For use by one thread.
 */
final class SolidLines extends Reader {
    private static final int LONGEST_LINE = 1000;

    private final BufferedReader source;
    private String pending = "";
    private int at;
    private int line;
    private boolean ended = true;

    SolidLines(BufferedReader source) {
        this.source = source;
    }

    /** A line that is longer than any that such a file has. */
    static final class LineTooLong extends IOException {
        private static final long serialVersionUID = 1L;

        private final int line;

        LineTooLong(int line) {
            super("line too long");
            this.line = line;
        }

        int line() {
            return line;
        }
    }

    /** Goes on to the next solid; false if nothing but blank lines is left. */
    boolean next() throws IOException {
        // Whoever reads through a buffer may know the word endsolid before the rest of its line is taken.
        if (!ended && !startsWith("endsolid")) {
            return false;
        }
        ended = false;
        do {
            if (!fill()) {
                return false;
            }
        } while (pending.isBlank());
        return true;
    }

    /** Number of the line that was taken last, from 1. */
    int line() {
        return line;
    }

    @Override
    public int read(char[] into, int offset, int length) throws IOException {
        if (at == pending.length() && (ended || !fill())) {
            return -1;
        }
        int count = Math.min(length, pending.length() - at);
        pending.getChars(at, at + count, into, offset);
        at += count;
        ended |= at == pending.length() && startsWith("endsolid");
        return count;
    }

    private boolean fill() throws IOException {
        StringBuilder text = new StringBuilder();
        int next = source.read();
        if (next < 0) {
            return false;
        }
        line++;
        while (next >= 0 && next != '\n') {
            if (text.length() == LONGEST_LINE) {
                throw new LineTooLong(line);
            }
            text.append((char) next);
            next = source.read();
        }
        pending = text.append('\n').toString();
        at = 0;
        if (startsWith("facet")) {
            int normal = pending.toLowerCase(Locale.ROOT).indexOf("normal");
            pending = normal < 0 ? pending : pending.substring(0, normal + 6) + " 0 0 0\n";
        }
        return true;
    }

    private boolean startsWith(String word) {
        String text = pending.stripLeading();
        return text.regionMatches(true, 0, word, 0, word.length());
    }

    @Override
    public void close() throws IOException {
        source.close();
    }
}
