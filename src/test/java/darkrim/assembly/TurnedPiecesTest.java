package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.Shape;
import darkrim.layout.TurnedShape.Cone;
import darkrim.layout.TurnedShape.LabyrinthJoint;
import darkrim.layout.TurnedShape.Revolved;
import darkrim.layout.TurnedShape.ScrewHead;
import darkrim.layout.TurnedShape.Socket;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TurnedPiecesTest {
    private static List<Body> bodies(Shape shape) {
        List<Body> bodies = Layouts.bodies(shape);
        bodies.forEach(MeshLaws::hold);
        return bodies;
    }

    private static Map<String, Double> areas(Body body) {
        return body.faces().stream().collect(Collectors.toMap(Face::name, Face::area));
    }

    private static List<Vector2D> square(double distance, double side) {
        return List.of(
                Vector2D.of(distance, 0),
                Vector2D.of(distance + side, 0),
                Vector2D.of(distance + side, side),
                Vector2D.of(distance, side));
    }

    /** Pappus: volume 2 pi times the distance of the centroid times the area; surface 2 pi times that of each side times its length. */
    @ParameterizedTest
    @ValueSource(doubles = {0.001, 0.01})
    void aRevolvedSquareFollowsPappusToTheChord(double chord) {
        Body ring = bodies(new Revolved(square(10, 4), List.of("base", "out", "lid", "in"), chord))
                .get(0);
        double volume = 2 * Math.PI * 12 * 16;
        // Both walls are off by at most the chord, toward less material.
        assertThat(ring.volume()).isLessThan(volume).isGreaterThan(volume - chord * 2 * Math.PI * (10 + 14) * 4);
        int n = RoundSides.forRadius(14, chord).count();
        assertThat(areas(ring).get("part/out")).isCloseTo(4 * 2 * n * 14 * Math.sin(Math.PI / n), within(1e-9));
        assertThat(areas(ring).get("part/in")).isCloseTo(4 * 2 * n * 10 * Math.tan(Math.PI / n), within(1e-9));
        assertThat(areas(ring)).containsOnlyKeys("part/base", "part/out", "part/lid", "part/in");
    }

    /** Cone of radius 5 and height 12 on the axis: pi r^2 h / 3, and its side pi r sqrt(r^2 + h^2). */
    @Test
    void aProfileOnTheAxisMakesAClosedTip() {
        List<Vector2D> triangle = List.of(Vector2D.of(0, 0), Vector2D.of(5, 0), Vector2D.of(0, 12));
        Body cone = bodies(new Revolved(triangle, List.of("foot", "side", "axis"), 0.001))
                .get(0);
        int n = RoundSides.forRadius(5).count();
        double polygon = n / 2.0 * 25 * Math.sin(2 * Math.PI / n);
        assertThat(cone.volume()).isCloseTo(polygon * 12 / 3, within(1e-9));
        assertThat(cone.volume()).isCloseTo(Math.PI * 25 * 4, within(0.001 * 2 * Math.PI * 5 * 12));
        assertThat(areas(cone)).containsOnlyKeys("part/foot", "part/side");
        assertThat(areas(cone).get("part/side")).isCloseTo(Math.PI * 5 * 13, within(0.001 * 2 * Math.PI * 13 * 2));
    }

    /** The polygons around and inside a circle of 20 mm come together by 0.001 mm each: between them thinner material would be turned inside out. */
    @Test
    void whatIsThinnerThanItsPolygonsComeTogetherIsRefused() {
        for (double thickness : new double[] {1e-4, 5e-4, 9e-4}) {
            List<Vector2D> foil = List.of(
                    Vector2D.of(20, 0),
                    Vector2D.of(20 + thickness, 0),
                    Vector2D.of(20 + thickness, 5),
                    Vector2D.of(20, 5));
            Shape thin = new Revolved(foil, List.of("base", "out", "lid", "in"), 0.001);
            assertThatThrownBy(() -> PartPieces.of(thin))
                    .as("%s", thickness)
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("thinner somewhere than the polygons");
        }
        List<Vector2D> wall =
                List.of(Vector2D.of(20, 0), Vector2D.of(20.0025, 0), Vector2D.of(20.0025, 5), Vector2D.of(20, 5));
        assertThat(bodies(new Revolved(wall, List.of("base", "out", "lid", "in"), 0.001))
                        .get(0)
                        .volume())
                .isPositive();
    }

    /** A square on a corner, in the half plane: two sides face the axis, two away; the whole lies within the chord of the true solid. */
    @Test
    void aRingWithSlantedSidesIsClosed() {
        List<Vector2D> diamond =
                List.of(Vector2D.of(20, 0), Vector2D.of(23, 3), Vector2D.of(20, 6), Vector2D.of(17, 3));
        Assembly assembly = Layouts.assemble(
                Layouts.layout(Layouts.part("part", new Revolved(diamond, List.of("a", "b", "c", "d"), 0.001))));
        Body ring = assembly.bodies().get(0);
        MeshLaws.hold(ring);
        assertThat(assembly.largestChordError()).isLessThanOrEqualTo(0.001);
        assertThat(ring.volume())
                .isCloseTo(2 * Math.PI * 20 * 18, within(0.001 * 2 * Math.PI * 20 * 4 * Math.sqrt(18)));
    }

    /** Level slices between circles R and R + t: the integral of pi (2 R t + t^2). */
    @ParameterizedTest
    @ValueSource(doubles = {20, 30, 45})
    void aConeHasTheVolumeOfItsLevelSlices(double topRadius) {
        Body cone = bodies(new Cone(30, topRadius, 5, 50, 1.5, 0.001)).get(0);
        double mean = (30 + topRadius) / 2;
        double exact = 50 * Math.PI * (2 * mean * 1.5 + 1.5 * 1.5);
        assertThat(cone.volume()).isLessThan(exact).isGreaterThan(exact - 0.001 * 50 * 2 * Math.PI * (2 * mean + 1.5));
        assertThat(areas(cone)).containsOnlyKeys("part/inside", "part/outside", "part/top", "part/base");
        double slant = Math.hypot(50, topRadius - 30);
        assertThat(areas(cone).get("part/inside")).isCloseTo(Math.PI * (30 + topRadius) * slant, within(1.0));
    }

    /** Cylinder of 5 x 4, less the chamfer ring (Pappus: half a square of 0.5, centroid 4.8333 off the axis), less the hexagon of 4 across. */
    @Test
    void aScrewHeadWithSocketAndChamfer() {
        Body head = bodies(new ScrewHead(5, 4, 0.5, Optional.of(new Socket(4, 2)), 0.001))
                .get(0);
        double chamfer = 2 * Math.PI * (5 - 0.5 / 3) * 0.125;
        double socket = Math.sqrt(3) / 2 * 16 * 2;
        double exact = Math.PI * 25 * 4 - chamfer - socket;
        assertThat(head.volume()).isLessThan(exact).isGreaterThan(exact - 0.001 * 2 * Math.PI * 5 * 4);
        assertThat(areas(head).get("part/socket/wall")).isCloseTo(6 * 4 / Math.sqrt(3) * 2, within(1e-9));
        assertThat(areas(head).get("part/socket/floor")).isCloseTo(Math.sqrt(3) / 2 * 16, within(1e-9));
        assertThat(areas(head))
                .containsOnlyKeys(
                        "part/top",
                        "part/side",
                        "part/chamfer",
                        "part/underside",
                        "part/socket/wall",
                        "part/socket/floor");
        assertThat(areas(bodies(new ScrewHead(5, 4, 0, Optional.empty(), 0.001)).get(0)))
                .containsOnlyKeys("part/top", "part/side", "part/underside");
    }

    /** A cross-section swept along a rectangle, mitred: area times the length of the path of its centroid, which lies on the middle line. */
    @Test
    void aRectangularLabyrinthJointFollowsItsPath() {
        List<Body> joint = bodies(new LabyrinthJoint(Polygon.rectangle(60, 40), 1, 0.3, 2, 0.8, 0.5, 0.001));
        assertThat(joint).extracting(Body::name).containsExactly("part/groove", "part/cap");
        double wide = 1 + 2 * 0.3 + 2 * 0.8;
        double groove = wide * 0.5 + 2 * 0.8 * 2.3;
        double cap = wide * 0.5 + 1 * (2 + 0.3);
        assertThat(joint.get(0).volume()).isCloseTo(groove * 200, within(1e-9));
        assertThat(joint.get(1).volume()).isCloseTo(cap * 200, within(1e-9));
        assertThat(areas(joint.get(0))).containsKey("part/groove/floor/+x").hasSize(32);
        assertThat(areas(joint.get(1)).get("part/cap/tip/-y")).isCloseTo(60, within(1e-9));
    }

    @Test
    void aRoundLabyrinthJointFollowsPappus() {
        List<Body> joint = bodies(new LabyrinthJoint(Ring.disc(25), 1, 0.3, 2, 0.8, 0.5, 0.001));
        double wide = 1 + 2 * 0.3 + 2 * 0.8;
        double groove = 2 * Math.PI * 25 * (wide * 0.5 + 2 * 0.8 * 2.3);
        assertThat(joint.get(0).volume()).isLessThan(groove).isGreaterThan(groove - 0.001 * 2 * Math.PI * 25 * 12);
        assertThat(areas(joint.get(0)))
                .containsOnlyKeys(
                        "part/groove/base",
                        "part/groove/outside",
                        "part/groove/rim-outer",
                        "part/groove/wall-outer",
                        "part/groove/floor",
                        "part/groove/wall-inner",
                        "part/groove/rim-inner",
                        "part/groove/inside");
    }
}
