package darkrim.study.review;

import darkrim.layout.Part;
import darkrim.layout.Shape;
import darkrim.study.LayoutFamily;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A file that was read, with what tells its bytes from all others.
 *
 * @param name its name, as the user would give it
 * @param sha256 SHA-256 of its bytes in lower-case hexadecimal (FIPS 180-4)
 */
public record InputHash(String name, String sha256) {
    /** The layout file and all files that it names, in the order of their names. */
    static List<InputHash> of(LayoutFamily family) {
        List<InputHash> all = new ArrayList<>();
        all.add(new InputHash(family.name(), family.written().source().sha256()));
        family.sideHashes().forEach((name, hash) -> all.add(new InputHash(beside(family, name), hash)));
        for (Part part : family.written().parts()) {
            if (part.shape() instanceof Shape.Mesh mesh) {
                all.add(new InputHash(mesh.file().name(), mesh.file().sha256()));
            }
        }
        return all.stream().distinct().toList();
    }

    private static String beside(LayoutFamily family, String name) {
        try {
            return Path.of(family.name()).resolveSibling(name).toString();
        } catch (InvalidPathException noPath) {
            return name;
        }
    }
}
