package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FaceMergeTest {
    private static List<Face> pieces(List<Vector3D[]> triangles, String side, double rounding) {
        TestParts parts = new TestParts();
        parts.builder().sheet("s", Finish.ABSORBER, "s/back", Finish.ABSORBER, TestParts.NOWHERE);
        triangles.forEach(t -> parts.builder().triangle("s", t[0], t[1], t[2]));
        Scene scene = parts.build(Beam.of(TestParts.pupilAt(50, Ring.disc(1))));
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        double own = rounding > 0 ? rounding : tolerance.rounding();
        return new FaceMerge(
                        scene, scene.surface(side).orElseThrow(), new Tolerance(own, tolerance.flat(), tolerance.gap()))
                .pieces();
    }

    /** However its triangles come, both halves share two sides in a row: the rectangle has its own corners and no others. */
    @ParameterizedTest
    @CsvSource({"0, 1, 2, 3", "0, 2, 1, 3", "3, 1, 2, 0", "2, 0, 3, 1", "1, 3, 0, 2", "3, 2, 1, 0"})
    void aFanOfTrianglesBecomesTheRectangleAboutIt(int first, int second, int third, int fourth) {
        double[][] corners = {{-2, -1}, {2, -1}, {2, 1}, {-2, 1}};
        List<Vector3D[]> fan = new ArrayList<>();
        for (int k : new int[] {first, second, third, fourth}) {
            double[] a = corners[k];
            double[] b = corners[(k + 1) % 4];
            fan.add(new Vector3D[] {Vector3D.ZERO, Vector3D.of(a[0], a[1], 0), Vector3D.of(b[0], b[1], 0)});
        }
        for (String side : List.of("s", "s/back")) {
            List<Face> pieces = pieces(fan, side, 0);
            assertThat(pieces).hasSize(1);
            FlatPiece piece = pieces.get(0).piece();
            assertThat(piece.size()).isEqualTo(4);
            assertThat(piece.area()).isCloseTo(8, within(1e-12));
            assertThat(piece.frame().normal().getZ()).isCloseTo(side.equals("s") ? 1 : -1, within(1e-12));
        }
    }

    @Test
    void aCornerThatTurnsInwardPartsTwoPieces() {
        // A rectangle of 4 by 2 with a bite of 1 by 1 out of a corner, and a dart.
        double[][] bitten = {{0, 0, 4, 0, 4, 1}, {0, 0, 4, 1, 3, 1}, {0, 0, 3, 1, 3, 2}, {0, 0, 3, 2, 0, 2}};
        assertConvex(bitten, 7);
        double[][] dart = {{0, 0, 4, -1, 1, 0}, {0, 0, 1, 0, 4, 1}};
        assertConvex(dart, 1);
    }

    private static void assertConvex(double[][] triangles, double area) {
        List<Vector3D[]> all = new ArrayList<>();
        for (double[] t : triangles) {
            all.add(new Vector3D[] {Vector3D.of(t[0], t[1], 0), Vector3D.of(t[2], t[3], 0), Vector3D.of(t[4], t[5], 0)
            });
        }
        List<Face> pieces = pieces(all, "s", 0);
        assertThat(pieces).hasSizeBetween(2, triangles.length);
        assertThat(pieces.stream().mapToDouble(face -> face.piece().area()).sum())
                .isCloseTo(area, within(1e-12));
        for (Face face : pieces) {
            FlatPiece piece = face.piece();
            for (int i = 0; i < piece.size(); i++) {
                double[] way = way(piece, i);
                double[] next = way(piece, (i + 1) % piece.size());
                assertThat(way[0] * next[1] - way[1] * next[0]).isNotNegative();
            }
        }
    }

    private static double[] way(FlatPiece piece, int side) {
        int next = (side + 1) % piece.size();
        return new double[] {piece.u(next) - piece.u(side), piece.v(next) - piece.v(side)};
    }

    /** A corner lies off the plane of the others by 2^-48; off its own facet's plane the far corner lies twice as much. */
    @ParameterizedTest
    @CsvSource({"7.9, 2", "8.1, 1"})
    void aFacetALittleOffThePlaneIsJoinedUpToAQuarterOfRounding(double times, int count) {
        double off = 0x1p-48;
        List<Vector3D[]> two = List.of(
                new Vector3D[] {Vector3D.of(0, 0, 0), Vector3D.of(4, 0, 0), Vector3D.of(0, 4, 0)},
                new Vector3D[] {Vector3D.of(4, 0, 0), Vector3D.of(3, 3, off), Vector3D.of(0, 4, 0)});
        assertThat(pieces(two, "s", times * off)).hasSize(count);
    }
}
