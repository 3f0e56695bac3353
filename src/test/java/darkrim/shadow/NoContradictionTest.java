package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NoContradictionTest {
    @Test
    void noSampledRayContradictsAProof() {
        int scenes = Integer.getInteger("scenes", 300);
        int rays = Integer.getInteger("rays", 100_000);
        List<String> found = new ArrayList<>();
        RandomScenes.Tally tally = RandomScenes.contradictions(Long.getLong("seed", 1), scenes, rays, found);
        System.out.println("SHOW " + tally);
        assertThat(found).isEmpty();
        // The test would say nothing if hardly anything were proved, or all of it facing away.
        assertThat(tally.dark()).isGreaterThan(tally.lit());
        assertThat(tally.rays()).isGreaterThan(rays * (long) scenes / 2);
    }
}
