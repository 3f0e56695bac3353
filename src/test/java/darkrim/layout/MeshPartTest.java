package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** A mesh part is read with its unit, names and materials, and what does not fit the file is named. */
class MeshPartTest {
    private static LayoutReading read(String keys) {
        String text = """
                title: t
                finishes: {black: {diffuse: 0.05}, grey: {diffuse: 0.2}}
                beam: {pupil: {shape: disc, diameter: 45, distance: 320}}
                parts:
                  it: {kind: mesh, file: two-plates.obj, %s}
                  other: {kind: block, width: 1, depth: 1, height: 1, finish: grey, at: [50, 0, 0]}
                requirements: {d: {surfaces: "it", direct: none}}
                """.formatted(keys);
        return LayoutReader.read("src/test/resources/meshes/f.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    private static Shape.Mesh mesh(LayoutReading reading) {
        return (Shape.Mesh) reading.layout().orElseThrow().parts().get(0).shape();
    }

    @Test
    void everyKeyArrives() {
        LayoutReading reading = read("unit: in, crease: 12, chord: 5 um, within: 0.2, least_gap: 0.1,"
                + " names: {lip: {at: [1, 2, 3], facing: [0, 0, -2]}}, materials: {Bare Metal: grey}");
        assertThat(reading.findings()).isEmpty();
        Shape.Mesh mesh = mesh(reading);
        assertThat(mesh.unit()).isEqualTo(25.4);
        assertThat(mesh.crease()).isEqualTo(12);
        assertThat(mesh.chord()).contains(0.005);
        assertThat(mesh.within()).isEqualTo(0.2);
        assertThat(mesh.leastGap()).contains(0.1);
        assertThat(mesh.names()).hasSize(1);
        assertThat(mesh.names().get(0).at()).isEqualTo(Vector3D.of(1, 2, 3));
        // A material called like a finish has it without being asked.
        assertThat(mesh.finishOf()).isEqualTo(Map.of("black", "black", "Bare Metal", "grey"));
    }

    @Test
    void whatIsLeftOutHasItsDefault() {
        Shape.Mesh mesh = mesh(read("unit: mm"));
        assertThat(mesh.crease()).isEqualTo(20);
        assertThat(mesh.within()).isEqualTo(0.5);
        assertThat(mesh.chord()).isEqualTo(Optional.empty());
    }

    @Test
    void materialsThatDoNotFitAreNamed() {
        assertThat(read("unit: mm").findings())
                .extracting(Object::toString)
                .containsExactly(
                        "src/test/resources/meshes/f.yaml:5:26: warning: the material 'Bare Metal' of the mesh has no"
                                + " finish, so the part's own holds there, expected an entry under materials"
                                + " [material-without-finish]");
        assertThat(read("unit: mm, materials: {Bare Metl: grey}").findings())
                .extracting(Object::toString)
                .anyMatch(
                        finding -> finding.contains("the mesh has no material 'Bare Metl', did you mean 'Bare Metal'?")
                                && finding.endsWith("[unknown-material]"));
        assertThat(read("unit: mm, materials: {Bare Metal: gold}").hasErrors()).isTrue();
    }

    @Test
    void stepFilesHaveKeysOfTheirOwn() {
        String text = """
                title: t
                finishes: {black: {diffuse: 0.1}}
                beam: {pupil: {shape: disc, diameter: 4, distance: 100}}
                parts:
                  it: {kind: mesh, file: a.stp, unit: mm, finish: black}
                  other: {kind: mesh, file: f.obj, unit: mm, chord_tolerance: 0.1, finish: black}
                requirements: {d: {surfaces: "it", direct: none}}
                """;
        assertThat(LayoutReader.read("src/test/resources/meshes/f.yaml", text.getBytes(StandardCharsets.UTF_8))
                        .findings())
                .extracting(finding -> finding.toString().replaceAll("^.*?f.yaml:", ""))
                .contains(
                        "5:26: the key 'chord_tolerance' is missing, expected how far facets may lie from the surfaces of a"
                                + " STEP file [missing-key]")
                .anyMatch(finding -> finding.startsWith("5:") && finding.endsWith("[mesh-key]"))
                .anyMatch(finding -> finding.startsWith("6:") && finding.endsWith("[mesh-key]"));
    }

    /** Both at once, so that nobody mends one mistake to be told of the next. */
    @Test
    void aMissingKeyHidesNothingThatIsWrongWithTheFile() {
        assertThat(codes("file: ../broken/missing-beam.yaml")).containsExactly("missing-key", "mesh-outside");
        assertThat(codes("file: nowhere.stl")).containsExactly("missing-key", "mesh-unreadable");
        assertThat(codes("file: nowhere.step")).containsExactly("missing-key", "mesh-unreadable");
        assertThat(codes("file: ../nowhere.step, outside_folder: true, chord_tolerance: 0.1"))
                .containsExactly("mesh-unreadable");
        // A STEP file cannot be meshed without its tolerance, but where it lies is seen all the same.
        assertThat(codes("file: ../../../../geometries/step/" + aStepFile()))
                .containsExactly("missing-key", "mesh-outside");
    }

    private static String aStepFile() {
        File[] files = new File("geometries/step").listFiles((folder, name) -> name.endsWith(".step"));
        return Arrays.stream(files).map(File::getName).sorted().findFirst().orElseThrow();
    }

    private static List<String> codes(String keys) {
        String text = """
                title: t
                beam: {pupil: {shape: disc, diameter: 45, distance: 320}}
                parts:
                  it: {kind: mesh, %s}
                requirements: {d: {surfaces: "it", direct: none}}
                """.formatted(keys);
        return LayoutReader.read("src/test/resources/meshes/f.yaml", text.getBytes(StandardCharsets.UTF_8))
                .findings()
                .stream()
                .map(Finding::code)
                .toList();
    }

    @Test
    void aUnitThatIsMissingOrMakesItTooLargeIsAnError() {
        assertThat(read("crease: 20").findings()).extracting("code").contains("missing-key");
        // 5 units of 1 m are well within; the plates would have to be 200,000 times larger.
        assertThat(read("unit: m, materials: {Bare Metal: grey}").findings()).isEmpty();
        assertThat(read("unit: mm, names: {a: {at: [0, 0, 0], facing: [0, 0, 0]}}")
                        .findings())
                .extracting("code")
                .contains("axis");
    }
}
