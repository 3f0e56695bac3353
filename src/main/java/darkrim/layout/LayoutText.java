package darkrim.layout;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.FormReader;
import darkrim.layout.form.Node;
import darkrim.layout.form.YamlText;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The text of a layout file, taken apart once, to be read with any values of its named dimensions. Safe for use by many threads. */
public final class LayoutText {
    /** A file with more is wrong from top to bottom. */
    private static final int MOST_FINDINGS = 500;

    private final String file;
    private final byte[] content;
    private final SideFiles files;
    private final Optional<Node> root;
    /** Of the text as such. */
    private final List<Finding> found;

    /**
     * @param file name of the file, for messages
     * @param content its bytes, UTF-8
     * @param files the files that it names
     */
    public LayoutText(String file, byte[] content, SideFiles files) {
        this.file = file;
        this.content = content.clone();
        this.files = files;
        Findings findings = new Findings();
        root = YamlText.parse(file, content, findings);
        found = findings.sorted();
    }

    /**
     * Reads it, with some named dimensions at other values than it says. A dimension that is written as a formula takes the value too; what is
     * reckoned from it follows.
     *
     * @param chosen values by name of the dimension, in mm, degrees or plain; a name that the file does not define has no effect
     * @return the layout and all that is wrong with it
     */
    public LayoutReading read(Map<String, Double> chosen) {
        Findings findings = new Findings();
        findings.addAll(found);
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
