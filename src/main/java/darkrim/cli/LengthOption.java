package darkrim.cli;

import darkrim.layout.form.Wording;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a length in mm, 0 or more. */
final class LengthOption implements ITypeConverter<Double> {
    private static final double MOST = 1e6;

    @Override
    public Double convert(String text) {
        try {
            double length = Double.parseDouble(text.strip());
            if (length >= 0 && length <= MOST) {
                return length;
            }
        } catch (NumberFormatException noNumber) {
            throw refused(text);
        }
        throw refused(text);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException(
                "expected a length from 0 to 1000000 mm, got '" + Wording.shortened(text) + "'");
    }
}
