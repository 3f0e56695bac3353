package darkrim.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A plain end gives the code and leaves out whatever was to be done at the end of the process. */
class PlainEndTest {
    @TempDir
    private Path folder;

    /** A program that is to do something at its end. */
    static final class Program {
        private Program() {}

        public static void main(String[] arguments) {
            Runtime.getRuntime().addShutdownHook(new Thread(() -> System.out.println("at the end")));
            System.out.println("here");
            if (arguments.length > 0) {
                PlainEnd.of(Integer.parseInt(arguments[0]));
            }
        }
    }

    private String said(int code, String... arguments) throws Exception {
        Path output = folder.resolve("said" + code + ".txt");
        ProcessBuilder builder = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Program.class.getName())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile());
        builder.command().addAll(List.of(arguments));
        Process process = builder.start();
        assertThat(process.waitFor(2, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue()).isEqualTo(code);
        return Files.readString(output);
    }

    @Test
    void nothingIsDoneAtAPlainEnd() throws Exception {
        assumeTrue(PlainEnd.isLinux(), "ends plainly on Linux only");
        assertThat(said(0)).isEqualTo("here\nat the end\n");
        assertThat(said(7, "7")).isEqualTo("here\n");
    }
}
