package darkrim.study.star;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.study.star.StarGrid.Square;
import java.util.List;
import org.junit.jupiter.api.Test;

class StarGridTest {
    private static final double FINEST = 0.1;

    /** Of squares two levels finer four share a side with a square, and each of them has it for a neighbour. */
    @Test
    void neighboursAreFoundHoweverSmall() {
        StarGrid grid = new StarGrid(new StarRegion(0, 0, 32, 32), FINEST);
        Square coarse = grid.at(4.5, 4.5).orElseThrow();
        for (Square half : List.copyOf(grid.split(grid.at(5.5, 4.5).orElseThrow()))) {
            grid.split(half);
        }
        List<Square> beside = grid.squares().stream()
                .filter(square -> grid.width(square) == 0.25 && grid.x(square) < 5.25)
                .toList();
        assertThat(beside).hasSize(4);
        assertThat(grid.neighbours(coarse)).containsAll(beside).hasSize(7).doesNotHaveDuplicates();
        assertThat(beside).allMatch(square -> grid.neighbours(square).contains(coarse));
    }
}
