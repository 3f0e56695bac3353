package darkrim.cli;

import darkrim.layout.form.Wording;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a point or a direction of space: three numbers with commas between. */
final class TripleOption implements ITypeConverter<Vector3D> {
    private static final double MOST = 1e9;

    @Override
    public Vector3D convert(String text) {
        String[] words = text.split(",", -1);
        double[] numbers = new double[3];
        try {
            for (int i = 0; i < 3 && words.length == 3; i++) {
                numbers[i] = Decimal.read(words[i]);
                if (!(Math.abs(numbers[i]) <= MOST)) {
                    throw refused(text);
                }
            }
        } catch (NumberFormatException noNumber) {
            throw refused(text);
        }
        if (words.length != 3) {
            throw refused(text);
        }
        return Vector3D.of(numbers);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException("expected three numbers with commas between them, such as 10,-5,0, got '"
                + Wording.shortened(text) + "'");
    }
}
