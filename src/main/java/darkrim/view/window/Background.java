package darkrim.view.window;

import darkrim.view.parts.Stage;
import darkrim.view.work.Facts;
import darkrim.view.work.MapMaker;
import darkrim.view.work.ViewModel;
import darkrim.view.work.WayFinder;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.application.Platform;

/** Asks for maps and ways of light whenever the contents or the selection call for others. */
final class Background implements AutoCloseable {
    private final ViewModel model;
    private final MapMaker maps;
    private final WayFinder ways;
    private Optional<Stage> stage = Optional.empty();
    private Optional<Facts> facts = Optional.empty();
    private Optional<String> selected = Optional.empty();

    Background(ViewModel model, int threads) {
        this.model = model;
        maps = new MapMaker(threads, change -> Platform.runLater(() -> model.show(change)));
        ways = new WayFinder(change -> Platform.runLater(() -> model.show(change)));
        model.onContent(this::follow);
        model.onLook(this::follow);
    }

    private void follow() {
        if (model.content().moving()) {
            // Maps and ways wait until the dimension rests; those of the position that is left are of no use any more.
            maps.stop();
            ways.stop();
            stage = Optional.empty();
            return;
        }
        boolean newLayout = !model.content().stage().equals(stage);
        boolean newFacts = newLayout || !model.content().facts().equals(facts);
        boolean otherFace = !model.look().selected().equals(selected);
        stage = model.content().stage();
        facts = model.content().facts();
        selected = model.look().selected();
        if (stage.isEmpty()) {
            return;
        }
        if (newLayout || otherFace) {
            maps.make(stage.get(), facts, model.content().maps(), mapped(stage.get()));
        }
        if (newFacts || otherFace) {
            ways.find(stage.get(), facts, selected);
        }
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
    }
}
