package darkrim.study.irradiance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.scene.CellGrid;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SurfaceCellsTest {
    private final Scene scene = MapScenes.holed();
    private final Surface ring = scene.surface("ring").orElseThrow();

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 6, 7, 16, 64})
    void cellsFillTheSurface(int along) {
        SurfaceCells cells = SurfaceCells.of(scene, ring, along);
        double sum = 0;
        for (int cell : cells.filled()) {
            sum += cells.area(cell);
        }
        assertThat(cells.count()).isEqualTo(along * along);
        assertThat(sum).isCloseTo(900.0 - 100, within(1e-9));
    }

    @Test
    void cellsInAHoleAreEmptyAndThoseAcrossItsEdgeAreCut() {
        // Cells of 5 mm: the hole is 2 x 2 of them.
        SurfaceCells sixth = SurfaceCells.of(scene, ring, 6);
        assertThat(sixth.filled()).hasSize(32);
        assertThat(sixth.isEmpty(2 + 6 * 2)).isTrue();
        // Cells of 10 mm: the middle one is the hole; of 15 mm: each loses a quarter of it.
        assertThat(SurfaceCells.of(scene, ring, 3).isEmpty(4)).isTrue();
        for (int cell = 0; cell < 4; cell++) {
            assertThat(SurfaceCells.of(scene, ring, 2).area(cell)).isCloseTo(225.0 - 25, within(1e-9));
        }
    }

    @Test
    void piecesHaveTheAreaOfTheirCellAndLieInIt() {
        SurfaceCells cells = SurfaceCells.of(scene, ring, 7);
        CellGrid grid = cells.grid().orElseThrow();
        for (int cell : cells.filled()) {
            double area = 0;
            for (List<Vector3D> piece : cells.polygons(cell)) {
                Vector3D middle = Vector3D.ZERO;
                for (int i = 0; i < piece.size(); i++) {
                    area += piece.get(i)
                                    .cross(piece.get((i + 1) % piece.size()))
                                    .getZ()
                            / 2;
                    middle = middle.add(piece.get(i).multiply(1.0 / piece.size()));
                    assertThat(piece.get(i).getX()).isBetween(at(grid, cell % 7) - 1e-9, at(grid, cell % 7 + 1) + 1e-9);
                }
                assertThat(cells.cellAt(ring.firstFacet(), middle.getX(), middle.getY(), middle.getZ()))
                        .isEqualTo(cell);
            }
            assertThat(area).isCloseTo(cells.area(cell), within(1e-9));
        }
    }

    private static double at(CellGrid grid, int column) {
        return grid.at(column / 7.0, 0).getX();
    }

    @Test
    void cellsOfALongStripAreAboutSquare() {
        Scene wall = MapScenes.wall();
        CellGrid grid = SurfaceCells.of(wall, wall.surface("wall").orElseThrow(), 10)
                .grid()
                .orElseThrow();
        // 20 mm along y, 8 mm high.
        assertThat(grid.columns()).isEqualTo(10);
        assertThat(grid.rows()).isEqualTo(4);
    }

    @Test
    void aSurfaceThatIsNotFlatHasItsFacetsForCells() {
        Surface cap = scene.surface("cap").orElseThrow();
        SurfaceCells cells = SurfaceCells.of(scene, cap, 16);
        assertThat(cells.grid()).isEmpty();
        assertThat(cells.count()).isEqualTo(3);
        assertThat(cells.cellAt(cap.firstFacet() + 2, 0, 0, 0)).isEqualTo(2);
        assertThat(cells.area(1)).isCloseTo(scene.facetArea(cap.firstFacet() + 1), within(1e-12));
    }

    @Test
    void theWholeIsOneCell() {
        SurfaceCells cells = SurfaceCells.whole(scene, ring);
        assertThat(cells.count()).isEqualTo(1);
        assertThat(cells.area(0)).isCloseTo(800.0, within(1e-9));
        assertThat(cells.polygons(0)).hasSize(8);
        assertThat(cells.cellAt(ring.firstFacet() + 5, 3, 3, 1)).isZero();
    }
}
