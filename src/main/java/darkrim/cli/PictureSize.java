package darkrim.cli;

import darkrim.layout.form.Wording;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Size of a picture as it is written on the command line: {@code WIDTHxHEIGHT}.
 *
 * @param width width, pixels
 * @param height height, pixels
 */
record PictureSize(int width, int height) {
    private static final int LEAST_WIDTH = 480;
    private static final int LEAST_HEIGHT = 320;
    private static final int MOST = 8000;

    /** Reads it. */
    static final class Reader implements ITypeConverter<PictureSize> {
        private static final Pattern SIZE = Pattern.compile("([0-9]{1,5})x([0-9]{1,5})");

        @Override
        public PictureSize convert(String text) {
            Matcher size = SIZE.matcher(text);
            if (size.matches()) {
                int width = Integer.parseInt(size.group(1));
                int height = Integer.parseInt(size.group(2));
                if (width >= LEAST_WIDTH && width <= MOST && height >= LEAST_HEIGHT && height <= MOST) {
                    return new PictureSize(width, height);
                }
            }
            throw new TypeConversionException("expected width and height in pixels, from " + LEAST_WIDTH + "x"
                    + LEAST_HEIGHT + " to " + MOST + "x" + MOST + ", such as 1600x1000, got '"
                    + Wording.shortened(text) + "'");
        }
    }
}
