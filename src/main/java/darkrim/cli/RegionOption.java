package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.study.star.StarRegion;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a rectangle of the focal plane in mm: {@code X0..X1,Y0..Y1}. */
final class RegionOption implements ITypeConverter<StarRegion> {
    private static final String NUMBER = "\\s*([+-]?[0-9.]+(?:[eE][+-]?[0-9]+)?)\\s*";
    private static final Pattern FORM = Pattern.compile(NUMBER + "\\.\\." + NUMBER + "," + NUMBER + "\\.\\." + NUMBER);
    private static final double FAR = 1e6;

    @Override
    public StarRegion convert(String text) {
        // The dots between two numbers are not part of either.
        Matcher matcher = FORM.matcher(text.replace("..", " .. "));
        if (matcher.matches()) {
            try {
                double[] ends = new double[4];
                boolean near = true;
                for (int i = 0; i < ends.length; i++) {
                    ends[i] = Double.parseDouble(matcher.group(i + 1));
                    near &= Math.abs(ends[i]) <= FAR;
                }
                if (near && ends[0] < ends[1] && ends[2] < ends[3]) {
                    return new StarRegion(ends[0], ends[2], ends[1], ends[3]);
                }
            } catch (NumberFormatException noNumber) {
                throw refused(text);
            }
        }
        throw refused(text);
    }

    private static TypeConversionException refused(String text) {
        return new TypeConversionException(
                "expected a rectangle in mm, the lesser number of a pair first, such as -45..45,10..20, got '"
                        + Wording.shortened(text) + "'");
    }
}
