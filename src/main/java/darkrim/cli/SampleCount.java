package darkrim.cli;

import darkrim.layout.form.Wording;
import java.math.BigDecimal;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a number of samples, at least 1 and at most what a {@code long} holds: {@code 200000000} or {@code 2e8}. */
final class SampleCount implements ITypeConverter<Long> {
    @Override
    public Long convert(String text) {
        try {
            long count = new BigDecimal(text).longValueExact();
            if (count > 0) {
                return count;
            }
        } catch (NumberFormatException notANumber) {
            throw refused(text);
        } catch (ArithmeticException notWhole) {
            throw refused(text);
        }
        throw refused(text);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException("expected a whole number from 1 to " + Long.MAX_VALUE
                + ", such as 2e8, got '" + Wording.shortened(text) + "'");
    }
}
