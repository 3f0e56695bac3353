package darkrim.cli;

import darkrim.layout.form.Wording;
import java.io.PrintWriter;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The date of a review, in UTC: today, or that of {@code SOURCE_DATE_EPOCH} where it is set (reproducible-builds.org, its specification of that
 * variable).
 *
 * @param text the date (ISO 8601)
 */
record ReviewDate(String text) {
    private static final String VARIABLE = "SOURCE_DATE_EPOCH";
    private static final Pattern SECONDS = Pattern.compile("[0-9]{1,12}");

    /** The date; empty, said why, where the variable holds no moment. */
    static Optional<ReviewDate> of(Map<String, String> environment, PrintWriter errors) {
        String given = environment.get(VARIABLE);
        if (given == null) {
            return Optional.of(new ReviewDate(LocalDate.now(ZoneOffset.UTC).toString()));
        }
        try {
            if (SECONDS.matcher(given).matches()) {
                return Optional.of(
                        new ReviewDate(LocalDate.ofInstant(Instant.ofEpochSecond(Long.parseLong(given)), ZoneOffset.UTC)
                                .toString()));
            }
        } catch (DateTimeException beyond) {
            // Told below, with all else that is no moment.
        }
        errors.println("darkrim: " + VARIABLE + " is '" + Wording.shortened(given)
                + "', expected seconds since 1970 in digits, such as 1767225600; nothing was done.");
        return Optional.empty();
    }
}
