package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Findings;
import darkrim.geom.mesh.FacetMesh;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.Shape;
import darkrim.layout.mesh.Meshing;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.shadow.VisiblePupil;
import darkrim.trace.FacetTree;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A part of a STEP file, meshed by the mesher itself: skipped where gmsh is not installed. */
class StepPartTest {
    private static Layout step;
    private static Layout stl;

    @BeforeAll
    static void read() throws IOException {
        boolean installed = Stream.of(String.valueOf(System.getenv("PATH")).split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, "gmsh")));
        assumeTrue(installed, "skipped: the mesher gmsh is not installed");
        String text = Files.readString(Path.of("geometries/step/hood.yaml"))
                .replace("chord_tolerance: 0.01", "chord_tolerance: 0.02");
        step = layout(text);
        stl = layout(text.replace("file: hood.step", "file: hood.stl")
                .replace("chord_tolerance: 0.02", "unit: mm\n    chord: 0.01"));
    }

    private static Layout layout(String text) {
        LayoutReading reading = LayoutReader.read("geometries/step/hood.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return reading.layout().orElseThrow();
    }

    private static Shape.Mesh hood(Layout layout) {
        return layout.parts().stream()
                .filter(part -> part.name().equals("hood"))
                .map(part -> (Shape.Mesh) part.shape())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void facetsLieWithinTheToleranceOfTheSurfacesInClosedForm() {
        Meshing meshing = hood(step).file().meshing().orElseThrow();
        assertThat(meshing.program()).matches("gmsh \\d.*");
        FacetMesh mesh = hood(step).file().mesh();
        double greatest = 0;
        for (int f = 0; f < mesh.facetCount(); f++) {
            for (int i = 0; i <= 8; i++) {
                for (int j = 0; j <= 8 - i; j++) {
                    Vector3D point = mesh.at(f, 0)
                            .multiply(i / 8.0)
                            .add(mesh.at(f, 1).multiply(j / 8.0))
                            .add(mesh.at(f, 2).multiply((8 - i - j) / 8.0));
                    greatest = Math.max(greatest, fromSurface(point));
                }
            }
        }
        assertThat(greatest).isLessThanOrEqualTo(0.02).isPositive();
        // What is stated was measured, and is no less than what closed forms give.
        assertThat(meshing.deviation()).isBetween(greatest * (1 - 1e-9), 0.02);
    }

    /** Distance from the nearest surface of hood.geo: planes, cylinders, a cone and a torus; never more than the true one. */
    private static double fromSurface(Vector3D p) {
        double r = Math.hypot(p.getX(), p.getY());
        double z = p.getZ();
        double cone = Math.abs((r - 24) * 3 + (z - 27) * 4) / 5;
        double bead = Math.abs(Math.hypot(r - 26, z - 12) - 2);
        return Stream.of(Math.abs(z), Math.abs(z - 30), Math.abs(r - 24), Math.abs(r - 26), cone, bead)
                .min(Double::compare)
                .orElseThrow();
    }

    @Test
    void volumeAndAreaAreThoseOfTheSolid() {
        Findings findings = new Findings();
        FacetMesh mesh =
                Assembly.of(step, findings).meshes().get("hood").mended().mesh();
        // Pappus: area of each piece of the section times the way of its centroid.
        double tube = Math.PI * (26 * 26 - 24 * 24) * 30;
        double lip = 2 * Math.PI * (24 - 4.0 / 3) * (4 * 3 / 2.0);
        double bead = 2 * Math.PI * (26 + 4 * 2 / (3 * Math.PI)) * Math.PI * 2;
        double area = Math.PI * (26 * 26 - 24 * 24)
                + Math.PI * (26 * 26 - 20 * 20)
                + 2 * Math.PI * 24 * 27
                + 2 * Math.PI * 22 * 5
                + 2 * Math.PI * 26 * 26
                + 2 * Math.PI * (26 + 2 * 2 / Math.PI) * 2 * Math.PI;
        // Facets within 0.02 mm of the surface all over differ by no more than that times the area.
        assertThat(mesh.volume()).isEqualTo(tube + lip + bead, within(0.02 * area));
        assertThat(mesh.area()).isEqualTo(area, within(2e-3 * area));
        assertThat(findings.sorted()).isEmpty();
    }

    @Test
    void itsShadowsAreThoseOfTheStlFileOfTheSameSolid() {
        Scene one = SceneFactory.of(step, Assembly.of(step, new Findings()));
        Scene other = SceneFactory.of(stl, Assembly.of(stl, new Findings()));
        VisiblePupil meshed = new VisiblePupil(one, FacetTree.build(one.copyCorners(), one.copyPlanes(), one.bound()));
        VisiblePupil drawn =
                new VisiblePupil(other, FacetTree.build(other.copyCorners(), other.copyPlanes(), other.bound()));
        double least = 1;
        for (int i = 0; i <= 40; i++) {
            Vector3D point = Vector3D.of(0.6 * i - 0.3, 0.2 * i, 1.5);
            double share = meshed.from(point, Vector3D.Unit.PLUS_Z).areaFraction();
            // The rim is off by 0.03 mm at most, 198.5 / 28.5 times that on the pupil of 30 mm, along an arc of at most
            // pi times the radius.
            double bound = 0.03 * 198.5 / 28.5 * Math.PI * 15 / (Math.PI * 15 * 15);
            assertThat(drawn.from(point, Vector3D.Unit.PLUS_Z).areaFraction())
                    .as("at %s", point)
                    .isEqualTo(share, within(bound));
            least = Math.min(least, share);
        }
        assertThat(least).isLessThan(0.5);
    }
}
