package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.layout.BondWiresShape;
import darkrim.layout.CutShape;
import darkrim.layout.DetectorsShape;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.Shape;
import darkrim.layout.TurnedShape;
import darkrim.layout.VanesShape;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ShippedLayoutsTest {
    static List<Path> layouts() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("geometries"))) {
            return files.filter(file -> file.toString().endsWith(".yaml"))
                    .sorted()
                    .toList();
        }
    }

    private static Layout read(Path file) {
        LayoutReading reading = LayoutReader.read(file);
        assertThat(reading.findings()).as(file.toString()).isEmpty();
        return reading.layout().orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("layouts")
    void everyShippedLayoutIsReadAndAssembledWithoutAFinding(Path file) {
        Layout layout = read(file);
        Findings findings = new Findings();
        Assembly assembly = Assembly.of(layout, findings);
        assertThat(findings.sorted()).extracting(Finding::toString).isEmpty();
        assembly.bodies().forEach(MeshLaws::hold);
        Scene scene = SceneFactory.of(layout, assembly);
        assertThat(scene.referenceIrradiance()).isPositive();
        assertThat(layout.requirements()).isNotEmpty();
    }

    @Test
    void thereIsALayoutForEachKindOfPart() throws IOException {
        Set<Class<?>> shown = new HashSet<>();
        for (Path file : layouts()) {
            if (file.getFileName().toString().startsWith("part-")) {
                read(file).parts().forEach(part -> shown.add(part.shape().getClass()));
            }
        }
        assertThat(shown)
                .containsExactlyInAnyOrder(
                        DetectorsShape.class,
                        Shape.Plate.class,
                        Shape.Box.class,
                        Shape.Tube.class,
                        Shape.Block.class,
                        Shape.Disc.class,
                        Shape.Rectangle.class,
                        Shape.SphereCap.class,
                        Shape.Mesh.class,
                        TurnedShape.Cone.class,
                        TurnedShape.Revolved.class,
                        TurnedShape.ScrewHead.class,
                        TurnedShape.LabyrinthJoint.class,
                        VanesShape.class,
                        CutShape.Extruded.class,
                        CutShape.Honeycomb.class,
                        CutShape.ColdStop.class,
                        BondWiresShape.class);
    }
}
