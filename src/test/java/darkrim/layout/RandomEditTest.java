package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import darkrim.diagnostic.Finding;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/**
 * Whatever a file holds, the answer is findings, soon, and every one of them has a place in the file. Seeded, so
 * always the same.
 */
class RandomEditTest {
    private static final String WORDS =
            "0 1 -1 1e9 .nan {} [] : - ? * & ! | > ' \" # % @ ` ( ) + / ^ opening tan( null true a: [[ }} \t";

    private static byte[] edited(List<String> lines, Random random) {
        List<String> text = new ArrayList<>(lines);
        int edits = 1 + random.nextInt(4);
        for (int i = 0; i < edits; i++) {
            editLine(text, random);
        }
        byte[] bytes = String.join("\n", text).getBytes(StandardCharsets.UTF_8);
        if (random.nextInt(4) == 0 && bytes.length > 0) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }

    private static void editLine(List<String> text, Random random) {
        int at = random.nextInt(text.size());
        String line = text.get(at);
        int column = random.nextInt(line.length() + 1);
        String[] words = WORDS.split(" ", -1);
        String word = words[random.nextInt(words.length)];
        switch (random.nextInt(6)) {
            case 0 -> text.remove(at);
            case 1 -> text.add(random.nextInt(text.size()), line);
            case 2 -> Collections.swap(text, at, random.nextInt(text.size()));
            case 3 -> text.set(at, line.substring(0, column) + word + line.substring(column));
            case 4 -> text.set(at, line.substring(0, column));
            default ->
                text.set(at, line.replaceFirst("[0-9.]+", word.replace("\\", "").replace("$", "")));
        }
        if (text.isEmpty()) {
            text.add("");
        }
    }

    @Test
    void twoThousandRandomEditsGiveFindingsAndNoException() throws IOException {
        String file = "src/test/resources/layouts/every-key.yaml";
        List<String> lines = Files.readAllLines(Path.of(file));
        // Read once: an edit may ask for another file, never change one.
        SideFiles beside = SideFiles.beside(file);
        Random random = new Random(1);
        int broken = 0;
        for (int i = 0; i < 2000; i++) {
            byte[] content = edited(lines, random);
            List<LayoutReading> answer = new ArrayList<>();
            // Generous: a reading takes about a millisecond.
            Assertions.assertTimeout(
                    Duration.ofSeconds(10),
                    () -> assertThatCode(() -> answer.add(LayoutReader.read(file, content, Map.of(), beside)))
                            .as(new String(content, StandardCharsets.UTF_8))
                            .doesNotThrowAnyException());
            int last = lines.size() + 10;
            assertThat(answer.get(0).findings())
                    .map(Finding::place)
                    .allMatch(place -> place.line() >= 1 && place.line() <= last && place.column() >= 1);
            broken += answer.get(0).hasErrors() ? 1 : 0;
        }
        // Most edits break something; a few change a comment or a number.
        assertThat(broken).isBetween(1000, 1999);
    }
}
