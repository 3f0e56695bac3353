package darkrim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Programs that are not ours and read what we write. A test is skipped, and says so, where one is missing. */
public final class Outside {
    /** Debian's own, for which its packages are. */
    private static final String PYTHON = "/usr/bin/python3";

    private Outside() {}

    /**
     * What a program said.
     *
     * @param code exit code
     * @param text both outputs
     */
    public record Said(int code, String text) {}

    /** Runs a program that must be there. */
    public static Said run(List<String> command) throws IOException, InterruptedException {
        Path out = Files.createTempFile("darkrim-outside", ".txt");
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(out.toFile())
                    .start();
            if (!process.waitFor(120, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException(command.get(0) + " did not end within 120 s");
            }
            return new Said(process.exitValue(), Files.readString(out, StandardCharsets.UTF_8));
        } finally {
            Files.delete(out);
        }
    }

    /** Whether a program can be run. */
    public static boolean has(String... command) throws InterruptedException {
        try {
            return run(List.of(command)).code() == 0;
        } catch (IOException missing) {
            return false;
        }
    }

    /** Runs a script of Python that needs a module, and returns what it prints; the test is skipped where the module is missing. */
    public static String python(String module, String script, String... arguments)
            throws IOException, InterruptedException {
        assumeTrue(has(PYTHON, "-c", "import " + module), "the Python module " + module + " is not installed");
        List<String> command = new ArrayList<>(List.of(PYTHON, "-c", script));
        command.addAll(List.of(arguments));
        Said said = run(command);
        assertThat(said.code()).as(said.text()).isZero();
        return said.text();
    }
}
