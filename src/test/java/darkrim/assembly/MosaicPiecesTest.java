package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.DetectorsShape;
import darkrim.layout.DetectorsShape.Sides;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Detectors in rows and columns: their names, and which way those beyond the middle look. */
class MosaicPiecesTest {
    private static Set<String> names(List<Body> bodies) {
        return bodies.stream()
                .flatMap(body -> body.faces().stream())
                .map(Face::name)
                .collect(Collectors.toSet());
    }

    @Test
    void theAgreedMosaicHasTheAgreedNames() {
        List<Body> bodies = Layouts.bodies(Layouts.mosaic());
        bodies.forEach(MeshLaws::hold);
        Set<String> names = names(bodies);
        assertThat(names)
                .contains(
                        "part/die[1,2]/active",
                        "part/die[1,2]/reference/-x",
                        "part/die[1,2]/rim/+x",
                        "part/die[1,2]/edge/+x",
                        "part/die[2,1]/underfill/+x",
                        "part/die[2,1]/ledge/+x",
                        "part/die[2,1]/pads/+x",
                        "part/die[1,2]/readout/+x",
                        "part/die[1,2]/carrier/top/+x",
                        "part/die[1,2]/carrier/side/+x",
                        "part/die[1,2]/carrier/bottom",
                        "part/die[2,1]/bonds/+x/top",
                        "part/die[2,1]/bonds/+x/inner",
                        "part/die[2,1]/bonds/+x/outer",
                        "part/die[2,1]/bonds/+x/end-1",
                        "part/die[2,1]/bonds/+x/end-2");
    }

    @Test
    void mirroredDetectorsTurnTheirLedgesAwayFromTheMiddleAndNameTheTrueDirection() {
        List<Body> bodies = Layouts.bodies(Layouts.mosaic());
        Set<String> names = names(bodies);
        assertThat(names)
                .contains("part/die[1,1]/ledge/-x", "part/die[1,1]/ledge/-y", "part/die[1,1]/bonds/-x/top")
                .contains("part/die[2,1]/ledge/+x", "part/die[2,1]/ledge/-y", "part/die[1,2]/ledge/+y")
                .doesNotContain("part/die[1,1]/ledge/+x", "part/die[2,1]/ledge/-x", "part/die[1,2]/bonds/+x/top");
        for (Body body : bodies) {
            for (Face face : body.faces()) {
                if (face.name().matches(".*/(edge|readout|side)/[-+][xy]")) {
                    Vector3D normal = face.triangles().get(0).doubledNormal().normalize();
                    double along = face.name().endsWith("x") ? normal.getX() : normal.getY();
                    assertThat(along).as(face.name()).isEqualTo(face.name().contains("/-") ? -1 : 1);
                }
            }
        }
    }

    @Test
    void theMiddleDetectorOfAnOddGridIsNotMirrored() {
        DetectorsShape row = new DetectorsShape(
                3,
                1,
                50,
                0,
                2048,
                0.018,
                0,
                true,
                Sides.all(0.5),
                0.2,
                new Sides(0, 2, 0, 0),
                0.5,
                Optional.empty(),
                Sides.all(0),
                2,
                Optional.empty());
        List<Body> bodies = Layouts.bodies(row);
        bodies.forEach(MeshLaws::hold);
        assertThat(names(bodies).stream().filter(name -> name.contains("ledge")))
                .containsExactlyInAnyOrder(
                        "part/die[1,1]/ledge/-x", "part/die[2,1]/ledge/+x", "part/die[3,1]/ledge/+x");
    }

    @Test
    void detectorsReportTheirRectangles() {
        Die die = Layouts.assemble(Layouts.layout(Layouts.part("mosaic", Layouts.mosaic())))
                .detectors()
                .get(3);
        assertThat(die.name()).isEqualTo("mosaic/die[2,2]");
        assertThat(die.active().get(0).distance(Vector3D.of(20.1 - 18.36, 20.1 - 18.36, 0)))
                .isLessThan(1e-12);
        assertThat(die.pixelArray().get(2).distance(Vector3D.of(20.1 + 18.432, 20.1 + 18.432, 0)))
                .isLessThan(1e-12);
        assertThat(die.outline().get(2).distance(Vector3D.of(20.1 + 18.932, 20.1 + 18.932, 0)))
                .isLessThan(1e-12);
    }
}
