package darkrim.view.files;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import javax.imageio.ImageIO;

/** Writes a picture whole or not at all: into a file beside it, which then takes its name. */
public final class PictureFile {
    private PictureFile() {}

    /** Whoever may read a new file of the user may read a picture: otherwise a file of a passing name is the user's alone. */
    private static FileAttribute<?>[] asNew(Path file) {
        boolean posix = file.getFileSystem().supportedFileAttributeViews().contains("posix");
        // What the user's mask leaves of it.
        return posix
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-rw-rw-"))
                }
                : new FileAttribute<?>[0];
    }

    /**
     * Writes a PNG file; one of that name is replaced.
     *
     * @param file where
     * @param pixels the picture
     * @throws IOException if it could not be written; nothing is left behind then
     */
    public static void write(Path file, Pixels pixels) throws IOException {
        BufferedImage image = new BufferedImage(pixels.width(), pixels.height(), BufferedImage.TYPE_INT_RGB);
        image.setRGB(0, 0, pixels.width(), pixels.height(), pixels.argb(), 0, pixels.width());
        Path fresh = Files.createTempFile(file.toAbsolutePath().getParent(), ".picture", ".part", asNew(file));
        try {
            if (!ImageIO.write(image, "png", fresh.toFile())) {
                throw new IOException("no writer for PNG");
            }
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }
}
