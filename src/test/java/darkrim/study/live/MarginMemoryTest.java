package darkrim.study.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.assembly.ShippedLayouts;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Margin;
import darkrim.shadow.MarginGuess;
import darkrim.shadow.Margins;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Where the search for the next margin begins. */
class MarginMemoryTest {
    private static final List<Surface> SURFACES = scene().surfaces();

    private final MarginMemory memory = new MarginMemory();

    private static Scene scene() {
        return ShippedLayouts.scene(Path.of("geometries/part-block.yaml"));
    }

    private void found(double a, double b, int surface, double millimetres) {
        Margin margin = new Margin(millimetres, false, Optional.empty(), "");
        memory.put("m", Map.of("a", a, "b", b), Optional.of(new Margins.Least(SURFACES.get(surface), margin)));
    }

    private MarginGuess guess(double a, double b) {
        return memory.guess("m", Map.of("a", a, "b", b)).orElseThrow();
    }

    @Test
    void oneDimensionThatIsDraggedOnIsFollowedAlongALine() {
        found(1, 5, 0, 0.3);
        assertThat(guess(2, 5).millimetres()).isEqualTo(0.3);
        found(2, 5, 0, 0.2);
        assertThat(guess(2.5, 5).millimetres()).isCloseTo(0.15, within(1e-15));
        assertThat(guess(0, 5).millimetres()).isCloseTo(0.4, within(1e-15));
        assertThat(guess(2.5, 5).surface()).isEqualTo(SURFACES.get(0).name());
    }

    @Test
    void anotherDimensionOrAnotherSurfaceBeginsWhereItWas() {
        found(1, 5, 0, 0.3);
        found(2, 5, 0, 0.2);
        assertThat(guess(2, 6).millimetres()).isEqualTo(0.2);
        assertThat(guess(3, 6).millimetres()).isEqualTo(0.2);
        found(3, 5, 1, 0.05);
        assertThat(guess(4, 5).millimetres()).isEqualTo(0.05);
        assertThat(guess(4, 5).surface()).isEqualTo(SURFACES.get(1).name());
    }

    @Test
    void whatWasNotFoundIsForgotten() {
        found(1, 5, 0, 0.3);
        memory.put("m", Map.of("a", 2.0, "b", 5.0), Optional.empty());
        assertThat(memory.guess("m", Map.of("a", 2.0, "b", 5.0))).isEmpty();
        assertThat(memory.expected("m", Map.of("a", 2.0, "b", 5.0))).isEmpty();
    }
}
