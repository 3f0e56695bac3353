package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every command that README.md and the pages in docs show in a code block runs and ends as the page says. Two at a time: half of a short run is
 * spent on one core. The checks and the chart of README.md, help and what wants a display have a process each, as a reader's have; the others take
 * turns in two processes that stay warm, in a folder that is as new for each of them. Pictures that a page shows are those that its commands draw.
 */
@Execution(ExecutionMode.CONCURRENT)
class ReadmeCommandsIT {
    private static final Pattern COMMAND =
            Pattern.compile("java -jar target/darkrim\\.jar ([^#&|`>]*)(?:>[^#&|`]*)?(?:# exit code (\\d))?");

    private static final int AT_A_TIME = 2;

    @TempDir
    private static Path warmFolders;

    private static final BlockingQueue<Warm> IDLE = new ArrayBlockingQueue<>(AT_A_TIME);

    @TempDir
    private Path folder;

    /** A process that stays, and where it works. */
    private record Warm(Path folder, WarmJar jar) {}

    @BeforeAll
    static void startTheWarmOnes() throws IOException {
        for (int i = 0; i < AT_A_TIME; i++) {
            Path place = Files.createDirectory(warmFolders.resolve("warm" + i));
            IDLE.add(new Warm(place, new WarmJar(place)));
        }
    }

    @AfterAll
    static void endTheWarmOnes() {
        IDLE.forEach(warm -> warm.jar().close());
    }

    static Stream<Arguments> commands() throws IOException {
        List<Path> pages = new ArrayList<>(List.of(Path.of("README.md")));
        try (Stream<Path> docs = Files.list(Path.of("docs"))) {
            docs.filter(page -> page.toString().endsWith(".md")).sorted().forEach(pages::add);
        }
        // A command that stands on several pages runs once.
        Map<List<Object>, Arguments> apart = new LinkedHashMap<>();
        pages.stream().flatMap(ReadmeCommandsIT::commandsOf).forEach(found -> {
            Object[] words = found.get();
            apart.putIfAbsent(List.of(words[1], words[2]), found);
        });
        return apart.values().stream();
    }

    private static Stream<Arguments> commandsOf(Path page) {
        List<Arguments> found = new ArrayList<>();
        boolean inBlock = false;
        for (String line : lines(page)) {
            if (line.strip().startsWith("```")) {
                inBlock = !inBlock;
            } else if (inBlock) {
                Matcher matcher = COMMAND.matcher(line);
                while (matcher.find()) {
                    int code = matcher.group(2) == null ? 0 : Integer.parseInt(matcher.group(2));
                    found.add(Arguments.of(page, matcher.group(1).strip(), code));
                }
            }
        }
        return found.stream();
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("commands")
    void aCommandEndsAsThePageSays(Path page, String arguments, int code) throws Exception {
        // A window would wait for someone to close it: without a display it says what is missing. WindowIT opens one.
        boolean window = arguments.startsWith("view ") && !arguments.contains("--help");
        Run run;
        boolean alone = page.endsWith("README.md") && arguments.matches("check .*|.* --chart .*");
        if (window || alone || arguments.contains("--help")) {
            copyGeometries(folder);
            run = Jar.run(folder, window ? Map.of("DISPLAY", "") : Map.of(), ShellWords.of(arguments));
            PagePictures.hold(page, folder);
        } else {
            run = warm(page, ShellWords.of(arguments));
        }
        assertThat(run.code()).as(run.errors()).isEqualTo(window ? 2 : code);
        assertThat(run.errors()).doesNotContain("Exception").doesNotContain("\tat ");
    }

    private static Run warm(Path page, String... words) throws Exception {
        Warm warm = IDLE.take();
        try {
            try (Stream<Path> left = Files.walk(warm.folder())) {
                for (Path each : left.sorted(Comparator.reverseOrder()).toList()) {
                    if (!each.equals(warm.folder())) {
                        Files.delete(each);
                    }
                }
            }
            copyGeometries(warm.folder());
            Run run = warm.jar().run(words);
            PagePictures.hold(page, warm.folder());
            return run;
        } finally {
            IDLE.add(warm);
        }
    }

    private static void copyGeometries(Path folder) throws IOException {
        Path copies = Files.createDirectory(folder.resolve("geometries"));
        try (Stream<Path> layouts = Files.list(Path.of("geometries"))) {
            for (Path layout : layouts.toList()) {
                Files.copy(layout, copies.resolve(layout.getFileName()));
            }
        }
    }

    @Test
    void theReadmeShowsTheTwoCommandsThatMatter() {
        assertThat(lines(Path.of("README.md")))
                .contains(
                        "mvn -q -DskipTests package && java -jar target/darkrim.jar check geometries/nightglow-b.yaml")
                .contains("mvn -B verify");
    }

    private static List<String> lines(Path page) {
        try {
            return Files.readAllLines(page);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
