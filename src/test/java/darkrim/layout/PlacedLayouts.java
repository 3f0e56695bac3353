package darkrim.layout;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Layouts that are read without a finding, but whose parts lie wrongly; the comments at their end are the findings of the check. */
public final class PlacedLayouts {
    private static final Path FOLDER = Path.of("src/test/resources/placed");
    private static final String EXPECTED = "# expected:";

    private PlacedLayouts() {}

    /** The files, by name. */
    public static List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.sorted().toList();
        }
    }

    /** The findings that a file expects, without its name. */
    public static List<String> expected(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        return lines.subList(lines.indexOf(EXPECTED) + 1, lines.size()).stream()
                .map(line -> line.substring(1).strip())
                .toList();
    }

    /** The codes of all findings that are expected. */
    static Set<String> codes() throws IOException {
        Set<String> codes = new TreeSet<>();
        for (Path file : files()) {
            for (String finding : expected(file)) {
                Matcher code = Pattern.compile(" \\[([a-z-]+)]$").matcher(finding);
                if (code.find()) {
                    codes.add(code.group(1));
                }
            }
        }
        return codes;
    }
}
