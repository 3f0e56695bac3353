package darkrim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What docs/decisions/README.md says of the pages beside it is so. */
class DecisionsPageTest {
    private static final Path FOLDER = Path.of("docs/decisions");
    private static final Pattern ROW =
            Pattern.compile("^\\| \\[(\\d{4})]\\(([^)]+)\\) \\| (.*) \\|$", Pattern.MULTILINE);
    private static final Pattern LEFT_OVER = Pattern.compile("No page is missing at ([^:]*):");
    private static final Pattern NUMBERS = Pattern.compile("(\\d{4})(?: to (\\d{4}))?");
    /** A section of fewer letters says nothing. */
    private static final int LEAST_LETTERS = 80;

    @Test
    void theListHasEveryPageWithItsTitle() throws IOException {
        List<String> listed = ROW.matcher(index())
                .results()
                .map(row -> row.group(2) + " # " + row.group(1) + " " + row.group(3))
                .toList();
        List<String> there = new ArrayList<>();
        for (Path page : pages()) {
            assertThat(page.getFileName().toString()).startsWith(number(page) + "-");
            there.add(page.getFileName() + " " + Files.readAllLines(page).get(0));
        }
        assertThat(listed).isEqualTo(there);
    }

    @Test
    void everyPageSaysWhatWasConsideredAndHowWeWouldNoticeThatItWasWrong() throws IOException {
        for (Path page : pages()) {
            TreeMap<String, Integer> letters = new TreeMap<>();
            for (String section : Files.readString(page).split("(?m)^## ", -1)) {
                int end = section.indexOf('\n');
                letters.put(
                        section.substring(0, end),
                        section.substring(end).strip().length());
            }
            assertThat(letters)
                    .as("%s", page)
                    .containsKeys("Context", "Outcome", "How we would notice that it was wrong", "Confirmed by");
            assertThat(letters.keySet()).as("%s", page).anyMatch(title -> title.startsWith("Considered"));
            assertThat(letters.get("How we would notice that it was wrong"))
                    .as("%s", page)
                    .isGreaterThan(LEAST_LETTERS);
        }
    }

    @Test
    void numbersWithoutAPageAreThoseThatAreToldAsLeftOver() throws IOException {
        List<Integer> taken =
                pages().stream().map(page -> Integer.valueOf(number(page))).toList();
        List<Integer> free = IntStream.rangeClosed(1, taken.get(taken.size() - 1))
                .filter(number -> !taken.contains(number))
                .boxed()
                .toList();
        String told = LEFT_OVER
                .matcher(index())
                .results()
                .map(found -> found.group(1))
                .findFirst()
                .orElse("");
        assertThat(NUMBERS.matcher(told)
                        .results()
                        .flatMapToInt(DecisionsPageTest::range)
                        .boxed())
                .containsExactlyElementsOf(free);
    }

    private static IntStream range(MatchResult found) {
        int first = Integer.parseInt(found.group(1));
        return IntStream.rangeClosed(first, found.group(2) == null ? first : Integer.parseInt(found.group(2)));
    }

    private static String index() throws IOException {
        return Files.readString(FOLDER.resolve("README.md"));
    }

    private static String number(Path page) {
        return page.getFileName().toString().substring(0, 4);
    }

    private static List<Path> pages() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(page -> page.getFileName().toString().matches("\\d.*\\.md"))
                    .sorted()
                    .toList();
        }
    }
}
