package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.layout.Shape.Toward;
import darkrim.layout.VanesShape;
import darkrim.layout.VanesShape.Taper;
import darkrim.layout.VanesShape.Tip;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VanePiecesTest {
    private static final Taper WALL = new Taper(30, 40);
    private static final Taper EDGE = new Taper(25, 33);
    private static final List<Double> HEIGHTS = List.of(20.0, 45.0, 80.0);

    private static final double CHORD = 0.01;

    private static VanesShape vanes(OptionalDouble wall, double tilt, Tip tip) {
        return new VanesShape(WALL, EDGE, 0, 100, wall, HEIGHTS, 1, tilt, tip, CHORD);
    }

    /** Area and first moment about the axis of a profile, for Pappus: volume = 2 pi times the first moment. */
    private static double moment(List<Vector2D> loop) {
        double sum = 0;
        for (int i = 0; i < loop.size(); i++) {
            Vector2D a = loop.get(i);
            Vector2D b = loop.get((i + 1) % loop.size());
            sum += (a.getX() * b.getY() - b.getX() * a.getY()) * (a.getX() + b.getX()) / 6;
        }
        return sum;
    }

    @ParameterizedTest
    @CsvSource({
        "0, 1, 0, 0, PUPIL", "0, 0.1, 60, 0, PUPIL", "15, 0.1, 60, 0, DETECTOR", "-20, 0, 45, 0, PUPIL",
        "10, 0, 45, 0.1, PUPIL", "0, 0, 45, 0.1, DETECTOR", "0, 0.6, 0, 0.2, PUPIL", "5, 0, 0, 0.5, PUPIL"
    })
    void vanesWithAndWithoutWallAreClosedAndFollowPappus(
            double tilt, double land, double bevel, double radius, Toward toward) {
        Tip tip = new Tip(land, bevel, radius, toward);
        List<Body> rings = Layouts.bodies(vanes(OptionalDouble.empty(), tilt, tip));
        assertThat(rings).extracting(Body::name).containsExactly("part/1", "part/2", "part/3");
        double all = 0;
        for (int i = 0; i < 3; i++) {
            MeshLaws.hold(rings.get(i));
            double exact = 2
                    * Math.PI
                    * moment(VaneProfile.of(vanes(OptionalDouble.empty(), tilt, tip), i + 1)
                            .corners());
            assertThat(rings.get(i).volume()).isCloseTo(exact, within(CHORD * 2 * Math.PI * 40 * 4));
            all += exact;
        }
        Body whole = Layouts.bodies(vanes(OptionalDouble.of(2), tilt, tip)).get(0);
        MeshLaws.hold(whole);
        double wall = 100 * Math.PI * (2 * 35 * 2 + 4);
        assertThat(whole.volume()).isCloseTo(wall + all, within(CHORD * 2 * Math.PI * 42 * 220));
        assertThat(whole.faces())
                .extracting(Face::name)
                .contains("part/inside/1", "part/inside/4", "part/1/top", "part/2/underside");
        boolean sharp = land == 0 && radius == 0;
        assertThat(whole.faces().stream().anyMatch(face -> face.name().equals("part/3/edge")))
                .isEqualTo(!sharp);
    }

    /** The edge is where the drawing says, and nothing of the vane stands out farther, whatever the tip. */
    @ParameterizedTest
    @CsvSource({"0.1, 60, 0, PUPIL", "0, 45, 0.1, DETECTOR", "0.6, 0, 0.2, PUPIL", "0, 30, 0, DETECTOR"})
    void theEdgeStandsAtItsHeightAndRadius(double land, double bevel, double radius, Toward toward) {
        VanesShape vanes = vanes(OptionalDouble.empty(), 12, new Tip(land, bevel, radius, toward));
        for (int i = 1; i <= 3; i++) {
            double z = HEIGHTS.get(i - 1);
            List<Vector2D> corners = VaneProfile.of(vanes, i).corners();
            double least = corners.stream().mapToDouble(Vector2D::getX).min().orElseThrow();
            assertThat(least).isCloseTo(25 + 8 * z / 100, within(1e-12));
            assertThat(corners).anyMatch(c -> c.distance(Vector2D.of(25 + 8 * z / 100, z)) < 1e-12);
            assertThat(corners.get(0).getX()).isCloseTo(30 + corners.get(0).getY() / 10, within(1e-12));
        }
    }

    /** Corners of the round lie on its circle; its chords stay behind by no more than the chord allowed. */
    @Test
    void theRoundOfAnEdgeIsMadeOfRealFacets() {
        VanesShape vanes = vanes(OptionalDouble.empty(), 0, new Tip(0, 45, 0.2, Toward.PUPIL));
        Body vane = Layouts.bodies(vanes).get(0);
        Face edge = vane.faces().stream()
                .filter(face -> face.name().equals("part/1/edge"))
                .findFirst()
                .orElseThrow();
        double middle = 25 + 8 * 0.2 + 0.2;
        int bands =
                edge.triangles().size() / (2 * RoundSides.forRadius(32, CHORD).count());
        assertThat(bands).isGreaterThanOrEqualTo(9);
        for (Triangle facet : edge.triangles()) {
            for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                double radius = Math.hypot(Math.hypot(corner.getX(), corner.getY()) - middle, corner.getZ() - 20);
                assertThat(radius).isCloseTo(0.2, within(CHORD));
            }
        }
        // Pappus for a circle's arc of 135 deg about (middle, 20): 2 pi times the first moment of the arc.
        double arc = 0.2 * Math.PI * 0.75;
        double centroid = middle - 0.2 * 0.2 / arc * (1 + Math.sin(Math.PI / 4));
        assertThat(edge.area())
                .isCloseTo(2 * Math.PI * centroid * arc, within(CHORD / 0.2 * 2 * Math.PI * middle * arc));
    }

    @Test
    void vanesThatRunIntoEachOtherAreRefused() {
        Findings findings = new Findings();
        VanesShape vanes = new VanesShape(
                WALL,
                EDGE,
                0,
                100,
                OptionalDouble.of(1),
                List.of(1.2, 40.0),
                1,
                60,
                new Tip(1, 0, 0, Toward.PUPIL),
                0.001);
        Assembly.of(Layouts.layout(Layouts.part("thing", vanes)), findings);
        assertThat(findings.sorted()).hasSize(1);
        assertThat(findings.sorted().get(0).message()).contains("vane 1 meets the wall at");
    }
}
