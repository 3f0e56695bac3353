package darkrim.view.work;

import darkrim.scene.Scene;
import darkrim.study.irradiance.MapSampling;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Workers;
import darkrim.view.parts.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Makes maps of surfaces in the background: coarse at once, then finer and finer. */
public final class MapMaker implements AutoCloseable {
    /** Cells along the longer side. */
    static final int ALONG = 32;

    /** A curved surface has its facets for cells; one of more has no map. */
    static final int MOST_FACETS = 4096;

    private static final int ROUNDS = 60;
    private static final MapSampling.Round ROUND = new MapSampling.Round(16, 16);
    private static final int LATER = 4;

    private final int threads;
    private final Errand errand;

    /**
     * @param threads number of threads to work with
     * @param post takes changes of the contents to the window's thread
     */
    public MapMaker(int threads, Consumer<UnaryOperator<Content>> post) {
        this.threads = threads;
        errand = new Errand("darkrim-view-maps", post);
    }

    /**
     * Maps surfaces; those that have maps already grow finer.
     *
     * @param stage the layout
     * @param lighting the light, with what is known of it: what is proved dark need not be looked at
     * @param before maps that there are
     * @param names names of the surfaces
     */
    public void make(Stage stage, Lighting lighting, Map<String, SurfaceMap> before, List<String> names) {
        errand.ask((stop, post) -> {
            Scene scene = lighting.scene();
            MapSampling sampling = new MapSampling(
                    scene,
                    lighting.tree(),
                    stage.layout().sampling().seed(),
                    SurfaceFacts.proofs(scene, lighting.surfaces()));
            List<SurfaceMap> maps = new ArrayList<>();
            for (String name : names) {
                scene.surface(name)
                        .filter(surface -> SurfaceCells.isFlat(scene, surface) || surface.facetCount() <= MOST_FACETS)
                        .ifPresent(surface -> maps.add(
                                before.containsKey(name)
                                                && before.get(name).cells().isOf(scene)
                                        ? before.get(name).times(1 / lighting.perRelative())
                                        : sampling.unsampled(SurfaceCells.of(scene, surface, ALONG))));
            }
            refine(sampling, maps, lighting, stop, post);
        });
    }

    private void refine(
            MapSampling sampling,
            List<SurfaceMap> first,
            Lighting lighting,
            BooleanSupplier stop,
            Consumer<UnaryOperator<Content>> post) {
        List<SurfaceMap> maps = first;
        try (Workers workers = new Workers(threads)) {
            for (int round = 0; round < ROUNDS && !maps.isEmpty() && !stop.getAsBoolean(); round++) {
                // One quick round to show something, then longer ones, of which fewer are drawn.
                int times = round == 0 ? 1 : LATER;
                MapSampling.Round samples = new MapSampling.Round(times * ROUND.direct(), times * ROUND.reflected());
                maps = sampling.refined(maps, samples, workers, new Listening(stop));
                List<SurfaceMap> finer = maps.stream()
                        .map(map -> map.times(lighting.perRelative()))
                        .toList();
                post.accept(content -> lighting.source()
                        .map(source -> content.lit(source, facts -> facts.mapped(finer)))
                        .orElseGet(() -> content.mapped(finer)));
            }
        }
    }

    /** Ends what is being mapped, as when a dimension is dragged. */
    public void stop() {
        errand.stop();
    }

    @Override
    public void close() {
        errand.close();
    }
}
