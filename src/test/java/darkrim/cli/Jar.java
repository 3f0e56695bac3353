package darkrim.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The built jar as a process of its own. */
final class Jar {
    /** How long a command may take. */
    static final long PATIENCE_SECONDS = 300;

    private Jar() {}

    /** Where the build put it. */
    static Path path() {
        return Path.of(System.getProperty("darkrim.jar")).toAbsolutePath();
    }

    /** The command that runs it. */
    static List<String> command(String... arguments) {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", path().toString()));
        command.addAll(List.of(arguments));
        return command;
    }

    /**
     * The command that runs it where it ends within a second or two: without the second of Java's compilers, which takes more than half of the
     * processor's time of such a run and changes no bit of a result. Long work takes longer so.
     */
    static List<String> brief(String... arguments) {
        List<String> command = command(arguments);
        command.add(1, "-XX:TieredStopAtLevel=1");
        return command;
    }

    /** Runs it in a folder with its streams in files, as in a pipe. */
    static Run run(Path folder, Map<String, String> environment, String... arguments) {
        return end(start(folder, environment, command(arguments)));
    }

    /** A process that was started, with the files of its streams. */
    record Started(Process process, Path output, Path errors) {}

    /** Starts a command. */
    static Started start(Path folder, Map<String, String> environment, List<String> command) {
        try {
            Path output = Files.createTempFile("darkrim-it", ".out");
            Path errors = Files.createTempFile("darkrim-it", ".err");
            ProcessBuilder builder = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectOutput(output.toFile())
                    .redirectError(errors.toFile());
            builder.environment().putAll(environment);
            return new Started(builder.start(), output, errors);
        } catch (IOException problem) {
            throw new AssertionError(problem);
        }
    }

    /** Waits for the end. */
    static Run end(Started started) {
        try {
            if (!started.process().waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                started.process().destroyForcibly();
                throw new AssertionError("no end within " + PATIENCE_SECONDS + " s");
            }
            Run run = new Run(
                    started.process().exitValue(),
                    Files.readString(started.output(), StandardCharsets.UTF_8),
                    Files.readString(started.errors(), StandardCharsets.UTF_8));
            Files.delete(started.output());
            Files.delete(started.errors());
            return run;
        } catch (IOException problem) {
            throw new AssertionError(problem);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new AssertionError(interrupted);
        }
    }
}
