package darkrim.study;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Dimension;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.Part;
import darkrim.layout.form.YamlText;
import darkrim.layout.mesh.MeshFiles;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
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
    private final MeshFiles meshes;
    private final Layout written;

    private LayoutFamily(String name, byte[] content, MeshFiles meshes, Layout written) {
        this.meshes = meshes;
        this.name = name;
        this.content = content;
        this.written = written;
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
                    "unreadable", new Place(file.toString(), 0, 0), "the file changed while it was read")));
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
        return of(name, content, MeshFiles.beside(name));
    }

    /**
     * Reads a text with mesh files that were read before.
     *
     * @param name name of the file, for messages
     * @param content its bytes, UTF-8
     * @param meshes the mesh files that it may name
     * @throws UnusableInput if the layout as written has an error
     */
    public static LayoutFamily of(String name, byte[] content, MeshFiles meshes) throws UnusableInput {
        LayoutReading reading = LayoutReader.read(name, content, Map.of(), meshes);
        throwIfUnusable(reading);
        return new LayoutFamily(name, content.clone(), meshes, reading.layout().orElseThrow());
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

    /** The mesh files that it names, read. */
    public MeshFiles meshes() {
        return meshes;
    }

    /** The layout as written. */
    public Layout written() {
        return written;
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
        LayoutReading reading = LayoutReader.read(name, content, chosen, meshes);
        findings.addAll(reading.findings());
        findings.throwIfErrors();
        Layout layout = reading.layout().orElseThrow();
        List<Part> parts = layout.parts().stream()
                .map(part ->
                        part.at(moved.getOrDefault(part.name(), PartOffset.NONE).of(part.placement())))
                .toList();
        return moved.isEmpty() ? layout : layout.with(parts);
    }
}
