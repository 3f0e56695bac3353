package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** What {@link WindowDrive} claims, on a display of its own. Skipped where there is no Xvfb (Debian: apt-get install xvfb libgtk-3-0 libxtst6). */
class WindowIT {
    private static final int CLAIMS = 20;
    private static final long PATIENCE_SECONDS = 400;

    @TempDir
    private Path folder;

    @TestFactory
    Stream<DynamicTest> theWindowDoesWhatAPersonExpects() throws Exception {
        Process display = display();
        try {
            String name = firstLine(display);
            List<String> said = said(name);
            List<String> claims = said.stream()
                    .filter(line -> line.startsWith("holds: ") || line.startsWith("fails: "))
                    .toList();
            assertThat(claims).as(String.join("\n", said)).hasSize(CLAIMS);
            return claims.stream()
                    .map(line -> DynamicTest.dynamicTest(
                            line.substring("holds: ".length()),
                            () -> assertThat(line).startsWith("holds: ")));
        } finally {
            display.destroy();
        }
    }

    /** A display in memory, which chooses its own number. */
    private static Process display() {
        try {
            return new ProcessBuilder("Xvfb", "-displayfd", "1", "-screen", "0", "1000x640x24", "-nolisten", "tcp")
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException missing) {
            return abort("Xvfb is not there: the window was not tried with mouse and keys");
        }
    }

    private static String firstLine(Process display) throws IOException {
        String number =
                new BufferedReader(new InputStreamReader(display.getInputStream(), StandardCharsets.UTF_8)).readLine();
        return number == null
                ? abort("Xvfb did not start: the window was not tried with mouse and keys")
                : ":" + number;
    }

    private List<String> said(String display) throws IOException, InterruptedException {
        Path output = folder.resolve("said.txt");
        ProcessBuilder builder = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-Djava.awt.headless=true",
                        "-Dprism.order=es2",
                        "-Dprism.forceGPU=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        WindowDrive.class.getName(),
                        folder.toString())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile());
        builder.environment().put("DISPLAY", display);
        Process process = builder.start();
        try {
            assertThat(process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        List<String> said = Files.readAllLines(output);
        if (process.exitValue() == 2) {
            abort("no three-dimensional pictures on this display: the window was not tried with mouse and keys");
        }
        return said;
    }
}
