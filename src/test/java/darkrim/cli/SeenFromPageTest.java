package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Ink;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/seen-from.md shows is what the program prints and draws. */
class SeenFromPageTest {
    private static final Pattern COMMAND = Pattern.compile("java -jar target/darkrim.jar (seen-from .*)\n");

    @TempDir
    Path folder;

    @Test
    void thePageShowsWhatTheProgramPrintsAndDraws() throws Exception {
        String page = Files.readString(Path.of("docs/seen-from.md"));
        Matcher command = COMMAND.matcher(page);
        assertThat(command.find()).isTrue();
        Path svg = folder.resolve("seen-from.svg");
        String[] words = List.of(command.group(1).split(" ", -1)).stream()
                .map(word -> word.replace("'", "").replace("seen-from.svg", svg.toString()))
                .toArray(String[]::new);
        StringWriter output = new StringWriter();
        StringWriter errors = new StringWriter();
        Surroundings surroundings =
                new Surroundings(OutputWriter.to(output), new PrintWriter(errors), Ink.PLAIN, () -> Watch.NONE);
        assertThat(Main.run(surroundings, words)).as(errors.toString()).isZero();
        assertThat(withoutVersion(page)).contains("```\n" + withoutVersion(output.toString()) + "```\n");
        assertThat(withoutVersion(Files.readString(Path.of("docs/seen-from.svg"))))
                .isEqualTo(withoutVersion(Files.readString(svg)));
    }

    /** The version of the program changes without any change of what is seen; a hash of the layout that is stale is a page that is stale. */
    private static String withoutVersion(String text) {
        return text.replaceAll("Darkrim [0-9][^,]*,", "Darkrim,");
    }
}
