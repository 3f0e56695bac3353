package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Ink;
import darkrim.study.journal.CsvLine;
import darkrim.verdict.Watch;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** docs/result-fields.md lists the columns of every CSV, in order, as the commands write them. */
class CsvColumnsTest {
    private static final Path PAGE = Path.of("docs/result-fields.md");
    private static final String RIDGE = """
            title: Ridge
            finishes: {white: {diffuse: 0.5, source: "invented"}}
            dimensions: {tall: {value: %s, tolerance: 0.01}}
            beam: {pupil: {shape: disc, diameter: 45, distance: 320}}
            sources:
              moon: {kind: distant, off_axis: 40, azimuth: 180, diameter: 0.53, irradiance: 1e-3}
            parts:
              pixels: {kind: rectangle, width: 6, depth: 6}
              ridge: {kind: block, width: 0.1, depth: 5, height: tall, at: [3.3, 0, 0], finish: white}
            requirements:
              dark: {surfaces: "pixels/back", direct: none}
              clean: {surfaces: "pixels/front", once_reflected: {at_most: 1e-9}}
            """;

    @TempDir
    Path folder;

    /** Heading on the page, and the command with as little work as it takes. */
    private static Stream<String> tables() {
        return Stream.of(
                "check --csv: check ridge --samples 1e3 --csv",
                "compare --csv: compare ridge higher --samples 1e3 --csv",
                "advise --csv: advise ridge --samples 1e3 --csv",
                "sweep --csv: sweep ridge --vary tall=0.2 --samples 1e3 --csv",
                "tolerance --csv: tolerance ridge --builds 1 --build-margins --samples 1e3 --csv",
                "paths --csv: paths ridge --onto pixels/front --samples 1e3 --csv",
                "pixel-view --csv: pixel-view ridge --at pixels/front --samples 1e3 --csv",
                "star-scan --csv: star-scan ridge --onto pixels/front --most-positions 4 --samples 64 --csv",
                "rejection --csv: rejection ridge --onto pixels/front --angles 40 --samples 64 --csv",
                "maps -o FILE.csv: maps ridge --onto pixels/front --cells-along 2 --cell-samples 2 -o",
                "export -o FILE.csv: export ridge --samples 1e3 -o",
                "faces --csv: faces ridge --csv",
                "finishes --csv: finishes --layout ridge --csv",
                "section --csv: section ridge --plane y=0 -o sheet --csv",
                "place-vanes --csv: place-vanes --wall-diameter 80 --edge-diameter 60 --length 300 --detector-diameter 20"
                        + " --entrance-diameter 60 --off-axis 20 --csv",
                "seen-from --csv: seen-from ridge --at pixels/front --samples 1e3 --csv");
    }

    @ParameterizedTest
    @MethodSource("tables")
    void theColumnsOnThePageAreThoseOfTheFile(String table) throws Exception {
        String heading = table.substring(0, table.indexOf(": "));
        Path file = folder.resolve("table.csv");
        List<String> words = new ArrayList<>();
        for (String word : table.substring(table.indexOf(": ") + 2).split(" ", -1)) {
            words.add(
                    switch (word) {
                        case "ridge" -> layout("0.15");
                        case "higher" -> layout("0.2");
                        case "sheet" -> folder.resolve("sheet.svg").toString();
                        default -> word;
                    });
        }
        words.add(file.toString());
        Run run = Run.of(words.toArray(String[]::new));
        assertThat(run.code()).as(run.errors()).isIn(ExitCode.DONE, ExitCode.FAIL, ExitCode.UNDECIDED);
        String head = Files.readString(file).lines().findFirst().orElseThrow();
        List<String> columns =
                CsvLine.fields(head).stream().map(CsvColumnsTest::general).toList();
        assertThat(described(heading)).containsExactlyElementsOf(new LinkedHashSet<>(columns));
    }

    /** With words in capitals for the names in the layout: what stands once for each name stands once. */
    private static String general(String column) {
        return column.replaceAll("^tall ", "DIMENSION ")
                .replaceAll("^(dark|clean)( .* \\[|$)(mm|relative irradiance)?(]?)", "REQUIREMENT$2UNIT$4")
                .replaceAll("^REQUIREMENTUNIT$", "REQUIREMENT")
                .replaceAll("^(dark|clean) ", "REQUIREMENT ")
                .replaceAll(" pixels/front$", " SURFACE");
    }

    private String layout(String height) throws Exception {
        return Files.writeString(folder.resolve("ridge" + height + ".yaml"), RIDGE.formatted(height))
                .toString();
    }

    private static List<String> described(String heading) throws Exception {
        String page = Files.readString(PAGE);
        int begin = page.indexOf("\n## " + heading + "\n");
        assertThat(begin).as(heading).isPositive();
        int end = page.indexOf("\n## ", begin + 1);
        List<String> columns = new ArrayList<>();
        Matcher row = Pattern.compile("(?m)^\\| `(.+?)` \\| .+\\.? \\|$")
                .matcher(end < 0 ? page.substring(begin) : page.substring(begin, end));
        while (row.find()) {
            columns.add(row.group(1));
        }
        return columns;
    }

    /** Every option of every command that writes comma-separated values has its table. */
    @Test
    void noCommandIsLeftOut() {
        List<String> with = Commands.forArguments(new Surroundings(
                        OutputWriter.to(new StringWriter()),
                        new PrintWriter(new StringWriter()),
                        Ink.PLAIN,
                        () -> Watch.NONE))
                .getSubcommands()
                .entrySet()
                .stream()
                .filter(each -> each.getValue().getCommandSpec().options().stream()
                        .anyMatch(option -> option.longestName().equals("--csv")
                                || Arrays.stream(option.description()).anyMatch(text -> text.contains(".csv"))))
                .map(Map.Entry::getKey)
                .toList();
        assertThat(tables().map(each -> each.substring(0, each.indexOf(' '))).distinct())
                .containsExactlyInAnyOrderElementsOf(with);
    }
}
