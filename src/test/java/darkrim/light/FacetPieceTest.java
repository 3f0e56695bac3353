package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class FacetPieceTest {
    private static final FacetPiece SLIVER =
            new FacetPiece(Vector3D.of(0, 0, 1), Vector3D.of(40, 0, 1), Vector3D.of(40, 0, 1.1));

    private static double area(FacetPiece piece) {
        return 0.5
                * piece.b()
                        .subtract(piece.a())
                        .cross(piece.c().subtract(piece.a()))
                        .norm();
    }

    private static double longest(FacetPiece piece) {
        return Math.max(
                piece.a().distance(piece.b()),
                Math.max(piece.b().distance(piece.c()), piece.c().distance(piece.a())));
    }

    @Test
    void piecesMakeUpTheWholeAndNoEdgeIsLongerThanTheStep() {
        FacetPiece even = new FacetPiece(Vector3D.of(0, 0, 1), Vector3D.of(4, 1, 2), Vector3D.of(1, 5, 3));
        for (FacetPiece whole : List.of(SLIVER, even)) {
            List<FacetPiece> pieces = whole.pieces(0.5, UnaryOperator.identity(), any -> true);
            assertThat(pieces.stream().mapToDouble(FacetPieceTest::area).sum()).isCloseTo(area(whole), within(1e-9));
            assertThat(pieces).doesNotHaveDuplicates().allMatch(piece -> longest(piece) <= 0.5);
        }
        assertThat(SLIVER.pieces(longest(SLIVER), UnaryOperator.identity(), any -> true))
                .containsExactly(SLIVER);
    }

    /** 80 steps long: no more than three times as many pieces for each of seven halvings, where 80 cuts along each edge would make 6,400. */
    @Test
    void aSliverFallsIntoFewPieces() {
        assertThat(SLIVER.pieces(0.5, UnaryOperator.identity(), any -> true)).hasSizeBetween(80, 2_187);
        UnaryOperator<Vector3D> flat = at -> Vector3D.of(0, 0, at.getZ());
        assertThat(SLIVER.pieces(0.5, flat, any -> true)).containsExactly(SLIVER);
    }

    @Test
    void whatIsNotWantedIsLeftOut() {
        List<FacetPiece> left = SLIVER.pieces(
                0.5,
                UnaryOperator.identity(),
                piece -> Math.min(piece.a().getX(), piece.b().getX()) < 10);
        assertThat(left)
                .isNotEmpty()
                .allMatch(piece -> Math.min(piece.a().getX(), piece.b().getX()) < 10);
        assertThat(SLIVER.pieces(0.5, UnaryOperator.identity(), any -> false)).isEmpty();
    }

    @Test
    void heightsAreThoseOfItsCorners() {
        assertThat(SLIVER.lowest()).isEqualTo(1);
        assertThat(SLIVER.highest()).isEqualTo(1.1);
        assertThat(SLIVER.middle().getZ()).isCloseTo(1 + 0.1 / 3, within(1e-12));
    }
}
