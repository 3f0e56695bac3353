package darkrim.view.work;

import darkrim.layout.SourceSpec;
import darkrim.study.Effort;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.MapSampling;
import darkrim.study.irradiance.PlacedLayout;
import darkrim.study.irradiance.SourceLight;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.verdict.Workers;
import darkrim.view.parts.Stage;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Finds the light of sources beside the beam in the background: a first look at all surfaces, then what {@code draw --source} finds. */
public final class SourceFinder implements AutoCloseable {
    private static final MapSampling.Round GLANCE = new MapSampling.Round(128, 128);

    private final int threads;
    private final Errand errand;

    /**
     * @param threads number of threads to work with
     * @param post takes changes of the contents to the window's thread
     */
    public SourceFinder(int threads, Consumer<UnaryOperator<Content>> post) {
        this.threads = threads;
        errand = new Errand("darkrim-view-source", post);
    }

    /** The distant sources of a layout, in the order of the file. */
    public static List<SourceSpec.Distant> sources(Stage stage) {
        return stage.layout().sources().stream()
                .filter(SourceSpec.Distant.class::isInstance)
                .map(SourceSpec.Distant.class::cast)
                .toList();
    }

    /** The distant source of a name. */
    public static Optional<SourceSpec.Distant> source(Stage stage, String name) {
        return sources(stage).stream().filter(each -> each.name().equals(name)).findFirst();
    }

    /** Looks for the light of a source, in the place of what was looked for before. */
    public void find(Stage stage, SourceSpec.Distant source) {
        errand.ask((stop, post) -> {
            SourceFacts nothing = SourceFacts.unknown(stage, source);
            long seed = stage.layout().sampling().seed();
            MapSampling sampling = new MapSampling(nothing.scene(), nothing.tree(), seed, Map.of());
            List<SurfaceMap> whole = nothing.scene().surfaces().stream()
                    .map(surface -> sampling.unsampled(SurfaceCells.whole(nothing.scene(), surface)))
                    .toList();
            List<SurfaceMap> means;
            try (Workers workers = new Workers(threads)) {
                means = sampling.refined(whole, GLANCE, workers, new Listening(stop));
            }
            if (stop.getAsBoolean()) {
                return;
            }
            SourceFacts glance = nothing.glanced(means);
            post.accept(content -> content.lit(stage, glance));
            CheckedLight light = SourceLight.of(
                    new PlacedLayout(stage.layout(), stage.scene(), stage.warnings()),
                    source.name(),
                    glance.scene(),
                    glance.tree(),
                    new Effort(threads, Optional.of(seed), Optional.empty()),
                    new Listening(stop, (step, done, most) -> progress(source.name(), done, most, post)));
            if (!stop.getAsBoolean()) {
                post.accept(content -> content.lit(source.name(), facts -> facts.found(light)));
            }
        });
    }

    private static void progress(String source, long done, long most, Consumer<UnaryOperator<Content>> post) {
        // Less than 1: the last surface is not done before all are shown.
        double share = (double) done / (most + 1);
        post.accept(content -> content.lit(source, facts -> facts.progressed(share)));
    }

    /** Ends what is being looked for, as when a dimension is dragged. */
    public void stop() {
        errand.stop();
    }

    @Override
    public void close() {
        errand.close();
    }
}
