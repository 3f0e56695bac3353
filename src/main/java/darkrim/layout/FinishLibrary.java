package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.FormReader;
import darkrim.layout.form.Node;
import darkrim.layout.form.Value;
import darkrim.layout.form.YamlText;
import darkrim.reflection.Reflection;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** The finishes that come with the program: starting values by kind of surface, each with its source. */
public final class FinishLibrary {
    private static final String FILE = "finishes.yaml";
    private static final Map<String, Entry> ENTRIES = read();

    private FinishLibrary() {}

    /**
     * An entry.
     *
     * @param name its name
     * @param what what kind of surface it is
     * @param source where its numbers come from
     * @param dyed whether it is black by an organic dye
     * @param keys its keys as in a layout
     */
    public record Entry(String name, String what, String source, boolean dyed, Fields keys) {
        /**
         * How it reflects in a band of wavelengths.
         *
         * @param from shortest wavelength, um
         * @param to longest, um
         * @return empty where the entry has no values for all of the band
         */
        public Optional<Reflection> in(double from, double to) {
            return reflection(Optional.of(new Band(from, to)), new Findings());
        }

        Optional<Reflection> reflection(Optional<Band> band, Findings findings) {
            return new FinishReader(band, SideFiles.known(FILE, Map.of()), findings).reflection(keys);
        }
    }

    /** All entries, in the order of the file. */
    public static List<Entry> entries() {
        return List.copyOf(ENTRIES.values());
    }

    /** The names of all entries. */
    static List<String> names() {
        return List.copyOf(ENTRIES.keySet());
    }

    /** The entry of a name. */
    public static Optional<Entry> entry(String name) {
        return Optional.ofNullable(ENTRIES.get(name));
    }

    private static Map<String, Entry> read() {
        Findings findings = new Findings();
        FormReader reader = new FormReader(findings);
        Node root = YamlText.parse(FILE, content(), findings).orElseThrow();
        Fields file = (Fields) reader.read(root, FinishKeys.LIBRARY, "").orElseThrow();
        new DimensionBuilder(file, Map.of(), findings).build(reader.amounts());
        Map<String, Entry> entries = new LinkedHashMap<>();
        ((Value.Named) file.find("finishes").orElseThrow()).values().forEach((name, value) -> {
            Fields keys = (Fields) value;
            entries.put(name, new Entry(name, keys.text("what"), keys.text("source"), keys.flag("dyed"), keys));
        });
        if (findings.hasErrors()) {
            throw new IllegalStateException("the finish library is broken: " + findings.sorted());
        }
        return entries;
    }

    private static byte[] content() {
        try (InputStream stream = FinishLibrary.class.getResourceAsStream("/darkrim/" + FILE)) {
            return Objects.requireNonNull(stream, FILE).readAllBytes();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
