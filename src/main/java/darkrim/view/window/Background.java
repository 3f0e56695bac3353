package darkrim.view.window;

import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.Lighting;
import darkrim.view.work.MapMaker;
import darkrim.view.work.SourceFinder;
import darkrim.view.work.ViewModel;
import darkrim.view.work.WayFinder;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.application.Platform;

/** Asks for maps, ways of light and the light of sources whenever the contents, the selection or the source call for others. */
final class Background implements AutoCloseable {
    private final ViewModel model;
    private final MapMaker maps;
    private final WayFinder ways;
    private final SourceFinder sources;
    private Optional<Stage> stage = Optional.empty();
    private Optional<Lighting> lighting = Optional.empty();
    private Optional<String> selected = Optional.empty();
    private Optional<String> sought = Optional.empty();

    Background(ViewModel model, int threads) {
        this.model = model;
        maps = new MapMaker(threads, change -> Platform.runLater(() -> model.show(change)));
        ways = new WayFinder(change -> Platform.runLater(() -> model.show(change)));
        sources = new SourceFinder(threads, change -> Platform.runLater(() -> model.show(change)));
        model.onContent(this::follow);
        model.onLook(this::follow);
    }

    private void follow() {
        Content content = model.content();
        if (content.moving()) {
            // All this waits until the dimension rests; what is of the position that is left is of no use any more.
            maps.stop();
            ways.stop();
            sources.stop();
            stage = Optional.empty();
            sought = Optional.empty();
            return;
        }
        boolean newLayout = !content.stage().equals(stage);
        Optional<Lighting> light = content.lighting(model.look().source());
        boolean otherScene = newLayout || !light.map(Lighting::scene).equals(lighting.map(Lighting::scene));
        boolean otherLight = newLayout || !light.equals(lighting);
        boolean otherFace = !model.look().selected().equals(selected);
        stage = content.stage();
        lighting = light;
        selected = model.look().selected();
        if (stage.isEmpty()) {
            return;
        }
        seek(stage.get(), newLayout);
        if (otherScene || otherFace) {
            light.ifPresentOrElse(
                    now -> maps.make(stage.get(), now, content.maps(model.look().source()), mapped(stage.get())),
                    maps::stop);
        }
        if (otherLight || otherFace) {
            ways.find(stage.get(), light, selected);
        }
    }

    /** Looks for the light of the source that is wanted, unless it is known or being looked for. */
    private void seek(Stage now, boolean newLayout) {
        Optional<String> wanted = model.look().source();
        if (!newLayout && wanted.equals(sought)) {
            return;
        }
        sought = wanted;
        boolean known = wanted.map(model.content().sources()::get)
                .filter(found -> found.progress() == 1)
                .isPresent();
        wanted.flatMap(name -> SourceFinder.source(now, name))
                .filter(source -> !known)
                .ifPresentOrElse(source -> sources.find(now, source), sources::stop);
    }

    /** The selected surface first, then the detectors and what the layout wants maps of. */
    private List<String> mapped(Stage now) {
        Set<String> names = new LinkedHashSet<>();
        selected.filter(name -> now.scene().surface(name).isPresent()).ifPresent(names::add);
        now.scene().surfaces().stream()
                .filter(surface -> surface.grid().isPresent() || surface.name().endsWith("/active"))
                .forEach(surface -> names.add(surface.name()));
        return List.copyOf(names);
    }

    @Override
    public void close() {
        maps.close();
        ways.close();
        sources.close();
    }
}
