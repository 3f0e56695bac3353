package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/**
 * The share of the pupil seen by a round surface behind round edges: a pair costs hundreds of times what one of rectangles costs. The work is
 * bounded in steps all the same, so it ends, and at the same place each time.
 */
class LeastShareEffortTest {
    private static final long PAIRS = 5_000;
    private static final Path VANES = Path.of("src/hard/wide-pupil.yaml");

    @Test
    void pairsThatCostMuchAreFewer() throws UnusableInput {
        PlacedScene placed = PlacedScene.of(VANES, Effort.asAsked(), new Findings(), Watch.NONE);
        Surface detector = placed.scene().surface("detector/front").orElseThrow();
        LeastShare least = new LeastShare(placed.scene(), placed.tree(), PAIRS);
        AtomicLong asked = new AtomicLong();
        LeastShare.Bracket found = least.against(detector, 0.999, () -> asked.incrementAndGet() < 0);
        // Asked for each pair and for each point looked at exactly: 5,000 pairs would ask more often than that.
        assertThat(asked.get()).isBetween(20L, PAIRS / 5);
        // The middle sees no more than through the upper vane, 60 mm wide at 243.5 mm of 300, its edge within a chord
        // of 0.02 mm.
        double opening = (60 + 2 * 0.02) / (60 * 1.4043139) * 300 / 243.5;
        assertThat(found.atMost()).isLessThan(opening * opening);
        assertThat(found.atLeast()).isBetween(0.0, found.atMost());
        assertThat(least.against(detector, 0.999, () -> false)).isEqualTo(found);
    }
}
