package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A mesh that is used several times is stored once, and each copy is whole. */
class MeshCopiesTest {
    private static Assembly assembly(String... parts) {
        String text = """
                title: t
                finishes: {black: {diffuse: 0.05}}
                beam: {pupil: {shape: disc, diameter: 45, distance: 320}}
                parts:
                  %s
                requirements: {d: {surfaces: "**", direct: none}}
                """.formatted(String.join("\n  ", parts));
        LayoutReading reading =
                LayoutReader.read("src/test/resources/meshes/f.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        Findings findings = new Findings();
        Assembly assembly = Assembly.of(reading.layout().orElseThrow(), findings);
        assertThat(findings.sorted()).isEmpty();
        return assembly;
    }

    @Test
    void fourCopiesAndTwoPartsShareOneMesh() {
        Assembly assembly = assembly(
                "a: {kind: mesh, file: block.stl, unit: mm, finish: black, repeat: {count: [2, 2], step: [20, 20]}}",
                "b: {kind: mesh, file: block.stl, unit: mm, finish: black, at: [0, 0, 10], mirror: x, turn: {about: z, by: 30}}");
        assertThat(assembly.meshes().get("a")).isSameAs(assembly.meshes().get("b"));
        assertThat(assembly.bodies()).hasSize(5);
        for (Body body : assembly.bodies()) {
            MeshLaws.holdForSolid(body);
            assertThat(body.volume()).isEqualTo(200, within(1e-9));
        }
        assertThat(assembly.surfaces()).contains("a[2,1]/+z[0,0,2]", "b/+z[0,0,2]");
        // Facets are made when asked for: the lists hold none of their own.
        assertThat(assembly.faces().map(Face::triangles)).allMatch(PlacedFacets.class::isInstance);
    }

    @Test
    void anOpenMeshIsASheetWithTwoSides() {
        LayoutReading reading =
                LayoutReader.read("src/test/resources/meshes/f.yaml", """
                title: t
                beam: {pupil: {shape: disc, diameter: 45, distance: 320}}
                parts: {a: {kind: mesh, file: block-open.stl, unit: mm}}
                requirements: {d: {surfaces: "a/+z*/back", direct: none}}
                """.getBytes(StandardCharsets.UTF_8));
        Assembly assembly = Assembly.of(reading.layout().orElseThrow(), new Findings());
        assertThat(assembly.bodies()).hasSize(1);
        MeshLaws.holdForSheet(assembly.bodies().get(0));
        // The top has lost one of its two facets; its middle is that of the other.
        assertThat(assembly.surfaces()).contains("a/+z[-1.67,1.67,2]", "a/+z[-1.67,1.67,2]/back");
        assertThat(assembly.surfaces()).hasSize(12);
    }

    @Test
    void materialsGiveFinishesAndRulesWinOverThem() {
        Assembly assembly = assembly(
                "a: {kind: mesh, file: two-plates.obj, unit: mm, materials: {Bare Metal: absorber}, finish: absorber}");
        List<String> lower = assembly.surfaces().stream()
                .filter(name -> name.startsWith("a/lower/"))
                .toList();
        assertThat(lower).hasSize(6).allMatch(name -> assembly.finishOf(name).equals("black"));
        assertThat(assembly.finishOf("a/upper/+z[0,0,5]")).isEqualTo("absorber");
    }
}
