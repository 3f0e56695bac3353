package darkrim.view.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;

/**
 * Tells when the content of a file has changed and has come to rest. It looks a few times a second, which works for every editor and file
 * system; a file that is written in pieces is told of once it stays the same between two looks.
 */
public final class FileWatch implements AutoCloseable {
    private static final long PERIOD_MS = 300;

    private final Path file;
    private final Runnable changed;
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "darkrim-view-file");
        thread.setDaemon(true);
        return thread;
    });
    private Optional<Stamp> seen;
    private byte[] told;
    private Optional<ScheduledFuture<?>> looking = Optional.empty();

    private record Stamp(long time, long size) {}

    /**
     * @param file the file
     * @param changed told, on a thread of its own
     */
    public FileWatch(Path file, Runnable changed) {
        this.file = file;
        this.changed = changed;
        seen = stamp();
        told = content();
    }

    /** Begins to look. */
    public FileWatch begin() {
        looking = Optional.of(clock.scheduleWithFixedDelay(this::look, PERIOD_MS, PERIOD_MS, TimeUnit.MILLISECONDS));
        return this;
    }

    /** One look. */
    void look() {
        Optional<Stamp> now = stamp();
        if (!now.equals(seen)) {
            // Still being written, perhaps.
            seen = now;
            return;
        }
        byte[] content = content();
        if (!Arrays.equals(content, told)) {
            told = content;
            changed.run();
        }
    }

    private Optional<Stamp> stamp() {
        try {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            return Optional.of(new Stamp(attributes.lastModifiedTime().toMillis(), attributes.size()));
        } catch (IOException gone) {
            return Optional.empty();
        }
    }

    /** Empty where there is no file: that is a change, too. */
    private byte[] content() {
        try {
            return Files.readAllBytes(file);
        } catch (IOException gone) {
            return new byte[0];
        }
    }

    @Override
    public void close() {
        looking.ifPresent(each -> each.cancel(false));
        clock.shutdownNow();
    }
}
