package darkrim.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * A point as it is written on the command line: {@code SURFACE} or {@code SURFACE:u,v}.
 *
 * @param surface full name of a surface
 * @param u share across it, 0 to 1
 * @param v likewise, the other way
 */
record PointOption(String surface, double u, double v) {
    private static final double MIDDLE = 0.5;
    private static final String NUMBER = "([0-9]{0,20}\\.?[0-9]{0,20}(?:[eE][-+]?[0-9]{1,3})?)";
    private static final Pattern SHARES = Pattern.compile("\\s*" + NUMBER + "\\s*,\\s*" + NUMBER + "\\s*");

    /** Reads it; names of surfaces hold no colon, so the last one stands before the shares. */
    static final class Reader implements ITypeConverter<PointOption> {
        @Override
        public PointOption convert(String text) {
            int colon = text.lastIndexOf(':');
            if (colon < 0) {
                return new PointOption(text, MIDDLE, MIDDLE);
            }
            Matcher shares = SHARES.matcher(text.substring(colon + 1));
            if (!shares.matches()) {
                throw refused(text);
            }
            return new PointOption(
                    text.substring(0, colon), share(shares.group(1), text), share(shares.group(2), text));
        }

        private static double share(String number, String text) {
            try {
                double share = Double.parseDouble(number);
                if (share >= 0 && share <= 1) {
                    return share;
                }
            } catch (NumberFormatException noDigits) {
                throw refused(text);
            }
            throw refused(text);
        }

        private static TypeConversionException refused(String text) {
            return new TypeConversionException("'" + darkrim.layout.form.Wording.shortened(text)
                    + "' is no point: expected the name of a surface, then if need be a colon and two shares from 0 to 1, "
                    + "such as 'mosaic/die[1,2]/active:0.25,0.5'");
        }
    }
}
