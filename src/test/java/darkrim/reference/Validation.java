package darkrim.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Compares what was computed with what is known, and keeps the table of all comparisons: target/validation.csv, and the same for readers,
 * target/validation.md.
 *
 * <p>A sampled number must lie within 4 standard errors of the known one, and its standard error must be at most 0.2 % of it. Under the
 * normal law a right program is off by more in 6.3e-5 of all seeds. The whole suite compares 201 sampled numbers, so a right program
 * fails somewhere in 1.3 % of all choices of the seeds. They are fixed: the rate says how likely a right program was to fail when they were
 * chosen, and once it passes it passes for ever.
 */
public final class Validation implements AfterAllCallback {
    /** How many standard errors a sampled number may be off. */
    public static final double STANDARD_ERRORS = 4;

    /** Largest standard error over the value. */
    public static final double LARGEST_ERROR = 0.002;

    /** How often a right number is more than 4 standard errors off. */
    public static final double FALSE_ALARM = 6.334e-5;

    private static final SortedMap<String, Row> ROWS = new TreeMap<>();

    private record Row(
            ReferenceScalar scalar, String way, double got, double standardError, String z, boolean sampled) {}

    /**
     * Requires that a sampled number agrees.
     *
     * @param scalar what is known
     * @param way how the number was found
     * @param got the number
     * @param standardError its standard error
     */
    public static void requireSampled(ReferenceScalar scalar, String way, double got, double standardError) {
        double off = got - scalar.value();
        boolean certain = standardError == 0 && off == 0;
        double z = certain ? 0 : off / standardError;
        keep(new Row(scalar, way, got, standardError, String.format(Locale.ROOT, "%.2f", z), !certain));
        String all = all(scalar, way, got) + ", standard error " + standardError;
        assertThat(standardError).as(all).isLessThanOrEqualTo(LARGEST_ERROR * Math.abs(scalar.value()));
        assertThat(Math.abs(off)).as(all).isLessThanOrEqualTo(STANDARD_ERRORS * standardError);
    }

    /**
     * Requires that the known number lies in an interval around the one that was found, for numbers too small to be sampled to 0.2 %.
     *
     * @param scalar what is known
     * @param way how the number was found, and the interval
     * @param got the number
     * @param standardError its standard error
     * @param low lower end of an interval that is wrong in {@link #FALSE_ALARM} of all seeds at most
     * @param high upper end
     */
    public static void requireInside(
            ReferenceScalar scalar, String way, double got, double standardError, double low, double high) {
        String interval = String.format(Locale.ROOT, "in %.8g to %.8g", low, high);
        keep(new Row(scalar, way, got, standardError, interval, true));
        assertThat(scalar.value())
                .as(all(scalar, way, got) + ", interval " + low + " to " + high)
                .isBetween(low, high);
    }

    /**
     * Requires that a computed number agrees.
     *
     * @param scalar what is known
     * @param way how the number was found
     * @param got the number
     * @param within by how much it may differ
     */
    public static void requireExact(ReferenceScalar scalar, String way, double got, double within) {
        keep(new Row(scalar, way, got, 0, "", false));
        assertThat(Math.abs(got - scalar.value())).as(all(scalar, way, got)).isLessThanOrEqualTo(within);
    }

    private static String all(ReferenceScalar scalar, String way, double got) {
        return scalar + " by " + way + ": expected " + scalar.value() + " ("
                + scalar.from().source() + "), got " + got;
    }

    private static synchronized void keep(Row row) {
        ROWS.put(row.scalar.id() + " " + row.way, row);
    }

    @Override
    public void afterAll(ExtensionContext context) {
        List<Row> rows = rows();
        List<String> csv = new ArrayList<>();
        csv.add("case,title,way,source,expected,got,standard error,z");
        rows.forEach(row -> csv.add(comma(row)));
        try {
            Path target = Files.createDirectories(Path.of("target"));
            Files.write(target.resolve("validation.csv"), csv, StandardCharsets.UTF_8);
            Files.write(target.resolve("validation.md"), page(rows), StandardCharsets.UTF_8);
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    private static synchronized List<Row> rows() {
        return List.copyOf(ROWS.values());
    }

    private static List<String> page(List<Row> rows) {
        long sampled = rows.stream().filter(Row::sampled).count();
        List<String> page = new ArrayList<>();
        page.add("# Computed against known numbers");
        page.add("");
        page.add("Written by the tests on " + LocalDate.now(ZoneOffset.UTC) + "; to make it again:");
        page.add("");
        page.add("```");
        page.add("mvn -q -B test -Dtest='Reference*Test' && cp target/validation.md docs/validation.md");
        page.add("```");
        page.add("");
        page.add(
                "Each row is one known number (published, or derived and checked by other means) and what Darkrim found.");
        page.add(
                "The geometry, formula and source of each stand in src/test/resources/reference/cases.json. A sampled number must lie within 4 standard errors, and its");
        page.add(
                "standard error must be at most 0.2 % of it; z is the difference in standard errors. Numbers too small");
        page.add(
                "for that show instead the interval that must hold the known one. An error of 0 means that the number");
        page.add("is counted or computed without samples, or that every sample gave the same.");
        page.add("");
        page.add(String.format(
                Locale.ROOT,
                "%d rows, %d of them sampled: a right program fails one of them in %.1f %% of all choices of the seeds,"
                        + " which are fixed.",
                rows.size(),
                sampled,
                100 * sampled * FALSE_ALARM));
        page.add("");
        page.add("| case | title | way | expected | got | standard error | z | source |");
        page.add("|---|---|---|---|---|---|---|---|");
        rows.forEach(row -> page.add(bar(row)));
        return page;
    }

    private static String comma(Row row) {
        ReferenceScalar scalar = row.scalar;
        return List.of(
                        scalar.id(),
                        quoted(scalar.from().title()),
                        quoted(row.way),
                        quoted(scalar.from().source()),
                        Double.toString(scalar.value()),
                        Double.toString(row.got),
                        Double.toString(row.standardError),
                        quoted(row.z))
                .stream()
                .collect(Collectors.joining(","));
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }

    private static String bar(Row row) {
        ReferenceScalar scalar = row.scalar;
        return String.format(
                Locale.ROOT,
                "| %s | %s | %s | %s | %s | %.1e | %s | %s |",
                scalar.id(),
                scalar.from().title().replace("|", "/"),
                row.way,
                short8(scalar.value()),
                short8(row.got),
                row.standardError,
                row.z,
                scalar.from().source().replace("|", "/"));
    }

    private static String short8(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.8g", value);
    }
}
