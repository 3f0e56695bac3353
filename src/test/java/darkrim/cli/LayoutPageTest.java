package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The first layout that docs/layout.md shows gives the verdicts that the page says. */
class LayoutPageTest {
    @TempDir
    private Path folder;

    @Test
    void theFirstLayoutPassesAndFailsWithAWiderOpening() throws IOException {
        String page = Files.readString(Path.of("docs/layout.md"));
        String start = "```yaml\n";
        String layout = page.substring(page.indexOf(start) + start.length(), page.indexOf("```\n\nSave it"));
        assertThat(layout.lines()).hasSizeLessThanOrEqualTo(10);
        Run narrow = run(layout);
        assertThat(narrow.code()).isEqualTo(ExitCode.PASS);
        assertThat(narrow.errors()).isEmpty();
        assertThat(narrow.output()).startsWith("One detector under a lid\nPASS: both requirements hold.\n\n");
        Run wide = run(layout.replace("size: 18.7", "size: 20"));
        assertThat(wide.code()).isEqualTo(ExitCode.FAIL);
        assertThat(wide.output()).containsPattern("edges-dark +FAIL");
    }

    private Run run(String layout) throws IOException {
        return Run.of(
                "check", Files.writeString(folder.resolve("first.yaml"), layout).toString());
    }
}
