package darkrim.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/** Lines that a person types. A thread of its own waits for them, so that Ctrl-C need not wait for the next. */
final class Answers {
    private static final long LOOK_MILLISECONDS = 50;

    private final Reader source;
    private final BlockingQueue<Optional<String>> lines = new LinkedBlockingQueue<>();
    private boolean listening;
    private boolean ended;

    private Answers(Reader source) {
        this.source = source;
    }

    /** Lines of some source. */
    static Answers from(Reader source) {
        return new Answers(source);
    }

    /** Lines of standard input, if a person sits before it and sees what is asked. */
    static Optional<Answers> ofPerson() {
        return Terminal.asksPerson()
                ? Optional.of(from(new InputStreamReader(System.in, Charset.defaultCharset())))
                : Optional.empty();
    }

    /**
     * The next line.
     *
     * @param stop whether to wait no longer
     * @return the line; empty if there is none any more, or it is no longer waited for
     */
    Optional<String> next(BooleanSupplier stop) {
        if (!listening) {
            listening = true;
            Thread listener = new Thread(this::listen, "darkrim-answers");
            listener.setDaemon(true);
            listener.start();
        }
        try {
            Optional<String> line = null;
            while (!ended && line == null && !stop.getAsBoolean()) {
                line = lines.poll(LOOK_MILLISECONDS, TimeUnit.MILLISECONDS);
                ended = line != null && line.isEmpty();
            }
            return line == null ? Optional.empty() : line;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        }
    }

    private void listen() {
        try (BufferedReader reader = new BufferedReader(source)) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                lines.add(Optional.of(line));
            }
        } catch (IOException lost) {
            // As if it had ended.
        } finally {
            lines.add(Optional.empty());
        }
    }
}
