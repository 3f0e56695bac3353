package darkrim.cli;

import darkrim.layout.form.Wording;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a share of a whole: {@code 0.99} or {@code 99%}. */
final class Share implements ITypeConverter<Double> {
    private static final double PERCENT = 100;

    @Override
    public Double convert(String text) {
        boolean percent = text.endsWith("%");
        try {
            double number = Decimal.read(percent ? text.substring(0, text.length() - 1) : text);
            double share = percent ? number / PERCENT : number;
            if (share > 0 && share < 1) {
                return share;
            }
        } catch (NumberFormatException notANumber) {
            throw refused(text);
        }
        throw refused(text);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException(
                "expected a share above 0 and below 1, such as 0.99 or 99%, got '" + Wording.shortened(text) + "'");
    }
}
