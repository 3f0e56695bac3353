package darkrim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A page that says by which test something is confirmed is no help once that test has another name. */
class PageNamesTest {
    private static final Pattern NAMED = Pattern.compile("`(?:\\w+\\.)*([A-Z]\\w*[a-z]\\w*(?:Test|IT|Benchmark))\\b");

    @Test
    void testsAndBenchmarksThatPagesNameAreThere() throws IOException {
        Set<String> there = files(Path.of("src"), ".java")
                .map(file -> file.getFileName().toString().replace(".java", ""))
                .collect(Collectors.toSet());
        TreeMap<String, Path> named = new TreeMap<>();
        for (Path page : Stream.concat(
                        Stream.of(Path.of("README.md"), Path.of("DEVELOPERS.md")), files(Path.of("docs"), ".md"))
                .toList()) {
            NAMED.matcher(Files.readString(page)).results().forEach(found -> named.put(found.group(1), page));
        }
        assertThat(named).isNotEmpty();
        named.keySet().removeAll(there);
        assertThat(named).isEmpty();
    }

    private static Stream<Path> files(Path folder, String ending) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).toList().stream();
        }
    }
}
