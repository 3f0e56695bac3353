package darkrim.study.journal;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * The file beside another in which its content is written before it takes the name: {@code .NAME.RANDOM.part}. Its name is told apart by chance, not by the
 * number of the process: containers that share a folder share these numbers.
 */
public final class FreshFile {
    private static final int DIGITS = 16;
    private static final String ENDING = ".part";

    /** Content is in memory before it is written, which takes seconds: what is older was left by a writer that was killed. */
    private static final Duration LONGEST = Duration.ofHours(1);

    private FreshFile() {}

    /**
     * Makes one, empty, and removes those that writers of the same file left when they were killed.
     *
     * @param file the file that it is to become
     * @throws IOException if none can be made in its folder
     */
    public static Path beside(Path file) throws IOException {
        Path whole = file.toAbsolutePath().normalize();
        String before = "." + whole.getFileName() + ".";
        String chance = HexFormat.of().toHexDigits(UUID.randomUUID().getMostSignificantBits());
        Path fresh = Files.createFile(whole.resolveSibling(before + chance + ENDING));
        removeLeft(fresh, Pattern.compile(Pattern.quote(before) + "[0-9a-f]{" + DIGITS + "}" + Pattern.quote(ENDING)));
        return fresh;
    }

    /** By the clock of the file system, which stamps all of them. */
    private static void removeLeft(Path fresh, Pattern name) {
        try (DirectoryStream<Path> left = Files.newDirectoryStream(
                fresh.getParent(),
                each -> name.matcher(each.getFileName().toString()).matches()
                        && Files.isRegularFile(each, LinkOption.NOFOLLOW_LINKS))) {
            Instant oldest = Files.getLastModifiedTime(fresh).toInstant().minus(LONGEST);
            for (Path each : left) {
                if (Files.getLastModifiedTime(each).toInstant().isBefore(oldest)) {
                    Files.deleteIfExists(each);
                }
            }
        } catch (IOException | DirectoryIteratorException refused) {
            // Who may write here need not be allowed to list or remove.
        }
    }
}
