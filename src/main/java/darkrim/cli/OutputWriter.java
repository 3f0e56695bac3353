package darkrim.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.Locale;
import java.util.Optional;

/** Standard output as a writer that remembers why something could not be written; the one it is built on keeps only that it was so. */
final class OutputWriter extends PrintWriter {
    private final Remembering target;

    private OutputWriter(Remembering target) {
        super(target, true);
        this.target = target;
    }

    /** Writes to a target. */
    static OutputWriter to(Writer target) {
        return new OutputWriter(new Remembering(target));
    }

    /**
     * Writes what is still held back, and says of a run whether all of it arrived.
     *
     * @param code exit code of a run of which everything was written
     * @param errors where to say that something was lost
     * @return that code; or {@link ExitCode#UNUSABLE} if something was lost, unless the reader, such as {@code head}, had seen enough and
     *     closed the pipe
     */
    int delivered(int code, PrintWriter errors) {
        flush();
        Optional<IOException> failure = target.failure();
        if (failure.isEmpty() || isClosedPipe(failure.get())) {
            return code;
        }
        errors.println("darkrim: the result could not be written to standard output: "
                + failure.get().getMessage() + "; what it holds is not complete.");
        errors.flush();
        return ExitCode.UNUSABLE;
    }

    /** The systems' own words: 'Broken pipe', 'The pipe is being closed'. */
    private static boolean isClosedPipe(IOException failure) {
        return String.valueOf(failure.getMessage()).toLowerCase(Locale.ROOT).contains("pipe");
    }

    /** Keeps the first failure. */
    private static final class Remembering extends Writer {
        private final Writer target;
        private IOException first;

        Remembering(Writer target) {
            this.target = target;
        }

        Optional<IOException> failure() {
            return Optional.ofNullable(first);
        }

        @Override
        public void write(char[] letters, int from, int count) throws IOException {
            remember(() -> target.write(letters, from, count));
        }

        @Override
        public void flush() throws IOException {
            remember(target::flush);
        }

        @Override
        public void close() throws IOException {
            remember(target::close);
        }

        private void remember(Step step) throws IOException {
            try {
                step.run();
            } catch (IOException failure) {
                first = first == null ? failure : first;
                throw failure;
            }
        }
    }

    /** Something that may fail to write. */
    private interface Step {
        void run() throws IOException;
    }
}
