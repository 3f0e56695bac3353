package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.view.parts.Stages;
import darkrim.view.window.PlateLayout;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadingTest {
    /**
     * A disc of radius 10 mm at 200 mm gives a point on its axis, facing it, E = pi L r^2 / (r^2 + d^2): with L = 1000 W/m2/sr that is
     * 7.83 W/m2 (Lambert 1760).
     */
    @Test
    void whereTheBeamHasARadianceLightIsGivenInWattsPerSquareMetreAsWell(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(
                folder.resolve("bright.yaml"), PlateLayout.TEXT.replace("  pupil: {", "  radiance: 1000\n  pupil: {"));
        assertThat(new Reading(0.5, 0.01).words(Stages.of(file).scene()))
                .isEqualTo("0.500 +- 0.010, 3.92 +- 0.08 W/m2");
        assertThat(Reading.NONE.words(Stages.of(file).scene())).isEqualTo("0");
    }

    @Test
    void withoutARadianceItIsRelativeAlone() {
        assertThat(new Reading(0.5, 0.01).words(Stages.of("nightglow-a.yaml").scene()))
                .isEqualTo("0.500 +- 0.010");
    }
}
