package darkrim.view.window;

import darkrim.study.Effort;
import darkrim.view.files.FileWatch;
import darkrim.view.work.Loader;
import darkrim.view.work.ViewModel;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.RowConstraints;

/** A second layout beside the first: contents, file and work of its own, and the first one's look. */
final class Beside implements AutoCloseable {
    private final ViewModel first;
    private final ViewModel model;
    private final Path firstLayout;
    private final Path layout;
    private final Viewport viewport;
    private final Loader loader;
    private final FileWatch watch;
    private final Background background;

    /**
     * @param first what is shown of the first layout
     * @param firstLayout its file
     * @param layout the second layout's file
     * @param effort how hard to work
     */
    Beside(ViewModel first, Path firstLayout, Path layout, Effort effort) {
        this.first = first;
        this.firstLayout = firstLayout;
        this.layout = layout;
        model = first.beside();
        viewport = new Viewport(model);
        viewport.node().setId("viewport-beside");
        loader = new Loader(layout, effort, change -> Platform.runLater(() -> model.show(change)));
        background = new Background(model, effort.threads());
        watch = new FileWatch(layout, () -> Platform.runLater(() -> loader.load(Optional.empty())));
    }

    /** Both views under their titles. They share the rows, so that both are of one size and one camera shows both at one scale. */
    Region middle(FindingBanner banner, Viewport other) {
        GridPane grid = new GridPane();
        grid.setHgap(4);
        ColumnConstraints half = new ColumnConstraints();
        half.setPercentWidth(50);
        half.setHgrow(Priority.ALWAYS);
        grid.getColumnConstraints().setAll(half, half);
        RowConstraints rest = new RowConstraints();
        rest.setVgrow(Priority.ALWAYS);
        grid.getRowConstraints().setAll(new RowConstraints(), new RowConstraints(), rest);
        grid.addRow(
                0, new SideTitle(first, firstLayout, "Before").node(), new SideTitle(model, layout, "After").node());
        grid.addRow(1, banner.node(), new FindingBanner(model, "findings-beside").node());
        grid.addRow(2, other.node(), viewport.node());
        return grid;
    }

    /** The page of what both say. */
    Node both() {
        return new BothPane(first, model).node();
    }

    /** Takes mouse and keys as the first view does. */
    void listen(Commands commands, Keys keys, Consumer<String> status) {
        viewport.mouse(commands, status);
        viewport.node().setOnKeyPressed(keys::press);
    }

    /** Begins to work. */
    void begin() {
        loader.load(Optional.empty());
        watch.begin();
    }

    void draw() {
        viewport.draw();
    }

    /** The name of the second layout's file. */
    String name() {
        return String.valueOf(layout.getFileName());
    }

    /** What is shown of the second layout. */
    ViewModel model() {
        return model;
    }

    /** The view of the second layout. */
    Viewport viewport() {
        return viewport;
    }

    @Override
    public void close() {
        watch.close();
        loader.close();
        background.close();
    }
}
