package darkrim.cli;

import darkrim.layout.form.Wording;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A section plane as it is written on the command line: {@code x=0}.
 *
 * @param axis 0 for x, 1 for y, 2 for z
 * @param place where it crosses the axis, mm
 */
record SectionOption(int axis, double place) {
    /** Reads it. */
    static final class Reader implements ITypeConverter<SectionOption> {
        private static final Pattern PLANE = Pattern.compile("\\s*([xyz])\\s*=\\s*([-+]?[0-9.eE+-]{1,30})\\s*");

        @Override
        public SectionOption convert(String text) {
            Matcher plane = PLANE.matcher(text);
            if (!plane.matches()) {
                throw refused(text);
            }
            try {
                double place = Double.parseDouble(plane.group(2));
                if (Math.abs(place) <= 1e9) {
                    return new SectionOption("xyz".indexOf(plane.group(1)), place);
                }
            } catch (NumberFormatException noNumber) {
                throw refused(text);
            }
            throw refused(text);
        }

        private static TypeConversionException refused(String text) {
            return new TypeConversionException(
                    "expected x, y or z, an equals sign and a place in mm, such as y=0, got '" + Wording.shortened(text)
                            + "'");
        }
    }
}
