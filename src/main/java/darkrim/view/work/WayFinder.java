package darkrim.view.work;

import darkrim.scene.DistantBody;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.way.Way;
import darkrim.study.way.WaySearch;
import darkrim.view.parts.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** Finds ways of light to a surface in the background, by those of its paths that carry most. */
public final class WayFinder implements AutoCloseable {
    private static final int PATHS = 4;
    private static final int WAYS = 3;
    private static final int TRIES = 40_000;

    private final Errand errand;

    /**
     * @param post takes changes of the contents to the window's thread
     */
    public WayFinder(Consumer<UnaryOperator<Content>> post) {
        errand = new Errand("darkrim-view-ways", post);
    }

    /** Looks for ways of some light to a surface, in the place of those to another. */
    public void find(Stage stage, Optional<Lighting> lighting, Optional<String> receiver) {
        errand.ask((stop, post) -> {
            post.accept(content -> content.following(stage, List.of()));
            Optional<Surface> surface = receiver.flatMap(stage.scene()::surface);
            Optional<SurfaceFacts> known = lighting.flatMap(
                    light -> receiver.map(name -> light.surfaces().get(name)));
            if (surface.isEmpty() || known.isEmpty()) {
                return;
            }
            Scene scene = lighting.get().scene();
            WaySearch search = new WaySearch(scene, lighting.get().tree());
            List<Way> ways = new ArrayList<>();
            for (PathFact path : known.get().paths().stream().limit(PATHS).toList()) {
                Optional<Surface> via = scene.surface(path.via());
                if (via.isPresent()) {
                    ways.addAll(search.find(surface.get(), via.get(), path.reflector(), WAYS, TRIES, stop));
                    List<Way> sofar = lighting.get().source().isPresent() ? near(ways, scene) : List.copyOf(ways);
                    post.accept(content -> content.following(stage, sofar));
                }
            }
        });
    }

    /** Ways from far away, begun near the parts. */
    private static List<Way> near(List<Way> ways, Scene scene) {
        double reach = scene.reach();
        return ways.stream()
                .map(way -> new Way(
                        DistantBody.drawn(reach, way.onPupil(), way.reflected()),
                        way.reflected(),
                        way.arrives(),
                        way.carried()))
                .toList();
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
