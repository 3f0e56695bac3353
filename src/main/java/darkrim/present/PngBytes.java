package darkrim.present;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * Writes pictures as PNG in memory. The platform would hold what it writes in a temporary file, which it closes as soon as the program is asked to stop, under
 * the hands of whoever still draws.
 */
public final class PngBytes {
    private PngBytes() {}

    /** The picture as a PNG file. */
    public static byte[] of(BufferedImage image) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            if (!ImageIO.write(image, "png", out)) {
                throw new IllegalStateException("every Java platform writes PNG");
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return bytes.toByteArray();
    }
}
