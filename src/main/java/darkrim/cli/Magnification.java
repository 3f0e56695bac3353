package darkrim.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads how many times as large something is shown. */
final class Magnification implements ITypeConverter<Double> {
    private static final double LEAST = 0.1;
    private static final double MOST = 1000;

    @Override
    public Double convert(String text) {
        try {
            double factor = Double.parseDouble(text.strip());
            if (factor >= LEAST && factor <= MOST) {
                return factor;
            }
        } catch (NumberFormatException noNumber) {
            throw refused(text);
        }
        throw refused(text);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException(
                "expected a factor from 0.1 to 1000, got '" + darkrim.layout.form.Wording.shortened(text) + "'");
    }
}
