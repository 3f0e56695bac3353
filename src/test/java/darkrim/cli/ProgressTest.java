package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class ProgressTest {
    @Test
    void theLineNamesTheStepAndIsWipedAtTheEnd() {
        ByteArrayOutputStream written = new ByteArrayOutputStream();
        try (Progress progress = new Progress(new PrintStream(written, true, StandardCharsets.UTF_8), () -> false)) {
            progress.progress("proving darkness", 0, 10);
            progress.progress("proving darkness", 10, 10);
            progress.progress("sampling light, at most", 100, 1000);
        }
        String text = written.toString(StandardCharsets.UTF_8);
        assertThat(text)
                .contains("proving darkness ")
                .doesNotContain("proving darkness, at most")
                .contains("sampling light, at most")
                .contains("100/1000");
        assertThat(text).matches("(?s).*\\r +\\r");
        assertThat(text).doesNotContain("\n").doesNotContain("\u001b");
        for (String line : text.split("\r", -1)) {
            assertThat(line.length()).isLessThan(80);
        }
    }
}
