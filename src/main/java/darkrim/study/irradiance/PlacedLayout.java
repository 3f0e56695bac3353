package darkrim.study.irradiance;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.study.Effort;
import java.nio.file.Path;
import java.util.List;

/**
 * A layout with its surfaces, without a look at their light: to see whether names mean something before there is any work.
 *
 * @param layout what the designer wrote
 * @param scene the scene
 * @param warnings what deserves attention in the layout, as far as it shows without a look at how parts touch
 */
public record PlacedLayout(Layout layout, Scene scene, List<Finding> warnings) {
    /** Copies the list. */
    public PlacedLayout {
        warnings = List.copyOf(warnings);
    }

    /**
     * Reads a layout file, in the shape that it asks for.
     *
     * @param file the file
     * @throws UnusableInput with what is wrong with it
     */
    public static PlacedLayout of(Path file) throws UnusableInput {
        return of(file, Effort.asAsked());
    }

    /**
     * Reads a layout file.
     *
     * @param file the file
     * @param effort in which shape it is looked at
     * @throws UnusableInput with what is wrong with it
     */
    public static PlacedLayout of(Path file, Effort effort) throws UnusableInput {
        LayoutReading reading = LayoutReader.read(file);
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        if (reading.layout().isEmpty() || !reading.partsComplete()) {
            throw new UnusableInput(findings.sorted());
        }
        Layout layout = effort.shaped(reading.layout().get());
        Assembly assembly = Assembly.of(layout, findings);
        findings.throwIfErrors();
        return new PlacedLayout(layout, SceneFactory.of(layout, assembly), findings.sorted());
    }
}
