package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Placement;
import darkrim.geom.Polygon;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import java.util.List;
import org.junit.jupiter.api.Test;

class AssemblyMemoryTest {
    private final AssemblyMemory memory = new AssemblyMemory();

    private static Part lid(double thickness) {
        return Layouts.part("lid", new Shape.Plate(Polygon.rectangle(60, 50), 3, thickness, List.of()), Placement.NONE);
    }

    @Test
    void aPartOfTheSameShapeKeepsItsFacetsAndOneOfAnotherGetsItsOwn() {
        Pieces first = memory.pieces(lid(1));
        assertThat(memory.pieces(lid(1))).isSameAs(first);
        Pieces thicker = memory.pieces(lid(1.5));
        assertThat(thicker.meshes()).isNotEqualTo(first.meshes());
        // 60 x 50 x 1.5 mm
        assertThat(thicker.meshes()
                        .get(0)
                        .placed("lid", Placement.NONE, lid(1).place())
                        .volume())
                .isEqualTo(4500);
    }

    @Test
    void aPatternSelectsAmongTheSurfacesThatThereAreNow() {
        assertThat(memory.selected("lid/*", List.of("lid/top", "box/top"))).containsExactly("lid/top");
        assertThat(memory.selected("lid/*", List.of("lid/rim", "lid/top", "box/top")))
                .containsExactly("lid/rim", "lid/top");
        assertThat(memory.selected("box", List.of("lid/rim", "lid/top", "box/top")))
                .containsExactly("box/top");
    }
}
