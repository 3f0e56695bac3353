package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/sweep.md shows is what the program prints and draws. */
class SweepPageTest {
    private static final Pattern COMMAND = Pattern.compile("java -jar target/darkrim.jar (sweep .*)\n");
    /** Letters inside the panels are outlines, which depend on the fonts of the machine. */
    private static final Pattern TEXT = Pattern.compile(">([^<>\\s][^<>]*)</text");

    @TempDir
    private Path folder;

    @Test
    void thePageShowsWhatTheProgramPrintsAndDraws() throws Exception {
        String page = Files.readString(Path.of("docs/sweep.md"));
        Matcher command = COMMAND.matcher(page);
        assertThat(command.find()).isTrue();
        Path svg = folder.resolve("sweep.svg");
        String[] words = Arrays.stream(ShellWords.of(command.group(1)))
                .map(word -> word.equals("sweep.svg") ? svg.toString() : word)
                .toArray(String[]::new);
        Run run = Run.of(words);
        assertThat(run.code()).as(run.errors()).isZero();
        if (Boolean.getBoolean("write.chart")) {
            Files.copy(svg, Path.of("docs/sweep.svg"), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        }
        assertThat(withoutVersion(page)).contains("```\n" + withoutVersion(run.output()) + "```\n");
        assertThat(texts(Files.readString(Path.of("docs/sweep.svg")))).isEqualTo(texts(Files.readString(svg)));
    }

    private static List<String> texts(String svg) {
        return TEXT.matcher(withoutVersion(svg))
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
    }

    /** The version of the program changes without any change of what is found; a hash of the layout that is stale is a page that is stale. */
    private static String withoutVersion(String text) {
        return text.replaceAll("Darkrim [0-9$][^,]*,", "Darkrim,");
    }
}
