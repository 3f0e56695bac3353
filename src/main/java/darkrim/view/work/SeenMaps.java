package darkrim.view.work;

import darkrim.light.Estimate;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.MapSampling;
import darkrim.study.irradiance.MapSampling.Round;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import darkrim.view.look.Light;
import darkrim.view.parts.Stage;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Light on the surfaces of one layout that points see: kept, so that a second look from near by begins with what is known. One thread. */
final class SeenMaps {
    /** Cells along the longer side of a flat surface. */
    private static final int ALONG = 12;

    private final Stage stage;
    private final Lighting lighting;
    private final Light light;
    private final Map<Surface, DarkProof> dark;
    private final MapSampling sampling;
    private final List<SurfaceMap> means = new ArrayList<>();
    /** As they are sampled: {@link #cells} has them in the unit of the light. */
    private final Map<Integer, SurfaceMap> maps = new HashMap<>();

    /**
     * @param stage the layout
     * @param lighting the light, with what is known of it
     * @param light the class of light that is shown
     * @param before what was looked at before: what still holds of it is kept
     */
    SeenMaps(Stage stage, Lighting lighting, Light light, Optional<SeenMaps> before) {
        this.stage = stage;
        this.light = light;
        this.lighting = lighting;
        Scene scene = lighting.scene();
        dark = SurfaceFacts.proofs(scene, lighting.surfaces());
        sampling = new MapSampling(
                scene, lighting.tree(), stage.layout().sampling().seed(), dark);
        scene.surfaces().forEach(surface -> means.add(mean(surface)));
        before.filter(old -> old.lighting.scene() == scene && old.light == light && old.dark.equals(dark))
                .ifPresent(old -> maps.putAll(old.maps));
    }

    /** Whether it is about this. */
    boolean isOf(Stage other, Lighting found, Light shown) {
        return stage.equals(other) && lighting.equals(found) && light == shown;
    }

    private Optional<SurfaceFacts> known(Surface surface) {
        return Optional.ofNullable(lighting.surfaces().get(surface.name()));
    }

    /** The whole surface with the mean that the check found. */
    private SurfaceMap mean(Surface surface) {
        Optional<SurfaceFacts> found = known(surface);
        return new SurfaceMap(
                SurfaceCells.whole(lighting.scene(), surface),
                dark.getOrDefault(surface, DarkProof.NONE),
                List.of(estimate(found.map(SurfaceFacts::direct))),
                List.of(estimate(found.map(SurfaceFacts::onceReflected))),
                0);
    }

    private static Estimate estimate(Optional<Reading> reading) {
        double largest = Double.POSITIVE_INFINITY;
        return reading.filter(value -> !Double.isNaN(value.value()))
                .map(value -> new Estimate(1, value.value(), 0, largest))
                .orElse(Estimate.none(largest));
    }

    /** A map of every surface by number: cells where they are known, otherwise the mean. */
    List<SurfaceMap> all() {
        List<SurfaceMap> all = new ArrayList<>(means);
        cells().forEach(all::set);
        return all;
    }

    /** What is known cell by cell, by number of the surface. */
    Map<Integer, SurfaceMap> cells() {
        Map<Integer, SurfaceMap> relative = new HashMap<>();
        maps.forEach((number, map) -> relative.put(number, map.times(lighting.perRelative())));
        return relative;
    }

    /**
     * Brings some surfaces to a number of rounds of samples.
     *
     * @param surfaces their numbers
     * @param rounds how many
     * @param round what a round is; what the light that is shown does not need is left out
     */
    void refine(int[] surfaces, int rounds, Round round, Workers workers, Watch watch) {
        Round needed = new Round(
                light == Light.ONCE_REFLECTED ? 0 : round.direct(), light == Light.DIRECT ? 0 : round.reflected());
        Scene scene = lighting.scene();
        List<SurfaceMap> behind = new ArrayList<>();
        for (int number : surfaces) {
            Surface surface = scene.surfaces().get(number);
            SurfaceMap map = maps.get(number);
            if (map == null && (SurfaceCells.isFlat(scene, surface) || surface.facetCount() <= MapMaker.MOST_FACETS)) {
                map = sampling.unsampled(SurfaceCells.of(scene, surface, ALONG));
            }
            if (map != null && map.rounds() < rounds) {
                behind.add(map);
            }
        }
        for (SurfaceMap finer : sampling.refined(behind, needed, workers, watch)) {
            if (finer.rounds() > 0) {
                maps.put(finer.cells().surface().index(), finer);
            }
        }
    }
}
