package darkrim.layout;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Place;
import darkrim.layout.form.Wording;
import darkrim.layout.form.YamlText;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads a layout file. Whatever the file holds, the answer is a layout or findings, never an exception; all findings
 * come at once.
 */
public final class LayoutReader {
    private LayoutReader() {}

    /**
     * Reads a file.
     *
     * @param file the file
     * @return the layout and all that is wrong with it; a file that cannot be read is a finding
     */
    public static LayoutReading read(Path file) {
        String name = Wording.oneLine(file.toString());
        if (Files.isDirectory(file)) {
            return unreadable(name, "is a folder, expected a layout file");
        }
        try (InputStream stream = Files.newInputStream(file)) {
            return read(name, stream.readNBytes(YamlText.LARGEST + 1), Map.of(), SideFiles.beside(file.toString()));
        } catch (NoSuchFileException missing) {
            return unreadable(name, "there is no such file");
        } catch (AccessDeniedException denied) {
            return unreadable(name, "you may not read this file");
        } catch (IOException problem) {
            return unreadable(
                    name, "the file cannot be read: " + Wording.oneLine(String.valueOf(problem.getMessage())));
        }
    }

    /**
     * Reads a text.
     *
     * @param file name of the file, for messages
     * @param content its bytes, UTF-8
     * @return the layout and all that is wrong with it
     */
    public static LayoutReading read(String file, byte[] content) {
        return read(file, content, Map.of());
    }

    /**
     * Reads a text, with some named dimensions at other values than it says. A dimension that is written as a formula takes the value
     * too; what is reckoned from it follows.
     *
     * @param file name of the file, for messages
     * @param content its bytes, UTF-8
     * @param chosen values by name of the dimension, in mm, degrees or plain; a name that the file does not define has no effect
     * @return the layout and all that is wrong with it
     */
    public static LayoutReading read(String file, byte[] content, Map<String, Double> chosen) {
        return read(file, content, chosen, SideFiles.beside(file));
    }

    /**
     * Reads a text, with some named dimensions at other values, and the files that it names from elsewhere than beside it.
     *
     * @param file name of the file, for messages
     * @param content its bytes, UTF-8
     * @param chosen values by name of the dimension, in mm, degrees or plain; a name that the file does not define has no effect
     * @param files the files that it names
     * @return the layout and all that is wrong with it
     */
    public static LayoutReading read(String file, byte[] content, Map<String, Double> chosen, SideFiles files) {
        return new LayoutText(file, content, files).read(chosen);
    }

    private static LayoutReading unreadable(String name, String why) {
        Finding finding = Finding.error("unreadable", new Place(name, 0, 0), why);
        return new LayoutReading(Optional.empty(), false, List.of(finding));
    }
}
