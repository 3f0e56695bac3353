package darkrim.reference;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** docs/validation.md: a section for each test class that compares with known numbers. */
final class ValidationPage {
    static final Path PAGE = Path.of("docs/validation.md");
    private static final String HEAD = "| case | computed by | expected | got | allowed | z |";

    private ValidationPage() {}

    /** A section, in the order of the page. */
    enum Section {
        /** Factors. */
        VIEW_FACTORS("ReferenceViewFactorTest", "Configuration factors"),
        /** Open pupil. */
        PUPIL("ReferencePupilTest", "Irradiance under an open pupil"),
        /** The same, by the beam itself. */
        BEAM("BeamTest", "The beam's own irradiance, to which others are relative"),
        /** Edges. */
        PENUMBRA("ReferencePenumbraTest", "Behind edges and through openings, sampled"),
        /** Exact. */
        VISIBLE_PUPIL("VisiblePupilTest", "The visible pupil, exact"),
        /** Light lines. */
        MARGINS("MarginsTest", "Borders of light and shadow, and margins"),
        /** Window. */
        WINDOW("WindowTest", "A plane plate before the parts"),
        /** Reflected. */
        REFLECTED("ReferenceReflectedTest", "Light after one reflection"),
        /** Laws. */
        REFLECTION("ReferenceReflectionTest", "Laws of reflection"),
        /** Emission. */
        EMISSION("PlanckTest", "Black bodies"),
        /** Contraction. */
        CONTRACTION("ReferenceContractionTest", "Contraction"),
        /** Vanes. */
        VANES("ReferenceVanesTest", "Vanes"),
        /** Pixels. */
        PIXELS("ReferencePixelsTest", "Pixels");

        private final String testClass;
        private final String title;

        Section(String testClass, String title) {
            this.testClass = testClass;
            this.title = title;
        }

        static Section of(Class<?> testClass) {
            return Arrays.stream(values())
                    .filter(each -> each.testClass.equals(testClass.getSimpleName()))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException(testClass + " has no section"));
        }

        private String heading() {
            return "## " + title + "\n";
        }
    }

    /** A line for each number, and one above those of the same kind that says what they are and, by number, where they come from. */
    private static List<String> table(List<ValidationRow> rows, List<String> sources) {
        List<String> lines = new ArrayList<>();
        String above = "";
        for (ValidationRow row : rows) {
            String what = "| | **" + row.title().replace("|", "/") + "** (" + (sources.indexOf(row.source()) + 1)
                    + ") | | | | |";
            if (!what.equals(above)) {
                lines.add(what);
                above = what;
            }
            lines.add(String.join(
                    " | ", "| " + row.id(), row.way(), row.known(), row.got(), row.allowed(), row.z() + " |"));
        }
        return lines;
    }

    private static List<String> sources(List<ValidationRow> rows) {
        return rows.stream().map(ValidationRow::source).distinct().toList();
    }

    private static String section(Section section, List<ValidationRow> rows) {
        List<String> sources = sources(rows);
        StringBuilder text = new StringBuilder(section.heading());
        text.append("`").append(section.testClass).append("`\n\n");
        text.append(HEAD).append("\n|---|---|---|---|---|---|\n");
        table(rows, sources).forEach(row -> text.append(row).append('\n'));
        text.append("\nSources:\n\n");
        for (int i = 0; i < sources.size(); i++) {
            text.append(i + 1).append(". ").append(sources.get(i)).append('\n');
        }
        return text.append('\n').toString();
    }

    /** Whether every row stands in its section with all its digits, and with its source. */
    static List<String> missing(Section section, List<ValidationRow> rows) throws IOException {
        String page = sections().getOrDefault(section, "");
        List<String> sources = page.lines()
                .filter(line -> line.matches("\\d+\\. .*"))
                .map(line -> line.substring(line.indexOf(' ') + 1))
                .toList();
        List<String> lines = page.lines().toList();
        return table(rows, sources).stream().filter(row -> !lines.contains(row)).toList();
    }

    /** Puts a section in its place; tests of other classes may be at it at the same time, in processes of their own. */
    static void write(Section section, List<ValidationRow> rows) throws IOException {
        Path lockFile = Files.createDirectories(Path.of("target")).resolve("validation.lock");
        try (FileChannel channel = FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            // Given back when the channel is closed.
            channel.lock();
            Map<Section, String> sections = sections();
            sections.put(section, section(section, rows));
            Files.writeString(PAGE, page(sections));
        }
    }

    private static Map<Section, String> sections() throws IOException {
        Map<Section, String> sections = new EnumMap<>(Section.class);
        String page = Files.readString(PAGE);
        for (Section section : Section.values()) {
            int begin = page.indexOf(section.heading());
            if (begin >= 0) {
                int end = page.indexOf("\n## ", begin);
                sections.put(section, end < 0 ? page.substring(begin) : page.substring(begin, end + 1));
            }
        }
        return sections;
    }

    /** The rows of a section. */
    static List<String> rows(Section section) {
        try {
            return sections()
                    .getOrDefault(section, "")
                    .lines()
                    .filter(line -> line.matches("\\| \\w.*") && !line.equals(HEAD))
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** The page with the sections that there are now. */
    static String current() throws IOException {
        return page(sections());
    }

    private static String page(Map<Section, String> sections) {
        List<String> rows = sections.values().stream()
                .flatMap(String::lines)
                .filter(line -> line.matches("\\| \\w.*") && !line.equals(HEAD))
                .toList();
        List<String> sampled = new ArrayList<>(rows);
        sampled.removeIf(row -> row.endsWith(" |  |"));
        return "# Computed against known numbers\n\n"
                + "Each row is a number that is known from outside (published, or derived and checked by other means) and what Darkrim computes. Written by the tests named"
                + " below each heading,\nwhich fail where a printed digit is no longer true; to make it again:\n\n"
                + "```\nmvn -q test -Dtest='"
                + Arrays.stream(Section.values()).map(each -> each.testClass).collect(Collectors.joining(","))
                + "' -Dwrite.docs=true\n```\n\n"
                + "A line in bold says what the numbers below it are and, in brackets, which source below the table they come from.\nGeometry, formula and an independent check of each case from A to J stand in src/test/resources/reference/cases.json. *Allowed* is the largest difference;"
                + " `4 x` a standard error\nfor what is sampled, whose standard error must be at most 0.2 % of the number, and *z* is then the difference in standard errors."
                + " Numbers too small for that show\nthe interval that must hold the known one.\n\n"
                + String.format(
                        Locale.ROOT,
                        "%d rows, %d of them sampled: a right program fails one of them in %.1f %% of all choices of the seeds, which are fixed.\n\n",
                        rows.size(),
                        sampled.size(),
                        100 * sampled.size() * Validation.FALSE_ALARM)
                + "What has no number is checked otherwise: shapes of randomly made parts against the winding number, the tracer against 60-digit arithmetic, the exact"
                + " visible pupil against samples,\nfiles by programs that are not ours ([exports.md](exports.md)). "
                + "[DEVELOPERS.md](../DEVELOPERS.md), *How figures are measured*, tells where.\n\n"
                + sections.values().stream().collect(Collectors.joining());
    }
}
