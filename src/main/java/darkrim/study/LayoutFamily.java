package darkrim.study;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Dimension;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.LayoutText;
import darkrim.layout.Part;
import darkrim.layout.SideFiles;
import darkrim.layout.form.Wording;
import darkrim.layout.form.YamlText;
import darkrim.layout.mesh.MeshFiles;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A layout file together with all the layouts that it becomes when named dimensions take other values. The bytes are read once, so that a
 * study is about one state of the file, however long it runs. Immutable; safe for use by many threads.
 */
public final class LayoutFamily {
    private final String name;
    private final byte[] content;
    private final SideFiles files;
    private final LayoutText text;
    private final Layout written;
    private final List<Finding> warnings;
    private final boolean warm;

    private LayoutFamily(
            String name,
            byte[] content,
            SideFiles files,
            LayoutText text,
            Layout written,
            List<Finding> warnings,
            boolean warm) {
        this.name = name;
        this.content = content;
        this.files = files;
        this.text = text;
        this.written = warm ? written.warm() : written;
        this.warnings = List.copyOf(warnings);
        this.warm = warm;
    }

    /**
     * Reads a file.
     *
     * @throws UnusableInput if the layout as written has an error
     */
    public static LayoutFamily of(Path file) throws UnusableInput {
        // This reading says in our words what is wrong with a file that cannot be opened.
        LayoutReading reading = LayoutReader.read(file);
        throwIfUnusable(reading);
        try (InputStream stream = Files.newInputStream(file)) {
            return of(file.toString(), stream.readNBytes(YamlText.LARGEST + 1));
        } catch (IOException changed) {
            throw new UnusableInput(List.of(Finding.error(
                    "unreadable",
                    new Place(Wording.oneLine(file.toString()), 0, 0),
                    "the file changed while it was read")));
        }
    }

    /**
     * Reads a text.
     *
     * @param name name of the file, for messages
     * @param content its bytes, UTF-8
     * @throws UnusableInput if the layout as written has an error
     */
    public static LayoutFamily of(String name, byte[] content) throws UnusableInput {
        return of(name, content, SideFiles.beside(name));
    }

    /**
     * Reads a text that names files.
     *
     * @param name name of the file, for messages
     * @param content its bytes, UTF-8
     * @param files the files that it names
     * @throws UnusableInput if the layout as written has an error
     */
    public static LayoutFamily of(String name, byte[] content, SideFiles files) throws UnusableInput {
        LayoutText text = new LayoutText(Wording.oneLine(name), content, files);
        LayoutReading reading = text.read(Map.of());
        throwIfUnusable(reading);
        return new LayoutFamily(
                name, content.clone(), files, text, reading.layout().orElseThrow(), reading.findings(), false);
    }

    /** The same in their shape as drawn, should they be cooled. */
    public LayoutFamily warm() {
        return new LayoutFamily(name, content, files, text, written, warnings, true);
    }

    /** The same in the shape in which they are looked at. */
    public LayoutFamily shaped(Effort effort) {
        return effort.warm() ? warm() : this;
    }

    /** Whether they have their shape as drawn, even if they are cooled. */
    public boolean isWarm() {
        return warm;
    }

    private static void throwIfUnusable(LayoutReading reading) throws UnusableInput {
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        findings.throwIfErrors();
    }

    /** Name of the file. */
    public String name() {
        return name;
    }

    /** The bytes of the file. */
    public byte[] content() {
        return content.clone();
    }

    /** What tells these layouts from all others, for studies that go on after an interruption: the bytes of all files. */
    public String identity() {
        StringBuilder words =
                new StringBuilder("layout SHA-256 " + written.source().sha256());
        sideHashes()
                .forEach((file, hash) ->
                        words.append(", ").append(file).append(" SHA-256 ").append(hash));
        files.meshes().hashes().forEach(mesh -> words.append(", ").append(mesh));
        if (warm) {
            words.append(", shape as drawn");
        }
        return words.toString();
    }

    /** The mesh files that the layout names, read. */
    public MeshFiles meshes() {
        return files.meshes();
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    /** The contents of the files that the layout names, by the name that it has for them. */
    public Map<String, byte[]> sideFiles() {
        return files.contents();
    }

    /** SHA-256 of these contents, lower-case hexadecimal (FIPS 180-4). */
    public Map<String, String> sideHashes() {
        Map<String, String> hashes = new LinkedHashMap<>();
        sideFiles().forEach((file, bytes) -> hashes.put(file, sha256(bytes)));
        return hashes;
    }

    /** The layout as written. */
    public Layout written() {
        return written;
    }

    /** What deserves attention in the layout as written, as far as it shows without its parts being put together. */
    public List<Finding> warnings() {
        return warnings;
    }

    /** A named dimension as written; none of that name: empty. */
    public Optional<Dimension> dimension(String dimension) {
        return Optional.ofNullable(written.dimensions().get(dimension));
    }

    /**
     * The layout with other values of some dimensions.
     *
     * @param chosen values by name, in mm, degrees or plain
     * @param findings receives what is wrong with it, and warnings
     * @throws UnusableInput if with these values it has an error
     * @throws IllegalArgumentException if the file does not define a name
     */
    public Layout with(Map<String, Double> chosen, Findings findings) throws UnusableInput {
        return with(chosen, Map.of(), findings);
    }

    /**
     * The layout with other values of some dimensions and with some parts out of place.
     *
     * @param chosen values by name, in mm, degrees or plain
     * @param moved how far parts are from their place, by name of the part
     * @param findings receives what is wrong with it, and warnings
     * @throws UnusableInput if with these values it has an error
     * @throws IllegalArgumentException if the file does not define a name
     */
    public Layout with(Map<String, Double> chosen, Map<String, PartOffset> moved, Findings findings)
            throws UnusableInput {
        chosen.keySet().forEach(key -> {
            if (!written.dimensions().containsKey(key)) {
                throw new IllegalArgumentException("there is no dimension '" + key + "'");
            }
        });
        moved.keySet().forEach(key -> {
            if (written.parts().stream().noneMatch(part -> part.name().equals(key))) {
                throw new IllegalArgumentException("there is no part '" + key + "'");
            }
        });
        LayoutReading reading = text.read(chosen);
        findings.addAll(reading.findings());
        findings.throwIfErrors();
        Layout read = reading.layout().orElseThrow();
        Layout layout = warm ? read.warm() : read;
        List<Part> parts = layout.parts().stream()
                .map(part ->
                        part.at(moved.getOrDefault(part.name(), PartOffset.NONE).of(part.placement())))
                .toList();
        return moved.isEmpty() ? layout : layout.with(parts);
    }
}
