package darkrim.study.irradiance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Receiver;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.study.irradiance.MapSampling.Round;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CoarseMapTest {
    /** The first map is what a viewer waits for; the time is printed, since a busy machine proves nothing. */
    @Test
    void theFirstMapOfFourDetectorsTellsWhatTheyGet() throws Exception {
        Scene scene = PlacedLayout.of(Path.of("geometries/nightglow-a.yaml")).scene();
        long start = System.nanoTime();
        MapSampling sampling = new MapSampling(scene, MapScenes.tree(scene), 1, Map.of());
        List<SurfaceMap> maps = scene.surfaces().stream()
                .filter(surface -> surface.name().endsWith("/active"))
                .map(surface -> sampling.unsampled(SurfaceCells.of(scene, surface, 16)))
                .toList();
        try (Workers workers = new Workers(2)) {
            maps = sampling.refined(maps, new Round(16, 64), workers, Watch.NONE);
        }
        System.out.printf("first map of %d detectors: %.2f s%n", maps.size(), (System.nanoTime() - start) * 1e-9);
        assertThat(maps).hasSize(4);
        Transport transport = new Transport(scene, MapScenes.tree(scene), 77);
        for (SurfaceMap map : maps) {
            // Every pixel sees the whole pupil, 320 mm away: the light falls with the fourth power of the cosine, to
            // the
            // corner at 38.6 mm in x and y, where that is 0.944, from just over 1 for rays of the near part of the
            // pupil.
            for (int cell : map.cells().filled()) {
                assertThat(map.value(LightKind.DIRECT, cell)).isBetween(0.94, 1.01);
            }
            Estimate whole = transport
                    .batch(new Receiver.OnSurface(map.cells().surface()), LightClass.ONCE_REFLECTED, 0, 50_000)
                    .irradiance();
            double error = Math.hypot(map.meanError(LightKind.ONCE_REFLECTED), whole.standardError());
            // Four looks at 4 standard errors: by chance once in 4,000.
            assertThat(map.mean(LightKind.ONCE_REFLECTED)).isCloseTo(whole.mean(), within(4 * error));
        }
    }
}
