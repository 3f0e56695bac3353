package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;

class PupilPiecesTest {
    private static final Frame FRAME = Frame.of(Vector3D.of(0, 0, 9), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
    private static final Tolerance TOLERANCE = new Tolerance(1e-9, 4e-9, 256e-9);

    private static final Polygon L = Polygon.of(List.of(
            Vector2D.of(-4, -4),
            Vector2D.of(4, -4),
            Vector2D.of(4, 0),
            Vector2D.of(0, 0),
            Vector2D.of(0, 4),
            Vector2D.of(-4, 4)));

    private static PupilPieces pieces(Outline outline) {
        return new PupilPieces(outline, FRAME, TOLERANCE);
    }

    @Test
    void aPolygonStandsAroundADisc() {
        FlatPiece all = pieces(Ring.disc(5)).all().get(0);
        assertThat(all.size()).isEqualTo(64);
        double area = 64 * 25 * Math.tan(Math.PI / 64);
        assertThat(all.area()).isCloseTo(area, within(1e-6)).isGreaterThan(area);
        for (int i = 0, j = 63; i < 64; j = i++) {
            double du = all.u(i) - all.u(j);
            double dv = all.v(i) - all.v(j);
            double distance = (du * -all.v(j) + dv * all.u(j)) / Math.hypot(du, dv);
            // Each side outside the disc by the rounding margin, and hardly more.
            assertThat(Math.abs(distance)).isBetween(5 + 1e-9, 5 + 2e-9);
        }
        // A side square to the axis.
        assertThat(all.u(0)).isCloseTo(all.u(63), within(1e-12));
    }

    @Test
    void aConvexPolygonStandsForItselfAndAnotherAsTriangles() {
        assertThat(pieces(Polygon.rectangle(6, 4)).all()).hasSize(1);
        assertThat(pieces(Polygon.rectangle(6, 4)).all().get(0).area()).isEqualTo(24);
        List<FlatPiece> parts = pieces(L).all();
        assertThat(parts).hasSize(4);
        assertThat(parts.stream().mapToDouble(FlatPiece::area).sum()).isCloseTo(48, within(1e-12));
        assertThat(parts).allMatch(part -> part.area() > 0 && part.size() == 3);
    }

    /** Regular polygons about any place are convex; with every other corner drawn in they are not. */
    @Test
    void aPolygonIsConvexWhereverItStands() {
        for (int n = 3; n < 9; n++) {
            for (double[] at : new double[][] {{0, 0}, {30, 5}, {-7, 40}, {-20, -60}}) {
                double[] corners = new double[2 * n];
                Vector2D[] all = new Vector2D[n];
                for (int i = 0; i < n; i++) {
                    corners[2 * i] = at[0] + 4 * Math.cos(0.3 + 2 * Math.PI * i / n);
                    corners[2 * i + 1] = at[1] + 4 * Math.sin(0.3 + 2 * Math.PI * i / n);
                    all[i] = Vector2D.of(corners[2 * i], corners[2 * i + 1]);
                }
                assertThat(PupilPieces.convexParts(Polygon.of(List.of(all)))).hasSize(1);
                if (n % 2 == 0 && n > 4) {
                    for (int i = 0; i < n; i += 2) {
                        all[i] = Vector2D.of(
                                at[0] + 0.2 * (corners[2 * i] - at[0]), at[1] + 0.2 * (corners[2 * i + 1] - at[1]));
                    }
                    assertThat(PupilPieces.convexParts(Polygon.of(List.of(all))))
                            .hasSize(n - 2);
                }
            }
        }
    }

    @Test
    void halvesInTheHoleOrOutsideTheRimAreLeftOut() {
        PupilPieces ring = pieces(new Ring(5, 3));
        // From -4 to 4 along u, within 0.5 along v: halves reach out of the hole; a small one lies in it.
        assertThat(ring.halves(rectangle(-4, 4, -0.5, 0.5))).hasSize(2);
        assertThat(ring.halves(rectangle(-2, 2, -0.5, 0.5))).isEmpty();
        assertThat(ring.halves(rectangle(2, 4, -0.5, 0.5))).hasSize(2);
        assertThat(ring.halves(rectangle(1, 3.2, -0.5, 0.5))).hasSize(1);
        double edge = Math.sqrt(9 - 0.25);
        assertThat(ring.halves(rectangle(1, edge - 1e-8, -0.5, 0.5))).isEmpty();
        assertThat(ring.halves(rectangle(1, edge + 1e-8, -0.5, 0.5))).hasSize(1);
        assertThat(pieces(Ring.disc(5)).halves(rectangle(-2, 2, -0.5, 0.5))).hasSize(2);
        assertThat(ring.halves(rectangle(6, 9, -0.5, 0.5))).isEmpty();
        assertThat(pieces(Polygon.rectangle(2, 2)).halves(rectangle(6, 9, -0.5, 0.5)))
                .hasSize(2);
    }

    /** What is cut off a half lies outside the disc; all of the disc in it is kept. */
    @Test
    void cornersThatStandOutAreCutOffAndNothingOfTheDisc() {
        PupilPieces disc = pieces(Ring.disc(5));
        for (FlatPiece half : disc.halves(rectangle(0, 6, 0, 6))) {
            assertThat(half.area()).isLessThan(18);
            for (double angle = 0.01; angle < Math.PI / 2; angle += 0.02) {
                double u = 5 * Math.cos(angle);
                double v = 5 * Math.sin(angle);
                boolean inHalf = half.middle()[0] < 3 ? u <= 3 : u >= 3;
                assertThat(!inHalf || holds(half, u, v)).isTrue();
            }
        }
        double kept = disc.halves(rectangle(0, 6, 0, 6)).stream()
                .mapToDouble(FlatPiece::area)
                .sum();
        assertThat(kept).isBetween(25 * Math.PI / 4, 29.0);
    }

    private static boolean holds(FlatPiece piece, double u, double v) {
        for (int i = 0, j = piece.size() - 1; i < piece.size(); j = i++) {
            double side = (piece.u(i) - piece.u(j)) * (v - piece.v(j)) - (piece.v(i) - piece.v(j)) * (u - piece.u(j));
            if (side < -1e-9) {
                return false;
            }
        }
        return true;
    }

    private static FlatPiece rectangle(double u0, double u1, double v0, double v1) {
        return FlatPiece.of(FRAME, new double[] {u0, v0, u1, v0, u1, v1, u0, v1});
    }

    @Test
    void aTangentCutsADiscPieceAndNoPolygon() {
        FlatPiece square = rectangle(-6, 6, -6, 6);
        // u is x and v is -y.
        FlatPiece cut = pieces(Ring.disc(5)).tangentCut(square, Vector3D.of(0, -3, 8));
        assertThat(cut.area()).isCloseTo(132, within(1e-7));
        assertThat(cut.middleInSpace().getY()).isCloseTo(0.5, within(1e-7));
        assertThat(pieces(Ring.disc(5)).tangentCut(rectangle(6, 7, 0, 1), Vector3D.of(1, 0, 0)))
                .isNull();
        assertThat(pieces(Polygon.rectangle(2, 2)).tangentCut(square, Vector3D.of(1, 0, 0)))
                .isSameAs(square);
        assertThat(pieces(Ring.disc(5)).tangentCut(square, Vector3D.of(0, 0, 1)))
                .isSameAs(square);
    }

    @Test
    void theFarthestPointLiesOnTheRimOrInACorner() {
        FlatPiece square = rectangle(-6, 6, -6, 6);
        double[] rim = pieces(Ring.disc(5)).farthest(square, Vector3D.of(3, -4, 2));
        assertThat(rim[0]).isCloseTo(3, within(1e-9)).isLessThan(3);
        assertThat(rim[1]).isCloseTo(4, within(1e-9)).isLessThan(4);
        // The point of the rim lies outside this piece: its own corner.
        double[] corner = pieces(Ring.disc(5)).farthest(rectangle(-1, 1, -2, 1), Vector3D.of(3, -4, 2));
        assertThat(corner).containsExactly(1, 1);
        double[] outside = pieces(Ring.disc(5)).farthest(rectangle(-1, 1, 4, 6), Vector3D.of(4, 3, 0));
        assertThat(Math.hypot(outside[0], outside[1])).isLessThanOrEqualTo(5);
        double[] ofPolygon = pieces(Polygon.rectangle(12, 12)).farthest(square, Vector3D.of(3, -4, 2));
        assertThat(ofPolygon[0]).isCloseTo(6, within(1e-7)).isLessThan(6);
        assertThat(ofPolygon[1]).isCloseTo(6, within(1e-7)).isLessThan(6);
        // Just inside and just outside of a piece, beside each of its sides.
        for (double[] r : new double[][] {{2.9, 9, 3.9, 9}, {-9, 3.1, 3.9, 9}, {2.9, 9, -9, 4.1}, {-9, 3.1, -9, 4.1}}) {
            double[] in = pieces(Ring.disc(5)).farthest(rectangle(r[0], r[1], r[2], r[3]), Vector3D.of(3, -4, 2));
            assertThat(Math.hypot(in[0] - 3, in[1] - 4)).isLessThan(1e-9);
        }
        for (double[] r : new double[][] {{3.1, 9, 3.9, 9}, {-9, 2.9, 3.9, 9}, {2.9, 9, -9, 3.9}, {2.9, 9, 4.1, 9}}) {
            double[] out = pieces(Ring.disc(5)).farthest(rectangle(r[0], r[1], r[2], r[3]), Vector3D.of(3, -4, 2));
            assertThat(Math.hypot(out[0] - 3, out[1] - 4)).isGreaterThan(1e-2);
        }
        double[] other = pieces(Polygon.rectangle(12, 12)).farthest(square, Vector3D.of(-3, 4, 2));
        assertThat(other[0]).isCloseTo(-6, within(1e-7)).isGreaterThan(-6);
    }

    @Test
    void aCornerOutsideTheDiscIsDrawnInToItsRim() {
        double[] drawn = pieces(Ring.disc(5)).drawnIn(rectangle(0, 6, 0, 8), 2);
        assertThat(drawn[0]).isCloseTo(3, within(1e-9)).isLessThan(3);
        assertThat(drawn[1]).isCloseTo(4, within(1e-9)).isLessThan(4);
        assertThat(pieces(Ring.disc(5)).drawnIn(rectangle(0, 3, 0, 3.5), 2)).containsExactly(3, 3.5);
    }
}
