package darkrim.layout.mesh;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A folder for the files of an external program, which only this user may look into; gone when closed. */
record WorkFolder(Path path) implements AutoCloseable {
    static WorkFolder create() throws IOException {
        return new WorkFolder(Files.createTempDirectory("darkrim-mesh-"));
    }

    /** Size of its largest file, bytes. */
    static long largestFile(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.mapToLong(file -> file.toFile().length()).max().orElse(0);
        }
    }

    /** Deletes a folder with all that it holds, as far as that can be done. */
    static void delete(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
            for (Path file : deepestFirst) {
                Files.deleteIfExists(file);
            }
        } catch (IOException gone) {
            // What another thread deleted, or the system holds: nothing to be done.
        }
    }

    @Override
    public void close() {
        delete(path);
    }
}
