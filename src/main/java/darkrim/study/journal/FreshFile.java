package darkrim.study.journal;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.regex.Pattern;

/**
 * The file beside another in which its content is written before it takes the name: {@code .NAME.NUMBER.part}, with the first number that is free. The
 * file system sees to it that two writers get two, not the number of the process: containers that share a folder share these numbers.
 */
public final class FreshFile {
    /** More writers of one file at once are a mistake. */
    private static final int MOST = 1000;

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
        Path fresh = first(whole, before);
        removeLeft(fresh, Pattern.compile(Pattern.quote(before) + "[0-9]{1,10}" + Pattern.quote(ENDING)));
        return fresh;
    }

    private static Path first(Path whole, String before) throws IOException {
        for (int number = 0; number < MOST; number++) {
            try {
                return Files.createFile(whole.resolveSibling(before + number + ENDING));
            } catch (FileAlreadyExistsException taken) {
                // By another writer, or one that was killed.
            }
        }
        throw new FileAlreadyExistsException(before + "*" + ENDING);
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
