package darkrim.study.live;

import darkrim.diagnostic.Place;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.DimensionEdit;
import darkrim.layout.RefusedEdit;
import darkrim.layout.form.YamlText;
import darkrim.study.LayoutFamily;
import darkrim.study.journal.FreshFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Arrays;
import java.util.Map;

/** Puts the values to which dimensions were dragged back into the layout file: all of them or none. */
public final class WriteBack {
    private WriteBack() {}

    /**
     * Changes values in a layout file, keeping its comments and all else.
     *
     * @param file the file that the layouts were read from
     * @param family the layouts as they were read
     * @param values values by name of the dimension, in mm, degrees or plain
     * @param formulas what to do with dimensions that are formulas
     * @return the layouts as the file now has them
     * @throws RefusedEdit if a value cannot be put in its place, or the file has changed since it was read; the file is as it was
     * @throws UnusableInput if the layout would have errors; the file is as it was
     * @throws IOException if the file cannot be read or written; it is as it was
     */
    public static LayoutFamily into(
            Path file, LayoutFamily family, Map<String, Double> values, DimensionEdit.Formulas formulas)
            throws RefusedEdit, UnusableInput, IOException {
        byte[] asRead = family.content();
        byte[] changed = DimensionEdit.of(family.name(), asRead, values, formulas);
        LayoutFamily written = LayoutFamily.of(family.name(), changed);
        written = family.isWarm() ? written.warm() : written;
        // A link stays a link.
        Path real = file.toRealPath();
        refuseIfChanged(real, family.name(), asRead);
        Path fresh = FreshFile.beside(real);
        boolean moved = false;
        try {
            Files.write(fresh, changed, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING);
            keepPermissions(real, fresh);
            refuseIfChanged(real, family.name(), asRead);
            Files.move(fresh, real, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            moved = true;
        } finally {
            // Once it is moved, another writer may have made its own of that name.
            if (!moved) {
                Files.deleteIfExists(fresh);
            }
        }
        return written;
    }

    private static void refuseIfChanged(Path file, String name, byte[] asRead) throws RefusedEdit, IOException {
        try (InputStream stream = Files.newInputStream(file)) {
            if (!Arrays.equals(stream.readNBytes(YamlText.LARGEST + 1), asRead)) {
                throw new RefusedEdit(
                        new Place(name, 0, 0),
                        "the file has changed since it was read; read it again, nothing was written");
            }
        }
    }

    private static void keepPermissions(Path from, Path to) throws IOException {
        PosixFileAttributeView before = Files.getFileAttributeView(from, PosixFileAttributeView.class);
        PosixFileAttributeView after = Files.getFileAttributeView(to, PosixFileAttributeView.class);
        if (before != null && after != null) {
            after.setPermissions(before.readAttributes().permissions());
        }
    }
}
