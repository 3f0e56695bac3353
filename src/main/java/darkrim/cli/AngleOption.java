package darkrim.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads half the angle that a point sees, in degrees. */
final class AngleOption implements ITypeConverter<Double> {
    /** All that a flat surface sees. */
    static final double MOST = 90;

    private static final double LEAST = 0.1;

    @Override
    public Double convert(String text) {
        try {
            double angle = Double.parseDouble(text.strip());
            if (angle >= LEAST && angle <= MOST) {
                return angle;
            }
        } catch (NumberFormatException noNumber) {
            throw refused(text);
        }
        throw refused(text);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException(
                "expected an angle from 0.1 to 90 degrees, got '" + darkrim.layout.form.Wording.shortened(text) + "'");
    }
}
