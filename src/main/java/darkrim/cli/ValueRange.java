package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.present.picture.LightChoice.Range;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a range of values: {@code LEAST..MOST}. */
final class ValueRange implements ITypeConverter<Range> {
    @Override
    public Range convert(String text) {
        int dots = text.indexOf("..");
        if (dots > 0) {
            double least = number(text.substring(0, dots));
            double most = number(text.substring(dots + 2));
            if (least >= 0 && least < most && most < Double.MAX_VALUE) {
                return new Range(least, most);
            }
        }
        throw new TypeConversionException("expected two numbers that are not negative, the lesser first, such as"
                + " 1e-6..1, got '" + Wording.shortened(text) + "'");
    }

    private static double number(String digits) {
        try {
            return Decimal.read(digits);
        } catch (NumberFormatException none) {
            return Double.NaN;
        }
    }
}
