package darkrim.view.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.scene.Surface;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.MapSampling;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The active area of nightglow-a is a square of 2040 pixels of 18 um. */
class FlatMapTest {
    private static final double SIDE = 2040 * 0.018;
    private static final Stage STAGE = Stages.of("nightglow-a.yaml");

    private static FlatMap map() {
        Surface active = STAGE.scene().surface("mosaic/die[1,1]/active").orElseThrow();
        MapSampling sampling = new MapSampling(STAGE.scene(), STAGE.tree(), 1, Map.of());
        SurfaceMap map = sampling.unsampled(SurfaceCells.of(STAGE.scene(), active, 8));
        try (Workers workers = new Workers(1)) {
            return FlatMap.of(sampling.refined(List.of(map), new MapSampling.Round(64, 0), workers, Watch.NONE)
                            .get(0))
                    .orElseThrow();
        }
    }

    @Test
    void placesInMmFindTheirCells() {
        FlatMap map = map();
        assertThat(map.width()).isCloseTo(SIDE, within(1e-9));
        assertThat(map.cell(0.01, 0.01)).contains(0);
        assertThat(map.cell(SIDE - 0.01, 0.01)).contains(7);
        assertThat(map.cell(0.01, SIDE - 0.01)).contains(56);
        assertThat(map.cell(-0.01, 1)).isEmpty();
        assertThat(map.cell(1, SIDE + 0.01)).isEmpty();
    }

    @Test
    void aProfileAcrossTheMapReadsEachCellAndNothingBesideIt() {
        FlatMap map = map();
        List<FlatMap.Sample> profile =
                map.profile(LightKind.DIRECT, new double[] {-1, 1}, new double[] {SIDE + 1, 1}, 100);
        assertThat(profile.get(0).value()).isNaN();
        assertThat(profile.get(100).value()).isNaN();
        assertThat(profile.get(100).distance()).isCloseTo(SIDE + 2, within(1e-9));
        assertThat(profile.get(50).value())
                .isEqualTo(map.map()
                        .value(LightKind.DIRECT, map.cell(SIDE / 2 + 1e-9, 1).orElseThrow()));
        // Every pixel sees the whole pupil under less than 10 deg.
        assertThat(profile.get(50).value()).isBetween(0.9, 1.01);
    }

    @Test
    void theCellsAsTrianglesFillTheSurface() {
        FlatMap map = map();
        double[] corners = new CellTriangles(map.map().cells()).corners();
        double area = 0;
        for (int at = 0; at < corners.length; at += 9) {
            area += ((corners[at + 3] - corners[at]) * (corners[at + 7] - corners[at + 1])
                            - (corners[at + 4] - corners[at + 1]) * (corners[at + 6] - corners[at]))
                    / 2;
        }
        assertThat(area).isCloseTo(SIDE * SIDE, within(1e-9));
    }
}
