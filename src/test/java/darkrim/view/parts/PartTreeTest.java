package darkrim.view.parts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class PartTreeTest {
    private static final List<String> NAMES =
            List.of("mosaic/die[1,1]/edge/+x", "mosaic/die[1,1]/edge/-x", "mosaic/die[2,1]/active", "lid/top");

    @Test
    void stepsOfPathsBecomeBranches() {
        PartNode root = PartNode.of(NAMES);
        assertThat(root.children()).extracting(PartNode::step).containsExactly("mosaic", "lid");
        PartNode die = root.children().get(0).children().get(0);
        assertThat(die.path()).isEqualTo("mosaic/die[1,1]");
        assertThat(die.surfaces()).containsExactly(0, 1);
        assertThat(die.children().get(0).children())
                .allMatch(PartNode::isSurface)
                .extracting(PartNode::path)
                .containsExactly(NAMES.get(0), NAMES.get(1));
    }

    @Test
    void wordsMustAllOccurAndPatternsSelectAsInALayout() {
        assertThat(NameSearch.find("", NAMES)).containsExactly(0, 1, 2, 3);
        assertThat(NameSearch.find("EDGE +x", NAMES)).containsExactly(0);
        assertThat(NameSearch.find("mosaic/**/edge/*", NAMES)).containsExactly(0, 1);
        assertThat(NameSearch.find("{lid,mosaic/*/active}", NAMES)).containsExactly(2, 3);
        assertThat(NameSearch.find("{lid", NAMES)).isEmpty();
        assertThat(NameSearch.find("nothing such", NAMES)).isEmpty();
    }

    @Test
    void aBlockHasTwelveEdgesOfItsOwnLengths() {
        Stage stage = Stages.of("part-block.yaml");
        int sides = 0;
        for (int surface : stage.solids().get(0)) {
            sides += stage.edges().get(surface).length / 6;
        }
        // Each of the twelve edges belongs to two of the six faces; the diagonals of the faces are no edges.
        assertThat(sides).isEqualTo(24);
    }
}
