package darkrim.study.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.study.LayoutFamily;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Which points are looked at. */
class DesignTest {
    private static final LayoutFamily SHEETS = Sweeps.family("""
            title: Two sheets
            dimensions: {a: 4 mm, b: 5 mm, c: 6 mm}
            beam:
              pupil: {shape: disc, diameter: 20, distance: 200}
            parts:
              screen: {kind: rectangle, width: a, depth: b}
              other: {kind: rectangle, width: c, depth: c, at: [0, 0, -9]}
            requirements:
              dark: {surfaces: screen, direct: none}
            """);

    private static Design design(Optional<Integer> spread, Optional<Double> refine, String... vary) throws Exception {
        return Sweeps.design(SHEETS, spread, refine, vary);
    }

    @Test
    void aGridHasEveryCombinationTheLastRunningFastest() throws Exception {
        Design grid = Sweeps.grid(SHEETS, "a = 1, 2", "b = 1 to 3 step 1");
        assertThat(grid.points(1))
                .containsExactly(
                        Map.of("a", 1.0, "b", 1.0),
                        Map.of("a", 1.0, "b", 2.0),
                        Map.of("a", 1.0, "b", 3.0),
                        Map.of("a", 2.0, "b", 1.0),
                        Map.of("a", 2.0, "b", 2.0),
                        Map.of("a", 2.0, "b", 3.0));
        assertThat(grid.row()).isEqualTo(3);
    }

    /** The first 2^m points of the sequence are a net: each of 2^m equal boxes holds one point, however the sides are halved (Sobol 1967). */
    @Test
    void spreadPointsFillEveryBoxOfANetOnceAndStayInTheirRanges() throws Exception {
        for (long seed = 1; seed <= 20; seed++) {
            List<Map<String, Double>> points = design(Optional.of(64), Optional.empty(), "a = 1 to 3", "b = 10 to 14")
                    .points(seed);
            for (int halvings = 0; halvings <= 6; halvings++) {
                int columns = 1 << halvings;
                int rows = 64 / columns;
                Set<Integer> boxes = new HashSet<>();
                for (Map<String, Double> point : points) {
                    double x = (point.get("a") - 1) / 2;
                    double y = (point.get("b") - 10) / 4;
                    assertThat(x).isBetween(0.0, Math.nextDown(1.0));
                    assertThat(y).isBetween(0.0, Math.nextDown(1.0));
                    boxes.add(((int) (x * columns)) * rows + (int) (y * rows));
                }
                assertThat(boxes).as("seed %d, %d columns", seed, columns).hasSize(64);
            }
        }
    }

    @Test
    void theSeedMovesASpread() throws Exception {
        Design spread = design(Optional.of(8), Optional.empty(), "a = 1 to 3");
        assertThat(spread.points(1)).isEqualTo(spread.points(1)).isNotEqualTo(spread.points(2));
    }

    @Test
    void whatCannotBeDoneIsSaid() {
        assertThatThrownBy(() -> Sweeps.grid(SHEETS, "a = 1, 2", "a = 3, 4")).hasMessage("'a' is varied twice");
        assertThatThrownBy(() -> Sweeps.grid(SHEETS, "a = 1 to 2"))
                .hasMessage("the range of 'a' has no step, expected 'a = A to B step S', or --spread");
        assertThatThrownBy(() -> design(Optional.of(8), Optional.empty(), "a = 1, 2"))
                .hasMessage("with --spread, 'a' needs a range alone, expected 'a = A to B'");
        assertThatThrownBy(() -> design(Optional.empty(), Optional.of(0.1), "a = 1, 2", "b = 1, 2"))
                .hasMessageStartingWith("--refine needs one dimension");
        assertThatThrownBy(() -> design(Optional.empty(), Optional.of(1e-12), "a = 1, 2"))
                .hasMessageStartingWith("--refine asks for less");
    }

    @Test
    void manyPointsMustBeMeantAndTooManyAreRefused() throws Exception {
        // 101^2 = 10,201 and 10^9 points, counted without being made
        assertThatThrownBy(() -> Sweeps.grid(SHEETS, "a = 0 to 100 step 1", "b = 0 to 100 step 1"))
                .hasMessage("these are 10,201 points; if you mean it, say so with --many-points");
        VariationReader reader = new VariationReader(SHEETS);
        Variation large = reader.read("a = 0 to 100 step 1");
        Design meant =
                new Design(List.of(large, reader.read("b = 0 to 100 step 1")), Optional.empty(), Optional.empty());
        meant.check(true);
        assertThat(meant.points(1)).hasSize(10_201);
        Variation huge = reader.read("c = 1 to 1e9 step 1");
        assertThatThrownBy(() -> new Design(List.of(huge), Optional.empty(), Optional.empty()).check(true))
                .hasMessage("these are 1,000,000,000 points, expected at most 1,000,000");
    }
}
