package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class FlatPieceTest {
    /** In the plane x = 2, u along y and v along z: from y = 1 to 5 and from z = 10 to 12. */
    private static final FlatPiece PIECE = FlatPiece.of(
            Frame.of(Vector3D.of(2, 1, 10), Vector3D.Unit.PLUS_Y, Vector3D.Unit.PLUS_Z),
            new double[] {0, 0, 4, 0, 4, 2, 0, 2});

    @Test
    void itsCornersStandInSpace() {
        assertThat(PIECE.space()).containsExactly(2, 1, 10, 2, 5, 10, 2, 5, 12, 2, 1, 12);
        assertThat(PIECE.size()).isEqualTo(4);
        assertThat(PIECE.u(1)).isEqualTo(4);
        assertThat(PIECE.v(2)).isEqualTo(2);
        assertThat(PIECE.area()).isEqualTo(8);
        assertThat(PIECE.extent()).isEqualTo(4);
        assertThat(PIECE.middle()).containsExactly(2, 1);
        assertThat(PIECE.middleInSpace()).isEqualTo(Vector3D.of(2, 3, 11));
    }

    @Test
    void anotherFrameMovesAndTurnsTheCorners() {
        Frame frame = Frame.of(Vector3D.of(1, 2, 3), Vector3D.of(3, 4, 0), Vector3D.of(0, 0, 1));
        FlatPiece piece = FlatPiece.of(frame, new double[] {5, 7, 10, 7, 5, 8});
        double[] expected = {4, 6, 10, 7, 10, 10, 4, 6, 11};
        for (int i = 0; i < 9; i++) {
            assertThat(piece.space()[i]).isCloseTo(expected[i], within(1e-12));
        }
    }

    @Test
    void aPlaneCutsIt() {
        // What lies at y of 3.5 or more.
        FlatPiece above = PIECE.clipToSpace(Vector3D.Unit.PLUS_Y, 3.5);
        assertThat(above.area()).isCloseTo(3, within(1e-12));
        assertThat(above.middleInSpace().getY()).isCloseTo(4.25, within(1e-12));
        FlatPiece below = PIECE.clipToSpace(Vector3D.Unit.MINUS_Y, -3.5);
        assertThat(below.area()).isCloseTo(5, within(1e-12));
        assertThat(PIECE.clipToSpace(Vector3D.Unit.PLUS_Z, 9)).isSameAs(PIECE);
        assertThat(PIECE.clipToSpace(Vector3D.Unit.PLUS_Z, 13)).isNull();
        // Planes along it keep all or nothing; the plane itself counts as kept.
        assertThat(PIECE.clipToSpace(Vector3D.Unit.PLUS_X, 2)).isSameAs(PIECE);
        assertThat(PIECE.clipToSpace(Vector3D.Unit.PLUS_X, 2.5)).isNull();
        assertThat(PIECE.clipToSpace(Vector3D.Unit.MINUS_X, -1)).isNull();
    }

    @Test
    void itsHalvesLieAcrossTheLongerExtent() {
        isRectangle(PIECE.halves()[0], 0, 2, 0, 2);
        isRectangle(PIECE.halves()[1], 2, 4, 0, 2);
        isRectangle(PIECE.halves(1)[0], 0, 4, 0, 1);
        isRectangle(PIECE.halves(1)[1], 0, 4, 1, 2);
        FlatPiece tall = FlatPiece.of(PIECE.frame(), new double[] {-1, 0, 1, 0, 1, 5, -1, 5});
        assertThat(tall.extent()).isEqualTo(5);
        isRectangle(tall.halves()[0], -1, 1, 0, 2.5);
        isRectangle(tall.halves()[1], -1, 1, 2.5, 5);
        FlatPiece even = FlatPiece.of(PIECE.frame(), new double[] {3, 0, 5, 0, 5, 2, 3, 2});
        isRectangle(even.halves()[0], 3, 4, 0, 2);
    }

    private static void isRectangle(FlatPiece piece, double u0, double u1, double v0, double v1) {
        assertThat(piece.size()).isEqualTo(4);
        assertThat(piece.area()).isCloseTo((u1 - u0) * (v1 - v0), within(1e-12));
        assertThat(piece.middle()[0]).isCloseTo((u0 + u1) / 2, within(1e-12));
        assertThat(piece.middle()[1]).isCloseTo((v0 + v1) / 2, within(1e-12));
        assertThat(piece.extent()).isCloseTo(Math.max(u1 - u0, v1 - v0), within(1e-12));
    }
}
