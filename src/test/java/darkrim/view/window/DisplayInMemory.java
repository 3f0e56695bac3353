package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A display of its own for a window, by Xvfb (Debian: apt-get install xvfb libgtk-3-0 libxtst6). What wants one is skipped where that is missing. */
final class DisplayInMemory implements AutoCloseable {
    private static final long PATIENCE_SECONDS = 400;

    private final Process display;
    private final String name;

    /** Opens a display of a size in pixels, which chooses its own number. */
    DisplayInMemory(int width, int height) throws IOException {
        try {
            display = new ProcessBuilder(
                            "Xvfb", "-displayfd", "1", "-screen", "0", width + "x" + height + "x24", "-nolisten", "tcp")
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException missing) {
            abort("Xvfb is not there: the window was not tried with mouse and keys");
            throw missing;
        }
        String number =
                new BufferedReader(new InputStreamReader(display.getInputStream(), StandardCharsets.UTF_8)).readLine();
        assumeThat(number)
                .as("Xvfb did not start: the window was not tried with mouse and keys")
                .isNotNull();
        name = ":" + number;
    }

    /** Runs a program on the display to its end, with a folder to work in; what it said. Exit code 2: there are no three dimensions here. */
    List<String> run(Class<?> program, Path folder) throws IOException, InterruptedException {
        Path output = folder.resolve("said.txt");
        ProcessBuilder builder = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-Djava.awt.headless=true",
                        "-Dprism.order=es2",
                        "-Dprism.forceGPU=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        program.getName(),
                        folder.toString())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile());
        builder.environment().put("DISPLAY", name);
        Process process = builder.start();
        try {
            assertThat(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        if (process.exitValue() == 2) {
            abort("no three-dimensional pictures on this display: the window was not tried with mouse and keys");
        }
        return Files.readAllLines(output);
    }

    @Override
    public void close() {
        display.destroy();
    }
}
