package darkrim.layout.mesh;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * An external program at work in a folder of its own, without a shell. It is ended when its time is up, when it writes too much, and when
 * Darkrim itself is ended; what it prints goes into a file.
 *
 * @param folder where it works
 * @param seconds how long it may take
 * @param mostBytes largest file it may write
 */
record BoundedProcess(Path folder, int seconds, long mostBytes) {
    private static final int LOOKS_A_SECOND = 20;
    private static final int MOST_WORDS = 1 << 16;

    /** How it ended. */
    enum End {
        DONE,
        REFUSED,
        TOO_LONG,
        TOO_MUCH
    }

    /** What came of it: how it ended and the first 64 KiB of what it printed. */
    record Outcome(End end, String printed) {}

    /**
     * Runs a command.
     *
     * @param command the program and its arguments, each passed on as it is
     * @throws IOException if it cannot be started, or Darkrim is being ended
     */
    Outcome run(List<String> command) throws IOException {
        Path log = folder.resolve("printed.txt");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile());
        // Settings of the user would change the result.
        builder.environment().put("GMSH_HOME", folder.toString());
        builder.environment().put("LC_ALL", "C");
        Process process = builder.start();
        Thread ending = new Thread(() -> {
            kill(process);
            WorkFolder.delete(folder);
        });
        try {
            Runtime.getRuntime().addShutdownHook(ending);
        } catch (IllegalStateException endingAlready) {
            kill(process);
            throw new IOException("the program is being ended", endingAlready);
        }
        try {
            process.getOutputStream().close();
            End end = await(process);
            return new Outcome(end, printed(log));
        } finally {
            kill(process);
            forget(ending);
        }
    }

    private End await(Process process) throws IOException {
        try {
            for (int look = 0; look < seconds * LOOKS_A_SECOND; look++) {
                if (process.waitFor(1000 / LOOKS_A_SECOND, TimeUnit.MILLISECONDS)) {
                    return process.exitValue() == 0 ? End.DONE : End.REFUSED;
                }
                if (WorkFolder.largestFile(folder) > mostBytes) {
                    return End.TOO_MUCH;
                }
            }
            return End.TOO_LONG;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IOException("the work was stopped", interrupted);
        }
    }

    private static String printed(Path log) throws IOException {
        try (InputStream stream = Files.newInputStream(log)) {
            return new String(stream.readNBytes(MOST_WORDS), StandardCharsets.UTF_8);
        }
    }

    private static void kill(Process process) {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
    }

    private static void forget(Thread ending) {
        try {
            Runtime.getRuntime().removeShutdownHook(ending);
        } catch (IllegalStateException atWork) {
            // Darkrim is being ended: the thread cleans up by itself.
        }
    }
}
