package darkrim.view.parts;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import java.nio.file.Path;

/** Stages for tests. */
public final class Stages {
    private Stages() {}

    /** A shipped layout. */
    public static Stage of(String name) {
        return of(Path.of("geometries", name));
    }

    /** A file. */
    public static Stage of(Path file) {
        try {
            return Stage.of(LayoutReader.read(file).layout().orElseThrow(), new Findings());
        } catch (UnusableInput unusable) {
            throw new AssertionError(unusable);
        }
    }
}
