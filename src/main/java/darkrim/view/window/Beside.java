package darkrim.view.window;

import darkrim.study.Effort;
import darkrim.view.files.FileWatch;
import darkrim.view.files.FileWork;
import darkrim.view.work.Dragging;
import darkrim.view.work.Loader;
import darkrim.view.work.ViewModel;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
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
    private final Dragging dragging;
    private Optional<Pages> pages = Optional.empty();
    private final ToggleButton difference = new ToggleButton("Difference");
    private final GridPane grid = new GridPane();

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
        dragging = new Dragging(layout, effort, change -> Platform.runLater(() -> model.show(change)));
        watch = new FileWatch(layout, () -> Platform.runLater(this::reload));
    }

    /** Both views under their titles. They share the rows, so that both are of one size and one camera shows both at one scale. */
    Region middle(FindingBanner banner, Viewport other) {
        grid.setHgap(4);
        ColumnConstraints half = new ColumnConstraints();
        half.setPercentWidth(50);
        half.setHgrow(Priority.ALWAYS);
        grid.getColumnConstraints().setAll(half, half);
        RowConstraints rest = new RowConstraints();
        rest.setVgrow(Priority.ALWAYS);
        grid.getRowConstraints().setAll(new RowConstraints(), new RowConstraints(), rest);
        difference.setId("difference");
        difference.setMinWidth(Region.USE_PREF_SIZE);
        difference.setTooltip(new Tooltip("One view, coloured by what became of the light of each face (K)"));
        difference.setOnAction(event -> compare(difference.isSelected()));
        Pane after = new SideTitle(model, layout, "After").node();
        HBox.setHgrow(after, Priority.ALWAYS);
        HBox right = new HBox(after, difference);
        right.setAlignment(Pos.CENTER_RIGHT);
        right.getStyleClass().add("side-row");
        grid.addRow(0, new SideTitle(first, firstLayout, "Before").node(), right);
        grid.addRow(1, banner.node(), new FindingBanner(model, "findings-beside").node());
        grid.addRow(2, other.node(), viewport.node());
        return grid;
    }

    private void reload() {
        dragging.reset();
        loader.load(Optional.empty());
    }

    /** The pages of the second layout. */
    Pages pages(Commands commands, FileWork files, Effort effort) {
        Pages made = new Pages(
                model, commands, dragging, loader, new WriteBackAction(model, dragging, layout, files), effort);
        pages = Optional.of(made);
        return made;
    }

    /** Whether the difference is shown. */
    boolean comparing() {
        return viewport.comparing();
    }

    /** The page of what both say. */
    Node both() {
        return new BothPane(first, model).node();
    }

    /** One view with the difference, or both side by side. Errors of either file stay in sight. */
    void compare(boolean on) {
        difference.setSelected(on);
        viewport.compare(on);
        // The title and the banner of the first stay; only its view makes room.
        Node other = grid.getChildren().stream()
                .filter(node -> "viewport".equals(node.getId()))
                .findFirst()
                .orElseThrow();
        other.setVisible(!on);
        GridPane.setColumnIndex(viewport.node(), on ? 0 : 1);
        GridPane.setColumnSpan(viewport.node(), on ? 2 : 1);
        (on ? viewport.node() : other).requestFocus();
    }

    /** Takes mouse and keys as the first view does. */
    void listen(Commands commands, Keys keys, Consumer<String> status) {
        keys.add("K", "difference to the layout before, on or off", KeyCode.K, () -> compare(!viewport.comparing()));
        viewport.listen(commands, keys, status);
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
        dragging.close();
        background.close();
        pages.ifPresent(Pages::close);
    }
}
