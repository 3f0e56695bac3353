package darkrim.study.irradiance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Receiver;
import darkrim.light.Transport;
import darkrim.scene.CellGrid;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.VisiblePupil;
import darkrim.study.irradiance.MapSampling.Round;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class MapSamplingTest {
    private static final long SEED = 5;

    private static SurfaceMap sampled(Scene scene, String surface, int along, int threads, Round... rounds) {
        MapSampling sampling = new MapSampling(scene, MapScenes.tree(scene), SEED, Map.of());
        List<SurfaceMap> maps = List.of(
                sampling.unsampled(SurfaceCells.of(scene, scene.surface(surface).orElseThrow(), along)));
        try (Workers workers = new Workers(threads)) {
            for (Round round : rounds) {
                maps = sampling.refined(maps, round, workers, Watch.NONE);
            }
        }
        return maps.get(0);
    }

    /** 100 cells at 5 standard errors: such a test fails by chance once in 17,000. */
    @Test
    void directLightOfACellIsTheMeanOfWhatItsPointsSeeExactly() {
        Scene scene = MapScenes.halfShaded();
        SurfaceMap map = sampled(scene, "floor", 10, 2, new Round(4000, 0));
        VisiblePupil exact = new VisiblePupil(scene, MapScenes.tree(scene));
        CellGrid grid = map.cells().grid().orElseThrow();
        int penumbra = 0;
        for (int cell = 0; cell < grid.count(); cell++) {
            double mean = 0;
            int fine = 16;
            int row = cell / 10;
            for (int i = 0; i < fine; i++) {
                // Along y the light changes by less than a thousandth within a cell.
                Vector3D point = grid.at((cell % 10 + (i + 0.5) / fine) / 10, (row + 0.5) / 10);
                mean += exact.from(point, Vector3D.Unit.PLUS_Z).irradiance() / scene.referenceIrradiance() / fine;
            }
            double error = map.error(LightKind.DIRECT, cell);
            assertThat(map.value(LightKind.DIRECT, cell))
                    .as("cell %d", cell)
                    .isCloseTo(mean, within(5 * error + 1e-3 * mean));
            penumbra += mean > 0.01 && mean < 0.9 ? 1 : 0;
        }
        assertThat(penumbra).isGreaterThanOrEqualTo(10);
    }

    /** Two estimates that are independent: 3 standard errors are left by chance once in 370; the seed is fixed. */
    @Test
    void theMeanOfAMapIsThatOfItsSurface() {
        Scene scene = MapScenes.wall();
        Surface floor = scene.surface("floor").orElseThrow();
        SurfaceMap map = sampled(scene, "floor", 8, 2, new Round(500, 3000));
        Transport transport = new Transport(scene, MapScenes.tree(scene), 77);
        for (LightKind kind : List.of(LightKind.DIRECT, LightKind.ONCE_REFLECTED)) {
            LightClass light = kind == LightKind.DIRECT ? LightClass.DIRECT : LightClass.ONCE_REFLECTED;
            Estimate whole = transport
                    .batch(new Receiver.OnSurface(floor), light, 0, 200_000)
                    .irradiance();
            double error = Math.hypot(whole.standardError(), map.meanError(kind));
            assertThat(map.mean(kind)).as("%s", kind).isCloseTo(whole.mean(), within(3 * error));
            assertThat(error).isLessThan(0.05 * whole.mean());
        }
        // Light from the wall falls off with the distance from it.
        assertThat(map.value(LightKind.ONCE_REFLECTED, 7 + 8 * 4))
                .isGreaterThan(3 * map.value(LightKind.ONCE_REFLECTED, 8 * 4));
        assertThat(map.value(LightKind.TOTAL, 3))
                .isEqualTo(map.value(LightKind.DIRECT, 3) + map.value(LightKind.ONCE_REFLECTED, 3));
    }

    @Test
    void theSameBitsComeFromAnyNumberOfThreads() {
        Scene scene = MapScenes.wall();
        SurfaceMap one = sampled(scene, "floor", 12, 1, new Round(16, 16), new Round(0, 32));
        SurfaceMap four = sampled(scene, "floor", 12, 4, new Round(16, 16), new Round(0, 32));
        assertThat(four.direct()).isEqualTo(one.direct());
        assertThat(four.reflected()).isEqualTo(one.reflected());
    }

    @Test
    void aFurtherRoundAddsSamples() {
        SurfaceMap map = sampled(MapScenes.wall(), "floor", 4, 2, new Round(16, 16), new Round(0, 64));
        assertThat(map.rounds()).isEqualTo(2);
        assertThat(map.direct().get(3).samples()).isEqualTo(16);
        assertThat(map.reflected().get(3).samples()).isEqualTo(80);
    }

    @Test
    void whatIsProvedDarkIsZeroAndReflectsNothing() {
        Scene scene = MapScenes.wall();
        List<Surface> dark = List.of(
                scene.surface("floor").orElseThrow(), scene.surface("wall").orElseThrow());
        MapSampling sampling = new MapSampling(
                scene,
                MapScenes.tree(scene),
                SEED,
                Map.of(dark.get(0), DarkProof.PROVED, dark.get(1), DarkProof.BEHIND_FACETS));
        SurfaceMap map = sampling.unsampled(SurfaceCells.of(scene, dark.get(0), 4));
        assertThat(map.value(LightKind.DIRECT, 0)).isZero();
        assertThat(map.error(LightKind.DIRECT, 0)).isZero();
        assertThat(map.value(LightKind.TOTAL, 0)).isNaN();
        assertThat(map.proof()).isEqualTo(DarkProof.PROVED);
        assertThat(sampling.unsampled(SurfaceCells.of(scene, dark.get(1), 4)).proof())
                .isEqualTo(DarkProof.BEHIND_FACETS);
        try (Workers workers = new Workers(1)) {
            SurfaceMap finer = sampling.refined(List.of(map), new Round(50, 50), workers, Watch.NONE)
                    .get(0);
            assertThat(finer.mean(LightKind.TOTAL)).isZero();
            assertThat(finer.direct().get(0).samples()).isZero();
        }
    }

    @Test
    void stoppedAMapStaysAsItWas() {
        Scene scene = MapScenes.wall();
        MapSampling sampling = new MapSampling(scene, MapScenes.tree(scene), SEED, Map.of());
        List<SurfaceMap> maps = List.of(
                sampling.unsampled(SurfaceCells.of(scene, scene.surface("floor").orElseThrow(), 16)));
        try (Workers workers = new Workers(2)) {
            assertThat(sampling.refined(maps, new Round(8, 8), workers, StoppingWatch.after(5)))
                    .isEqualTo(maps);
        }
    }
}
