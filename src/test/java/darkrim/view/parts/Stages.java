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
        try {
            return Stage.of(
                    LayoutReader.read(Path.of("geometries", name)).layout().orElseThrow(), new Findings());
        } catch (UnusableInput unusable) {
            throw new AssertionError(unusable);
        }
    }
}
