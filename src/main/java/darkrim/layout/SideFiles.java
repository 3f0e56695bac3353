package darkrim.layout;

import darkrim.layout.form.Wording;
import darkrim.layout.mesh.MeshFiles;
import darkrim.reflection.BrdfRow;
import darkrim.reflection.BrdfTable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The files that a layout names, in its own folder or below. Each is read once, so that a study is about one state of it. Safe for use by many
 * threads.
 */
public final class SideFiles {
    private static final int LARGEST = 1 << 22;

    /** Empty where the files are known already. */
    private final Optional<Path> folder;

    /** The layout file, for the names of files in messages. */
    private final String layout;

    private final Map<String, byte[]> known = new ConcurrentHashMap<>();

    /** The last table of each file: it takes far longer to make than to compare the rows. */
    private final Map<String, BrdfTable> tables = new ConcurrentHashMap<>();

    private final MeshFiles meshes;

    private SideFiles(String layout, Optional<Path> folder, Map<String, byte[]> known, MeshFiles meshes) {
        this.meshes = meshes;
        this.layout = layout;
        this.folder = folder;
        this.known.putAll(known);
    }

    /**
     * Those beside a layout file.
     *
     * @param layout the path of the layout file as the user gave it
     */
    public static SideFiles beside(String layout) {
        Path folder;
        try {
            folder = Path.of(layout).toAbsolutePath().getParent();
        } catch (InvalidPathException noPath) {
            folder = null;
        }
        return new SideFiles(layout, Optional.ofNullable(folder), Map.of(), MeshFiles.beside(layout));
    }

    /**
     * Those that were read elsewhere.
     *
     * @param layout the path of the layout file as the user gave it
     * @param contents by the name that the layout has for them
     */
    public static SideFiles known(String layout, Map<String, byte[]> contents) {
        return known(layout, contents, MeshFiles.beside(layout));
    }

    /**
     * Those that were read elsewhere, meshes too.
     *
     * @param layout the path of the layout file as the user gave it
     * @param contents by the name that the layout has for them
     * @param meshes the mesh files
     */
    public static SideFiles known(String layout, Map<String, byte[]> contents, MeshFiles meshes) {
        return new SideFiles(layout, Optional.empty(), contents, meshes);
    }

    /** The mesh files, which may be large and lie elsewhere. */
    public MeshFiles meshes() {
        return meshes;
    }

    /** The name of a file for messages: as the user would give it. */
    String shown(String name) {
        try {
            return Wording.oneLine(Path.of(layout).resolveSibling(name).toString());
        } catch (InvalidPathException noPath) {
            return Wording.oneLine(name);
        }
    }

    /** What was read so far, in the order of the names. */
    public SortedMap<String, byte[]> contents() {
        return new TreeMap<>(known);
    }

    /**
     * The bytes of a file.
     *
     * @param name its path from the layout's folder
     * @throws Unusable if it lies elsewhere or cannot be read
     */
    byte[] read(String name) throws Unusable {
        byte[] content = known.get(name);
        if (content == null) {
            content = readNow(name);
            known.put(name, content);
        }
        return content;
    }

    /**
     * The table of what a file holds.
     *
     * @param name its path from the layout's folder
     * @param rows what was measured; at least one value above 0
     */
    BrdfTable table(String name, List<BrdfRow> rows) {
        BrdfTable last = tables.get(name);
        if (last != null && last.rows().equals(rows)) {
            return last;
        }
        BrdfTable table = new BrdfTable(rows);
        tables.put(name, table);
        return table;
    }

    private byte[] readNow(String name) throws Unusable {
        if (folder.isEmpty()) {
            throw new Unusable("there is no such file");
        }
        try {
            Path inside = Path.of(name);
            Path file = folder.get().resolve(inside).normalize();
            if (inside.isAbsolute() || !file.startsWith(folder.get().normalize())) {
                throw new Unusable("the file lies outside of the layout's folder");
            }
            if (!Files.isRegularFile(file)) {
                throw new Unusable(Files.isDirectory(file) ? "is a folder" : "there is no such file");
            }
            if (!file.toRealPath().startsWith(folder.get().toRealPath())) {
                throw new Unusable("the file lies outside of the layout's folder");
            }
            try (InputStream stream = Files.newInputStream(file)) {
                byte[] content = stream.readNBytes(LARGEST + 1);
                if (content.length > LARGEST) {
                    throw new Unusable("the file has more than 4 MiB");
                }
                return content;
            }
        } catch (InvalidPathException noPath) {
            throw new Unusable("is not the name of a file");
        } catch (IOException unreadable) {
            throw new Unusable("the file cannot be read");
        }
    }

    /** A file that cannot be used, and why. */
    static final class Unusable extends Exception {
        private static final long serialVersionUID = 1;

        Unusable(String why) {
            super(why);
        }

        /** Why, for a message. */
        String why() {
            return String.valueOf(getMessage());
        }
    }
}
