package darkrim.cli;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;

/**
 * What libraries say on the standard error stream: passed on until the program is being ended. The parts of a toolkit that end before others
 * complain of these with a stack trace, which is nothing to the user who asked for the end.
 */
final class LibraryErrors extends FilterOutputStream {
    private static final Thread NO_HOOK = new Thread();

    private LibraryErrors(OutputStream errors) {
        super(errors);
    }

    /** A stream for libraries, before one that goes on. */
    static PrintStream before(PrintStream errors) {
        return new PrintStream(new LibraryErrors(errors), true, Charset.defaultCharset());
    }

    /** Whether the program is being ended: known before the first of its hooks runs, for from then on none may be taken away. */
    private static boolean isEnding() {
        try {
            Runtime.getRuntime().removeShutdownHook(NO_HOOK);
            return false;
        } catch (IllegalStateException ending) {
            return true;
        }
    }

    @Override
    public void write(int letter) throws IOException {
        if (!isEnding()) {
            out.write(letter);
        }
    }

    @Override
    public void write(byte[] letters, int from, int count) throws IOException {
        if (!isEnding()) {
            out.write(letters, from, count);
        }
    }
}
