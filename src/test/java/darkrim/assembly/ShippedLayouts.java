package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The layouts in geometries/, for tests of other packages. */
public final class ShippedLayouts {
    private ShippedLayouts() {}

    /** All of them, by name. */
    public static List<Path> files() {
        try (Stream<Path> files = Files.list(Path.of("geometries"))) {
            return files.filter(file -> file.toString().endsWith(".yaml"))
                    .sorted()
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** The scene of one. */
    public static Scene scene(Path file) {
        Layout layout = LayoutReader.read(file).layout().orElseThrow();
        return SceneFactory.of(layout, Assembly.of(layout, new Findings()));
    }
}
