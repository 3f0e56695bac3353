package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Every face of scenes made by chance: 300 of them in a normal run, 10,000 with 10^9 rays with {@code -Dlong=true}. Seeds are fixed; a proof
 * is contradicted by a single clear ray, so there is no false alarm.
 */
class NoContradictionTest {
    private static final boolean LONG = Boolean.getBoolean("long");

    @Test
    void noSampledRayContradictsAProof() {
        int scenes = Integer.getInteger("scenes", LONG ? 10_000 : 300);
        int rays = Integer.getInteger("rays", 100_000);
        List<String> found = new ArrayList<>();
        RandomScenes.Tally tally = RandomScenes.contradictions(Long.getLong("seed", 1), scenes, rays, found);
        assertThat(found).as(tally.toString()).isEmpty();
        // The test would say nothing if hardly anything were proved, or if what is undecided were many.
        assertThat(tally.dark()).as(tally.toString()).isGreaterThan(tally.lit());
        assertThat(tally.undecided()).as(tally.toString()).isLessThan(tally.dark() / 200);
        assertThat(tally.rays()).as(tally.toString()).isGreaterThan(rays * (long) scenes / 2);
    }
}
