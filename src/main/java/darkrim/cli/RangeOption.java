package darkrim.cli;

import darkrim.layout.form.Wording;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A range of a dimension as it is written on the command line: {@code NAME=LEAST:MOST}.
 *
 * @param name name of the dimension
 * @param least least value, in mm, degrees or plain
 * @param most greatest value
 */
record RangeOption(String name, double least, double most) {
    /** Reads it. */
    static final class Reader implements ITypeConverter<RangeOption> {
        @Override
        public RangeOption convert(String text) {
            int equals = text.indexOf('=');
            int colon = text.indexOf(':', equals + 1);
            if (equals < 1 || colon < 0) {
                throw refused(text);
            }
            double least = number(text.substring(equals + 1, colon), text);
            double most = number(text.substring(colon + 1), text);
            return new RangeOption(text.substring(0, equals), least, most);
        }

        private static double number(String digits, String text) {
            try {
                double number = Double.parseDouble(digits.strip());
                if (Double.isFinite(number)) {
                    return number;
                }
            } catch (NumberFormatException noNumber) {
                throw refused(text);
            }
            throw refused(text);
        }

        private static TypeConversionException refused(String text) {
            return new TypeConversionException("'" + Wording.shortened(text)
                    + "' is no range: expected a dimension, an equals sign and two numbers in mm, degrees or plain, "
                    + "such as opening=36:38");
        }
    }
}
