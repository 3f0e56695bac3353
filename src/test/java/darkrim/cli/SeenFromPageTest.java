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
        assertThat(withoutMarks(page)).contains("```\n" + withoutMarks(output.toString()) + "```\n");
        assertThat(withoutMarks(Files.readString(Path.of("docs/seen-from.svg"))))
                .isEqualTo(withoutMarks(Files.readString(svg)));
    }

    /** Version of the program and hash of the layout change without any change of what is seen. */
    private static String withoutMarks(String text) {
        return text.replaceAll("SHA-256 [0-9a-f]+", "SHA-256").replaceAll("Darkrim [0-9][^,]*,", "Darkrim,");
    }
}
