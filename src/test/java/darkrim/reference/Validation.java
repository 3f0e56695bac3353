package darkrim.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Compares what was computed with what is known, and holds docs/validation.md to it: a test class that is extended by this has the section of the page
 * that {@link ValidationPage} gives it, and fails where a row of it differs in a printed digit.
 *
 * <p>A sampled number must lie within 4 standard errors of the known one, and its standard error must be at most 0.2 % of it. Under the
 * normal law a right program is off by more in 6.3e-5 of all seeds; the page says how many numbers are sampled. The seeds are fixed: the rate says
 * how likely a right program was to fail when they were chosen, and once it passes it passes for ever.
 */
public final class Validation implements BeforeAllCallback, AfterAllCallback {
    /** How many standard errors a sampled number may be off. */
    public static final double STANDARD_ERRORS = 4;

    /** Largest standard error over the value. */
    public static final double LARGEST_ERROR = 0.002;

    /** How often a right number is more than 4 standard errors off. */
    public static final double FALSE_ALARM = 6.334e-5;

    private static final SortedMap<String, ValidationRow> ROWS = new TreeMap<>();

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
        if (standardError == 0 && off == 0) {
            keep(ValidationRow.sampled(scalar, way, got, "0", ""));
        } else {
            keep(ValidationRow.sampled(
                    scalar,
                    way,
                    got,
                    String.format(Locale.ROOT, "4 x %.1e", standardError),
                    String.format(Locale.ROOT, "%.2f", off / standardError)));
        }
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
        String z = String.format(Locale.ROOT, "%.2f", (got - scalar.value()) / standardError);
        keep(ValidationRow.sampled(scalar, way, got, String.format(Locale.ROOT, "%.4g to %.4g", low, high), z));
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
        requireExact(scalar.id(), scalar.from().title(), scalar.from().source(), scalar.value(), way, got, within);
    }

    /**
     * The same for a number that stands in no file of cases.
     *
     * @param id short name, such as {@code K01[2]}; it sorts the rows
     * @param title what the number is
     * @param source where it comes from
     * @param expected what is known
     * @param way how the number was found
     * @param got the number
     * @param within by how much it may differ
     */
    public static void requireExact(
            String id, String title, String source, double expected, String way, double got, double within) {
        keep(ValidationRow.exact(id, title, source, expected, way, got, within));
        assertThat(Math.abs(got - expected))
                .as(id + " " + title + " by " + way + ": expected " + expected + " (" + source + "), got " + got)
                .isLessThanOrEqualTo(within);
    }

    private static String all(ReferenceScalar scalar, String way, double got) {
        return scalar + " by " + way + ": expected " + scalar.value() + " ("
                + scalar.from().source() + "), got " + got;
    }

    private static synchronized void keep(ValidationRow row) {
        ROWS.put(row.id() + " " + row.way(), row);
    }

    private static synchronized List<ValidationRow> rows() {
        return List.copyOf(ROWS.values());
    }

    @Override
    public synchronized void beforeAll(ExtensionContext context) {
        ROWS.clear();
    }

    /** Only rows of tests that were run are compared, so that one test of a class can be run by itself. */
    @Override
    public void afterAll(ExtensionContext context) throws Exception {
        ValidationPage.Section section = ValidationPage.Section.of(context.getRequiredTestClass());
        if (Boolean.getBoolean("write.docs")) {
            ValidationPage.write(section, rows());
        }
        assertThat(ValidationPage.missing(section, rows()))
                .as("rows that docs/validation.md lacks")
                .isEmpty();
    }
}
