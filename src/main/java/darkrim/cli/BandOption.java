package darkrim.cli;

import darkrim.layout.form.Wording;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A band of wavelengths as it is written on the command line: {@code 1,2.5}.
 *
 * @param from shortest wavelength, um
 * @param to longest wavelength, um
 */
record BandOption(double from, double to) {
    /** Reads it. */
    static final class Reader implements ITypeConverter<BandOption> {
        @Override
        public BandOption convert(String text) {
            String[] ends = text.split(",", -1);
            try {
                if (ends.length == 2) {
                    double from = Decimal.read(ends[0]);
                    double to = Decimal.read(ends[1]);
                    if (from > 0 && to > from && to < Double.POSITIVE_INFINITY) {
                        return new BandOption(from, to);
                    }
                }
            } catch (NumberFormatException noNumber) {
                throw refused(text);
            }
            throw refused(text);
        }

        private static TypeConversionException refused(String text) {
            return new TypeConversionException("expected two wavelengths in um, the shorter first, such as 1,2.5, got '"
                    + Wording.shortened(text) + "'");
        }
    }
}
