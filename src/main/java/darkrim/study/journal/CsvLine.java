package darkrim.study.journal;

import darkrim.verdict.Verdict;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Lines of comma-separated values (RFC 4180) and what stands in their fields. Numbers have all their digits, so that a number read back is the
 * same to the last bit; no number and no answer is an empty field. A text that a spreadsheet would take for a formula, and run, has an apostrophe
 * before it; so has one that begins with an apostrophe, so that what is read back is what was written.
 */
public final class CsvLine {
    private static final String YES = "yes";
    private static final String NO = "no";
    private static final String QUOTE = "'";
    /** What spreadsheets begin a formula with, half and full width. */
    private static final String FORMULA_BEGINS = "=+-@\t\r\uff1d\uff0b\uff0d\uff20" + QUOTE;

    private CsvLine() {}

    /** Fields as a line, with its end. */
    public static String of(List<String> fields) {
        StringWriter text = new StringWriter();
        try (CsvWriter writer =
                CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text)) {
            writer.writeRecord(fields.stream().map(CsvLine::asText).toList());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    /**
     * Fields of a line.
     *
     * @throws IllegalArgumentException if it is none
     */
    public static List<String> fields(String line) {
        List<CsvRecord> records = CsvReader.builder().skipEmptyLines(false).ofCsvRecord(line).stream()
                .toList();
        if (records.size() != 1) {
            throw new IllegalArgumentException("not one line");
        }
        return records.get(0).getFields().stream()
                .map(field -> field.startsWith(QUOTE) ? field.substring(1) : field)
                .toList();
    }

    /** A field as a spreadsheet shows it and does nothing else. */
    private static String asText(String field) {
        return !field.isEmpty() && FORMULA_BEGINS.indexOf(field.charAt(0)) >= 0 && !isNumber(field)
                ? QUOTE + field
                : field;
    }

    private static boolean isNumber(String field) {
        try {
            return !Double.isNaN(Double.parseDouble(field));
        } catch (NumberFormatException text) {
            return false;
        }
    }

    /**
     * Fields of a line of which the number is known.
     *
     * @throws IllegalArgumentException if it is none, or has another number of fields
     */
    public static List<String> fields(String line, int count) {
        List<String> all = fields(line);
        if (all.size() != count) {
            throw new IllegalArgumentException(all.size() + " fields, expected " + count);
        }
        return all;
    }

    /** A number; NaN is empty. */
    public static String number(double value) {
        return Double.isNaN(value) ? "" : Double.toString(value);
    }

    /** A number read back. */
    public static double number(String field) {
        return field.isEmpty() ? Double.NaN : Double.parseDouble(field);
    }

    /** Yes or no. */
    public static String answer(boolean yes) {
        return yes ? YES : NO;
    }

    /** Yes or no read back. */
    public static boolean answer(String field) {
        return field.equals(YES);
    }

    /** A verdict. */
    public static String word(Optional<Verdict> verdict) {
        return verdict.map(each -> each.name().toLowerCase(Locale.ROOT)).orElse("");
    }

    /** A verdict read back. */
    public static Optional<Verdict> verdict(String word) {
        return word.isEmpty() ? Optional.empty() : Optional.of(Verdict.valueOf(word.toUpperCase(Locale.ROOT)));
    }
}
