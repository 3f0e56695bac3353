package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/**
 * The pictures that a page shows are those that its commands draw into files of the same names. With {@code -Dwrite.docs=true} they are written
 * anew instead of compared.
 */
final class PagePictures {
    private static final Pattern SHOWN = Pattern.compile("!\\[[^]]*]\\(([\\w-]+\\.(?:png|svg))\\)");
    private static final Pattern WORDS = Pattern.compile(">([^<>\\s][^<>]*)</text");
    /** The hash of a layout and the version of the program stand on a picture in small letters; a line, a colour or a label is more. */
    private static final double UNLIKE_AT_MOST = 0.005;

    private static final String LETTERS =
            "Relative irradiance 1 is what the unobstructed pupil gives at 0.123456789 mm";
    /** How long the letters are in the fonts (DejaVu) of the machine that the pictures of the pages come from. */
    private static final double LENGTH = 3954.1;

    private PagePictures() {}

    /** Holds each picture of a page that lies in the folder against the one that the page shows; how many there were. */
    static int hold(Path page, Path folder) throws IOException {
        List<String> names = new ArrayList<>();
        for (String name : SHOWN.matcher(Files.readString(page))
                .results()
                .map(found -> found.group(1))
                .toList()) {
            if (Files.exists(folder.resolve(name))) {
                compare(folder.resolve(name), page.resolveSibling(name));
                names.add(name);
            }
        }
        return names.size();
    }

    /** Holds a picture that was drawn just now against the one that a page shows. */
    private static void compare(Path drawn, Path shown) throws IOException {
        if (Boolean.getBoolean("write.docs")) {
            if (!isAlike(drawn, shown)) {
                Files.copy(drawn, shown, StandardCopyOption.REPLACE_EXISTING);
            }
        } else if (shown.toString().endsWith(".svg")) {
            assertThat(words(shown)).as("%s is drawn anew", shown).isEqualTo(words(drawn));
        } else {
            assertThat(isAlike(drawn, shown))
                    .as("%s shows what is drawn now; -Dwrite.docs=true writes it", shown)
                    .isTrue();
        }
    }

    private static boolean isAlike(Path drawn, Path shown) throws IOException {
        if (!Files.exists(shown)) {
            return false;
        }
        if (shown.toString().endsWith(".svg")) {
            return withoutVersion(Files.readString(drawn)).equals(withoutVersion(Files.readString(shown)));
        }
        BufferedImage one = ImageIO.read(drawn.toFile());
        BufferedImage other = ImageIO.read(shown.toFile());
        if (one.getWidth() != other.getWidth() || one.getHeight() != other.getHeight()) {
            return false;
        }
        return !sameFonts() || share(one, other) <= UNLIKE_AT_MOST;
    }

    /** The share of pixels that differ, of pictures of one size. */
    private static double share(BufferedImage one, BufferedImage other) {
        long unlike = 0;
        for (int y = 0; y < one.getHeight(); y++) {
            for (int x = 0; x < one.getWidth(); x++) {
                unlike += one.getRGB(x, y) == other.getRGB(x, y) ? 0 : 1;
            }
        }
        return (double) unlike / one.getWidth() / one.getHeight();
    }

    /** Letters, and what stands beside them, are elsewhere with other fonts: pictures of pixels are then held by their size alone. */
    private static boolean sameFonts() {
        double length = new Font(Font.SANS_SERIF, Font.PLAIN, 100)
                .getStringBounds(LETTERS, new FontRenderContext(null, true, true))
                .getWidth();
        return Math.abs(length - LENGTH) < 1;
    }

    private static List<String> words(Path svg) throws IOException {
        return WORDS.matcher(withoutVersion(Files.readString(svg)))
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
    }

    private static String withoutVersion(String text) {
        return text.replaceAll("Darkrim [0-9$][^,]*,", "Darkrim,");
    }
}
