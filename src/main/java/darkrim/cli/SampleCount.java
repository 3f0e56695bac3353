package darkrim.cli;

import darkrim.layout.form.Wording;
import java.math.BigDecimal;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a number of samples, at least 1 and at most what a {@code long} holds: {@code 200000000} or {@code 2e8}. */
final class SampleCount implements ITypeConverter<Long> {
    private static final BigDecimal MOST = BigDecimal.valueOf(Long.MAX_VALUE);

    @Override
    public Long convert(String text) {
        try {
            BigDecimal count = new BigDecimal(text);
            if (count.compareTo(MOST) > 0) {
                throw new TypeConversionException(
                        "expected no more than 9e18 samples, got '" + Wording.shortened(text) + "'");
            }
            if (count.signum() > 0) {
                return count.longValueExact();
            }
        } catch (NumberFormatException notANumber) {
            throw refused(text);
        } catch (ArithmeticException notWhole) {
            throw refused(text);
        }
        throw refused(text);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException(
                "expected a whole number, at least 1, such as 2e8, got '" + Wording.shortened(text) + "'");
    }
}
