package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is kept from point to point changes no point: each is the same as when nothing was worked out before it. */
class KeptBetweenPointsTest {
    /** Parts change, stay, change back, cannot be built, and are there again. */
    private static final List<Map<String, Double>> POINTS = List.of(
            Map.of("wall_tilt", 2.0),
            Map.of("wall_tilt", 9.0),
            Map.of("opening", 38.8),
            Map.of("opening", -1.0),
            Map.of("wall_tilt", 2.0, "opening", 38.8),
            Map.of("die_spacing", 30.0),
            Map.of("pupil_distance", 250.0),
            Map.of("wall_tilt", 2.0));

    private static PointCheck check() throws Exception {
        return new PointCheck(
                LayoutFamily.of(Path.of("geometries/nightglow-b.yaml")), Optional.empty(), PointSettings.verdicts(1));
    }

    @Test
    void aPointIsTheSameWhateverWasWorkedOutBefore() throws Exception {
        PointCheck keeping = check();
        for (Map<String, Double> chosen : POINTS) {
            assertThat(keeping.at(chosen)).isEqualTo(check().at(chosen));
        }
    }
}
