package darkrim.layout;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.FormReader;
import darkrim.layout.form.Node;
import darkrim.layout.form.Wording;
import darkrim.layout.form.YamlText;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads a layout file. Whatever the file holds, the answer is a layout or findings, never an exception; all findings
 * come at once.
 */
public final class LayoutReader {
    /** A file with more is wrong from top to bottom. */
    private static final int MOST_FINDINGS = 500;

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
        Findings findings = new Findings();
        Optional<Node> root = YamlText.parse(file, content, findings);
        if (root.isEmpty()) {
            if (!findings.hasErrors()) {
                findings.error("wrong-type", new Place(file, 1, 1), "the file is empty, expected a layout");
            }
            return new LayoutReading(Optional.empty(), false, findings.sorted());
        }
        if (!(root.get() instanceof Node.Mapping mapping)) {
            findings.error(
                    "wrong-type",
                    root.get().place(),
                    "the file holds " + root.get().describe()
                            + ", expected a mapping with keys such as title, beam, parts");
            return new LayoutReading(Optional.empty(), false, findings.sorted());
        }
        FormReader reader = new FormReader(findings);
        LayoutBuilder builder = new LayoutBuilder(
                () -> new Layout.Source(file, sha256(content, files.contents())), chosen, files, findings);
        Layout layout = builder.build(reader, mapping);
        return new LayoutReading(Optional.of(layout), builder.partsComplete(), limited(findings.sorted()));
    }

    private static List<Finding> limited(List<Finding> all) {
        if (all.size() <= MOST_FINDINGS) {
            return all;
        }
        Findings first = new Findings();
        first.addAll(all.subList(0, MOST_FINDINGS));
        first.error(
                "too-many",
                all.get(MOST_FINDINGS).place(),
                (all.size() - MOST_FINDINGS) + " further findings from here on are left out");
        return first.sorted();
    }

    private static LayoutReading unreadable(String name, String why) {
        Finding finding = Finding.error("unreadable", new Place(name, 0, 0), why);
        return new LayoutReading(Optional.empty(), false, List.of(finding));
    }

    /** Of the bytes of the file and, where it names files, of the name and bytes of each after it, in the order of the names. */
    private static String sha256(byte[] content, Map<String, byte[]> named) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(content);
            named.forEach((name, bytes) -> {
                digest.update(name.getBytes(StandardCharsets.UTF_8));
                digest.update(bytes);
            });
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
