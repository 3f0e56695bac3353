package darkrim.view.window;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The size of a picture, pixels.
 *
 * @param width width, 320 to 8000
 * @param height height, 240 to 8000
 */
record PictureSize(int width, int height) {
    /** What a size must be, in words. */
    static final String EXPECTED = "width x height in pixels, 320 to 8000 by 240 to 8000, such as 1600x1000";

    private static final Pattern FORM = Pattern.compile("\\s*(\\d{1,5})\\s*[xX*]\\s*(\\d{1,5})\\s*");
    private static final int MOST = 8000;

    /** Reads a size such as {@code 1600x1000}; empty if it is none, or too small or large. */
    static Optional<PictureSize> of(String text) {
        Matcher matcher = FORM.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        int width = Integer.parseInt(matcher.group(1));
        int height = Integer.parseInt(matcher.group(2));
        boolean usable = width >= 320 && height >= 240 && width <= MOST && height <= MOST;
        return usable ? Optional.of(new PictureSize(width, height)) : Optional.empty();
    }
}
