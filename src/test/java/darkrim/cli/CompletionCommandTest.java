package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a shell completes, and that a start which makes one command only is like one that makes all. */
class CompletionCommandTest {
    @TempDir
    private Path folder;

    @Test
    void bashCompletesCommandsAndOptions() throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "there is no bash on this machine");
        Run run = Run.of("completion");
        assertThat(run.code()).isZero();
        Path script = Files.writeString(folder.resolve("darkrim.bash"), run.output());
        assertThat(completed(script, "darkrim", "che")).isEqualTo("check");
        assertThat(completed(script, "darkrim", "check", "--ov")).isEqualTo("--overwrite");
        assertThat(completed(script, "darkrim", "sweep", "--va")).isEqualTo("--vary");
    }

    @ParameterizedTest
    @MethodSource("darkrim.cli.Commands#names")
    void theHelpOfACommandNamesItAndTheProgram(String name) {
        Run run = Run.of(name, "--help");
        assertThat(run.code()).isZero();
        assertThat(run.output()).contains("Usage: darkrim " + name + " ");
        assertThat(Run.of("--help").output()).contains("  " + name);
    }

    @Test
    void aWordThatIsNoCommandIsToldWithOneThatIsNearIt() {
        Run run = Run.of("chek");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errors()).contains("check");
    }

    /** What bash offers for the last word. */
    private static String completed(Path script, String... words) throws IOException, InterruptedException {
        String asked = "source " + script + "; COMP_WORDS=(" + String.join(" ", words) + "); COMP_CWORD="
                + (words.length - 1) + "; COMP_LINE=\"${COMP_WORDS[*]}\"; _complete_darkrim; echo \"${COMPREPLY[*]}\"";
        Process bash = new ProcessBuilder("/bin/bash", "--norc", "-c", asked).start();
        String offered = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertThat(bash.waitFor(20, TimeUnit.SECONDS)).isTrue();
        return offered;
    }
}
