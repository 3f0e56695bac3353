package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.light.Estimate;
import darkrim.scene.Surface;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.view.parts.Stage;
import darkrim.view.parts.Stages;
import darkrim.view.window.PlateLayout;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
        assertThat(new Reading(0.5, 0.01).words(watts(Stages.of(file)))).isEqualTo("0.500 +- 0.010, 3.92 +- 0.08 W/m2");
        assertThat(Reading.NONE.words(watts(Stages.of(file)))).isEqualTo("0");
    }

    @Test
    void withoutARadianceItIsRelativeAlone() {
        assertThat(new Reading(0.5, 0.01).words(watts(Stages.of("nightglow-a.yaml"))))
                .isEqualTo("0.500 +- 0.010");
    }

    private static OptionalDouble watts(Stage stage) {
        return Lighting.of(stage, Optional.empty()).watts();
    }

    @Test
    void aCellWhereNoSampleMetLightIsNoProvedZero() throws Exception {
        Stage stage = Stages.of("nightglow-a.yaml");
        Surface surface = stage.scene().surfaces().get(0);
        Estimate none = new Estimate(100, 0, 0, 2);
        SurfaceMap sampled = new SurfaceMap(
                SurfaceCells.whole(stage.scene(), surface),
                DarkProof.NONE,
                List.of(none),
                List.of(new Estimate(100, 0.1, 0.04, 2)),
                1);
        assertThat(Reading.of(sampled, LightKind.DIRECT, 0).words()).isEqualTo("none found");
        assertThat(Reading.of(sampled, LightKind.ONCE_REFLECTED, 0)).isEqualTo(new Reading(0.1, 0.02));
        SurfaceMap proved = new SurfaceMap(sampled.cells(), DarkProof.PROVED, sampled.direct(), sampled.reflected(), 1);
        assertThat(Reading.of(proved, LightKind.DIRECT, 0).words()).isEqualTo("0");
        SurfaceMap behind =
                new SurfaceMap(sampled.cells(), DarkProof.BEHIND_FACETS, sampled.direct(), sampled.reflected(), 1);
        assertThat(Reading.of(behind, LightKind.DIRECT, 0).words()).isEqualTo("dark behind the facets");
        assertThat(Reading.of(behind, LightKind.TOTAL, 0)).isEqualTo(new Reading(0.1, 0.02, true));
        SurfaceMap unsampled = SurfaceMap.unsampled(sampled.cells(), DarkProof.NONE);
        assertThat(Reading.of(unsampled, LightKind.TOTAL, 0).words()).isEqualTo("not measured");
    }

    @Test
    void lightOfWhichNoneWasFoundAddsNothingWhereNobodyKnowsItsError() {
        Reading none = Reading.of(new Estimate(50, 0, 0, Double.POSITIVE_INFINITY));
        Reading some = new Reading(0.3, 0.01);
        assertThat(some.and(none)).isEqualTo(some);
        assertThat(none.and(some)).isEqualTo(some);
        assertThat(none.and(none).words()).isEqualTo("none found");
        assertThat(some.and(new Reading(0, 0.01)).error()).isCloseTo(Math.sqrt(2) * 0.01, within(1e-15));
        assertThat(some.and(Reading.UNKNOWN).words()).isEqualTo("not measured");
    }

    @Test
    void theDoubtAboutFacetsStaysInTheSumOfBothLights() {
        Reading dim = new Reading(1e-5, 1e-7);
        assertThat(Reading.BEHIND_FACETS.and(Reading.NONE)).isEqualTo(Reading.BEHIND_FACETS);
        assertThat(Reading.NONE.and(Reading.BEHIND_FACETS)).isEqualTo(Reading.BEHIND_FACETS);
        assertThat(Reading.BEHIND_FACETS.and(dim).words())
                .isEqualTo(dim.words() + ", direct light " + DarkProof.BEHIND_FACETS.words());
        assertThat(Reading.BEHIND_FACETS.and(Reading.UNKNOWN)).isEqualTo(Reading.UNKNOWN);
    }
}
