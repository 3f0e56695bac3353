package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * A proof of darkness among many thousands of facets: a pair of pieces looks at most of them again and again. The work is bounded in facets
 * looked at as well as in pairs, so that it ends in a time that does not grow with their number, and at the same place each time.
 */
class DarknessEffortTest {
    private static final Path VANES = Path.of("src/hard/slow-vanes.yaml");

    @Test
    void pairsThatLookAtManyFacetsAreFewer() throws UnusableInput {
        PlacedScene placed = PlacedScene.of(VANES, Effort.asAsked(), new Findings(), Watch.NONE);
        Surface edge = placed.scene().surface("rings/2/edge").orElseThrow();
        DarknessProof proof = new DarknessProof(placed.scene(), placed.tree(), new ProofSettings(0.002, 1, 1e-6));
        Darkness found = proof.of(edge);
        assertThat(found).isInstanceOf(Darkness.Undecided.class);
        // Bounded in pairs alone, each face of the round edge would be begun, and all in the way of its light looked
        // for.
        assertThat(found.effort().pairs()).isBetween(10L, proof.faces(edge).size() / 2L);
        assertThat(proof.of(edge)).isEqualTo(found);
        // The setting of a check leaves enough for a proof.
        assertThat(new DarknessProof(placed.scene(), placed.tree()).of(edge)).isInstanceOf(Darkness.Dark.class);
    }
}
