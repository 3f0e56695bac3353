package darkrim.cli;

import darkrim.layout.form.Wording;
import java.time.DateTimeException;
import java.time.LocalDate;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a date (ISO 8601). */
final class DateOption implements ITypeConverter<String> {
    @Override
    public String convert(String text) {
        try {
            return LocalDate.parse(text).toString();
        } catch (DateTimeException noDate) {
            throw new TypeConversionException(
                    "expected a date as YYYY-MM-DD, such as 2026-03-31, got '" + Wording.shortened(text) + "'");
        }
    }
}
