package darkrim.study.irradiance;

import darkrim.layout.Layout;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * A checked layout with maps of its surfaces, for pictures: whole surfaces as the check found them, and cells where they are wanted.
 *
 * @param checked what the check found
 * @param maps a map of every surface, by number
 * @param stopped whether the work was stopped before its end: values may then be missing
 */
public record LitLayout(CheckedLight checked, List<SurfaceMap> maps, boolean stopped) {
    /** Copies the list. */
    public LitLayout {
        maps = List.copyOf(maps);
    }

    /** What the designer wrote. */
    public Layout layout() {
        return checked.layout();
    }

    /** The scene. */
    public Scene scene() {
        return checked.scene();
    }

    /**
     * Where and how finely light is mapped.
     *
     * @param cells whether the surface of a name is split into cells
     * @param along cells along the longer side of a flat one
     * @param round samples of each cell
     */
    public record Fineness(Predicate<String> cells, int along, MapSampling.Round round) {}

    /**
     * Maps the light in a layout that was checked.
     *
     * @param checked what the check found
     * @param fineness where and how finely
     * @param threads number of threads; never changes a result
     * @param watch hears how far it is, and may stop it
     */
    public static LitLayout of(CheckedLight checked, Fineness fineness, int threads, Watch watch) {
        Scene scene = checked.scene();
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        Map<Surface, DarkProof> dark = new HashMap<>();
        for (Surface surface : scene.surfaces()) {
            DarkProof proof = checked.surfaces().get(surface.index()).proof();
            if (proof != DarkProof.NONE) {
                dark.put(surface, proof);
            }
        }
        MapSampling sampling = new MapSampling(scene, tree, checked.seed(), dark);
        List<SurfaceMap> maps = new ArrayList<>(checked.means());
        List<SurfaceMap> fine = scene.surfaces().stream()
                .filter(surface -> fineness.cells().test(surface.name()))
                .map(surface -> sampling.unsampled(SurfaceCells.of(scene, surface, fineness.along())))
                .toList();
        try (Workers workers = new Workers(threads)) {
            for (SurfaceMap map : sampling.refined(fine, fineness.round(), workers, watch)) {
                // A map that was stopped before its first sample says less than the mean that the check found.
                if (map.rounds() > 0) {
                    maps.set(map.cells().surface().index(), map);
                }
            }
        }
        return new LitLayout(checked, maps, checked.stopped() || watch.stop());
    }
}
