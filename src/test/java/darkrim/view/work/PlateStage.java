package darkrim.view.work;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.view.parts.Stage;
import java.nio.file.Path;

/** The stage of a file for tests. */
final class PlateStage {
    private PlateStage() {}

    static Stage of(Path file) throws UnusableInput {
        return Stage.of(LayoutReader.read(file).layout().orElseThrow(), new Findings());
    }
}
