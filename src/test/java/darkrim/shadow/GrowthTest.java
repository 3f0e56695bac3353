package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class GrowthTest {
    private static final Frame FRAME = Frame.of(Vector3D.of(0, 0, 7), Vector3D.Unit.PLUS_Y, Vector3D.Unit.PLUS_X);

    /** From 0 to 4 along u, which is y, and from 0 to 2 along v, which is x. */
    private static final List<Face> FACES = List.of(face(0, 0, 4, 0, 4, 2, 0, 2));

    private static Face face(double... corners) {
        return new Face(FlatPiece.of(FRAME, corners), 3);
    }

    @Test
    void aRectangleGrowsByTheDistanceSquareToItsSidesAndNowhereByLess() {
        Face grown = new Growth().grown(FACES, 0.5).get(0);
        assertThat(grown.plane()).isEqualTo(3);
        double[] most = {-9, -9, -9, -9};
        for (int i = 0; i < grown.piece().size(); i++) {
            most[0] = Math.max(most[0], grown.piece().u(i));
            most[1] = Math.max(most[1], -grown.piece().u(i));
            most[2] = Math.max(most[2], grown.piece().v(i));
            most[3] = Math.max(most[3], -grown.piece().v(i));
        }
        assertThat(most[0]).isCloseTo(4.5, within(1e-12));
        assertThat(most[1]).isCloseTo(0.5, within(1e-12));
        assertThat(most[2]).isCloseTo(2.5, within(1e-12));
        assertThat(most[3]).isCloseTo(0.5, within(1e-12));
        // A polygon of 16 sides about the disc: more than the disc, less than its circumscribed area.
        double sides = 8 + 2 * 0.5 * 6;
        assertThat(grown.piece().area()).isBetween(sides + Math.PI / 4, sides + 16 * Math.tan(Math.PI / 16) / 4 + 1e-9);
        // To every side at least as far as a disc.
        for (double angle = 0; angle < 6.3; angle += 0.05) {
            double reach = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < grown.piece().size(); i++) {
                reach = Math.max(
                        reach,
                        grown.piece().u(i) * Math.cos(angle) + grown.piece().v(i) * Math.sin(angle));
            }
            double own = Math.max(0, 4 * Math.cos(angle)) + Math.max(0, 2 * Math.sin(angle));
            assertThat(reach).isGreaterThanOrEqualTo(own + 0.5 - 1e-12);
            assertThat(reach).isLessThan(own + 0.5 / Math.cos(Math.PI / 16) + 1e-9);
        }
    }

    @Test
    void growingIsExactAlongADirectionThatWasAskedFor() {
        for (double angle : new double[] {0.7, -2.2}) {
            Growth growth = new Growth();
            double u = Math.cos(angle);
            double v = Math.sin(angle);
            assertThat(reach(growth, u, v)).isGreaterThan(1e-4);
            growth.sharpen(3 * u, 3 * v);
            assertThat(reach(growth, u, v)).isCloseTo(0, within(1e-12));
        }
    }

    /** By how much a grown face reaches farther than the disc along a direction. */
    private static double reach(Growth growth, double u, double v) {
        FlatPiece grown = growth.grown(FACES, 1).get(0).piece();
        double reach = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < grown.size(); i++) {
            reach = Math.max(reach, grown.u(i) * u + grown.v(i) * v);
        }
        return reach - Math.max(0, 4 * u) - Math.max(0, 2 * v) - 1;
    }

    @Test
    void itsSidesFaceAwayFromIt() {
        List<Side> sides = Growth.sides(FACES);
        assertThat(sides).hasSize(4);
        Vector3D[] expected = {Vector3D.Unit.PLUS_Y, Vector3D.Unit.MINUS_Y, Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_X
        };
        for (Vector3D each : expected) {
            assertThat(sides.stream().filter(side -> side.direction().distance(each) < 1e-12))
                    .hasSize(1);
        }
        // A second face of the same directions adds none, a triangle adds its long side.
        assertThat(Growth.sides(List.of(FACES.get(0), face(5, 0, 9, 0, 9, 2, 5, 2))))
                .hasSize(4);
        assertThat(Growth.sides(List.of(FACES.get(0), face(5, 0, 9, 0, 5, 4)))).hasSize(5);
    }

    @Test
    void facesAreCutBackFromASideOfAllOfThem() {
        List<Face> two = List.of(FACES.get(0), face(5, 0, 9, 0, 9, 2, 5, 2));
        Side far = new Side(Vector3D.Unit.PLUS_Y);
        assertThat(Growth.farthest(two, far)).isEqualTo(9);
        assertThat(Growth.farthest(two, new Side(Vector3D.Unit.MINUS_Y))).isEqualTo(0);
        assertThat(area(Growth.cutBack(two, List.of(far), 1))).isCloseTo(14, within(1e-9));
        assertThat(area(Growth.cutBack(two, List.of(far), 6))).isCloseTo(6, within(1e-9));
        assertThat(Growth.cutBack(two, List.of(far), 6)).hasSize(1);
        assertThat(Growth.cutBack(two, List.of(far), 9.5)).isEmpty();
        // From two sides at once: 1 from the far end of y, 0.5 from the lower end of x.
        List<Side> both = List.of(far, new Side(Vector3D.Unit.MINUS_X));
        assertThat(area(Growth.cutBack(FACES, both, 0.5))).isCloseTo(3.5 * 1.5, within(1e-9));
    }

    private static double area(List<Face> faces) {
        return faces.stream().mapToDouble(face -> face.piece().area()).sum();
    }

    @Test
    void theNearestFaceIsFoundWithTheWayToIt() {
        List<Face> two = List.of(FACES.get(0), face(5, 0, 9, 0, 9, 2, 5, 2));
        // Above the first: u is y and v is x, so the frame's normal points down.
        NearestFace above = NearestFace.of(two, Vector3D.of(1, 3, 6.5));
        assertThat(above.face()).isSameAs(two.get(0));
        assertThat(above.alongU()).isZero();
        assertThat(above.alongV()).isZero();
        assertThat(above.height()).isCloseTo(0.5, within(1e-12));
        assertThat(above.distance()).isCloseTo(0.5, within(1e-12));
        assertThat(above.point().distance(Vector3D.of(1, 3, 7))).isLessThan(1e-12);
        NearestFace beside = NearestFace.of(two, Vector3D.of(3, 8, 7));
        assertThat(beside.face()).isSameAs(two.get(1));
        assertThat(beside.alongV()).isCloseTo(1, within(1e-12));
        assertThat(beside.alongU()).isZero();
        assertThat(beside.point().distance(Vector3D.of(2, 8, 7))).isLessThan(1e-12);
        // Off a corner by 3, 4 and 12.
        NearestFace corner = NearestFace.of(two, Vector3D.of(-3, -4, 19));
        assertThat(corner.alongU()).isCloseTo(-4, within(1e-12));
        assertThat(corner.alongV()).isCloseTo(-3, within(1e-12));
        assertThat(corner.distance()).isCloseTo(13, within(1e-12));
        assertThat(corner.point().distance(Vector3D.of(0, 0, 7))).isLessThan(1e-12);
        // Before each side in turn, and off the other corner.
        assertThat(NearestFace.of(FACES, Vector3D.of(1, -2, 7)).alongU()).isCloseTo(-2, within(1e-12));
        assertThat(NearestFace.of(FACES, Vector3D.of(1, 6, 7)).alongU()).isCloseTo(2, within(1e-12));
        assertThat(NearestFace.of(FACES, Vector3D.of(-2, 1, 7)).alongV()).isCloseTo(-2, within(1e-12));
        assertThat(NearestFace.of(FACES, Vector3D.of(5, 8, 7)).distance()).isCloseTo(5, within(1e-12));
    }
}
