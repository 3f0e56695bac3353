package darkrim.view.window;

import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.view.camera.Camera;
import darkrim.view.files.FileWatch;
import darkrim.view.files.FileWork;
import darkrim.view.files.Memory;
import darkrim.view.look.Look;
import darkrim.view.work.Content;
import darkrim.view.work.Dragging;
import darkrim.view.work.Loader;
import darkrim.view.work.ViewModel;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.control.SplitPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.Screen;
import javafx.stage.Stage;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The window of one layout, or of two side by side. */
public final class ViewerWindow {
    private static final double WIDTH = 1280;
    private static final double HEIGHT = 800;
    private static final double SHARE = 0.75;
    private static final double LEAST_WIDTH = 800;
    private static final double LEAST_HEIGHT = 500;

    private static final KeyCode[] PAGE_KEYS = {
        KeyCode.DIGIT1, KeyCode.DIGIT2, KeyCode.DIGIT3, KeyCode.DIGIT4, KeyCode.DIGIT5
    };

    private final Path layout;
    private final Memory memory;
    private final ViewModel model = new ViewModel(Look.from(new Camera(Vector3D.ZERO, -60, 30, 100, false)));
    private final Viewport viewport = new Viewport(model);
    private final Commands commands = new Commands(model, viewport.eye());
    private final Stage stage;
    private final Loader loader;
    private final FileWatch watch;
    private final Background background;
    private final Dragging dragging;
    private final Pages pages;
    private final Optional<Beside> beside;
    private final ScaleStrip strip;
    private final FileWork files = new FileWork();
    private final AnimationTimer frames = new AnimationTimer() {
        @Override
        public void handle(long now) {
            viewport.draw();
            beside.ifPresent(Beside::draw);
            strip.draw();
        }
    };
    private Runnable closed = () -> {};
    private boolean begun;

    /** Opens the window of one layout alone. */
    public ViewerWindow(Stage stage, Path layout, Effort effort, Memory memory) {
        this(stage, layout, Optional.empty(), effort, memory);
    }

    /**
     * Opens the window; everything else follows in the background.
     *
     * @param stage the stage to use
     * @param layout the layout file
     * @param second another layout file, to be shown beside the first
     * @param effort how hard to work
     * @param memory remembers windows
     */
    public ViewerWindow(Stage stage, Path layout, Optional<Path> second, Effort effort, Memory memory) {
        this.stage = stage;
        this.layout = layout;
        this.memory = memory;
        // One core is left for the window.
        int threads =
                Math.max(1, Math.min(effort.threads(), Runtime.getRuntime().availableProcessors() - 1));
        Effort behind = effort.on(threads).with(MarginScope.LEAST);
        // Before all that follows the model: they listen to both sides.
        beside = second.map(file -> new Beside(model, layout, file, behind));
        loader = new Loader(layout, behind, change -> Platform.runLater(() -> model.show(change)));
        background = new Background(model, threads);
        // A hand waits for it: with all cores.
        dragging = new Dragging(layout, effort, change -> Platform.runLater(() -> model.show(change)));
        watch = new FileWatch(layout, () -> Platform.runLater(this::reload));
        BooleanSupplier comparing = () -> beside.filter(Beside::comparing).isPresent();
        strip = new ScaleStrip(model, comparing);
        PartTreePane tree = new PartTreePane(model, commands);
        StatusLine status = new StatusLine(model);
        PictureDialog picture = new PictureDialog(stage, layout, model, files, comparing);
        ToolStrip tools = new ToolStrip(model, commands, picture::ask);
        FindingBanner banner = new FindingBanner(model, "findings");
        Region views = beside.map(other -> other.middle(banner, viewport))
                .orElseGet(() -> new VBox(banner.node(), viewport.node()));
        VBox.setVgrow(viewport.node(), Priority.ALWAYS);
        VBox.setVgrow(views, Priority.ALWAYS);
        Region middle = new VBox(views, strip.node());
        pages = new Pages(
                model, commands, dragging, loader, new WriteBackAction(model, dragging, layout, files), behind);
        List<Pages> ofEach = Stream.concat(
                        Stream.of(pages), beside.map(other -> other.pages(commands, files, behind)).stream())
                .toList();
        RightSide right = new RightSide(commands, ofEach);
        beside.ifPresent(other -> right.both(other.both()));
        SplitPane split = new SplitPane(tree.node(), middle, right.node());
        split.setDividerPositions(beside.isPresent() ? 0.15 : 0.19, beside.isPresent() ? 0.76 : 0.74);
        SplitPane.setResizableWithParent(tree.node(), false);
        SplitPane.setResizableWithParent(right.node(), false);
        BorderPane root = new BorderPane(split);
        root.setTop(tools.node());
        root.setBottom(status.node());
        Scene scene = new Scene(root, WIDTH, HEIGHT);
        scene.getStylesheets().add(ViewerWindow.class.getResource("window.css").toExternalForm());
        Keys keys = new Keys(model, commands);
        if (beside.isPresent()) {
            keys.add("O", "pages of the other layout", KeyCode.O, right::other);
        }
        viewport.listen(commands, keys, status::under);
        beside.ifPresent(other -> other.listen(commands, keys, status::under));
        shortcut(scene, KeyCode.Z, model::undo);
        shortcut(scene, KeyCode.Y, model::redo);
        shortcut(scene, KeyCode.F, tree::search);
        shortcut(scene, KeyCode.S, picture::ask);
        shortcut(scene, KeyCode.C, () -> right.current().details().copy());
        for (int i = 0; i < PAGE_KEYS.length; i++) {
            int page = i;
            shortcut(scene, PAGE_KEYS[i], () -> right.page(page));
        }
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.F6), this::toView);
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.F1), () -> new KeyHelp(stage, keys).show());
        stage.setScene(scene);
        stage.setMinWidth(LEAST_WIDTH);
        stage.setMinHeight(LEAST_HEIGHT);
        stage.setTitle(layout.getFileName() + " - Darkrim");
        place();
        model.onEitherContent(this::begin);
        stage.setOnHidden(event -> close());
    }

    /** The file has changed. */
    private void reload() {
        dragging.reset();
        loader.load(Optional.empty());
    }

    /** Brings the keys back to the view that is shown. */
    private void toView() {
        beside.filter(Beside::comparing)
                .map(other -> other.viewport().node())
                .orElse(viewport.node())
                .requestFocus();
    }

    private static void shortcut(Scene scene, KeyCode code, Runnable action) {
        scene.getAccelerators().put(new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN), action);
    }

    /** Tells a listener when the window is closed, what is remembered of it kept, and every file written. */
    public void onClosed(Runnable listener) {
        closed = listener;
    }

    /** Shows the window and begins to work. */
    public void show(Optional<Path> result) {
        stage.show();
        viewport.node().requestFocus();
        frames.start();
        loader.load(result);
        watch.begin();
        beside.ifPresent(Beside::begin);
    }

    /** Where the window stood before, if a screen is still there; otherwise in the middle of the screen. */
    private void place() {
        Rectangle2D screen = Screen.getPrimary().getVisualBounds();
        Optional<Rectangle2D> before = memory.recall(layout)
                .map(window -> new Rectangle2D(
                        window.x(),
                        window.y(),
                        Math.max(LEAST_WIDTH, window.width()),
                        Math.max(LEAST_HEIGHT, window.height())))
                .filter(wanted -> Screen.getScreens().stream()
                        .anyMatch(
                                each -> each.getVisualBounds().contains(wanted.getMinX() + 50, wanted.getMinY() + 20)));
        Rectangle2D wanted = before.orElseGet(() -> fitted(screen));
        stage.setX(wanted.getMinX());
        stage.setY(wanted.getMinY());
        stage.setWidth(wanted.getWidth());
        stage.setHeight(wanted.getHeight());
    }

    /** The first window: large enough to work in, most of a larger screen, and all of one that is too small, such as one whose pixels count double. */
    static Rectangle2D fitted(Rectangle2D screen) {
        double width = Math.min(Math.max(WIDTH, SHARE * screen.getWidth()), screen.getWidth());
        double height = Math.min(Math.max(HEIGHT, SHARE * screen.getHeight()), screen.getHeight());
        return new Rectangle2D(
                screen.getMinX() + (screen.getWidth() - width) / 2,
                screen.getMinY() + (screen.getHeight() - height) / 2,
                width,
                height);
    }

    /** The first look, once there is something to look at. */
    private void begin() {
        Content content = model.content();
        List<darkrim.view.parts.Stage> stages = model.stages();
        // The one beside is looked at alone only where the first cannot be read.
        boolean waiting = content.stage().isEmpty() && content.errors().isEmpty();
        if (begun || stages.isEmpty() || waiting) {
            return;
        }
        begun = true;
        Camera first = memory.recall(layout).map(Memory.Window::camera).orElseGet(() -> viewport.first(stages.get(0)));
        model.begin(model.look().with(first));
        stage.setTitle(beside.map(other -> layout.getFileName() + " beside " + other.name())
                        .orElseGet(() -> DetailPane.title(stages.get(0)) + " - " + layout.getFileName())
                + " - Darkrim");
    }

    private void close() {
        try (files) {
            frames.stop();
            if (begun) {
                memory.remember(
                        layout,
                        new Memory.Window(
                                stage.getX(),
                                stage.getY(),
                                stage.getWidth(),
                                stage.getHeight(),
                                model.look().camera()));
            }
            watch.close();
            loader.close();
            dragging.close();
            background.close();
            pages.close();
            beside.ifPresent(Beside::close);
        } finally {
            closed.run();
        }
    }

    /** Says that the program broke: what is shown may no longer be whole. */
    public void broke(Throwable broken) {
        model.show(
                content -> content.noting("the program broke, please close this window and open it again: " + broken));
    }

    /** What the window shows, for tests. */
    ViewModel model() {
        return model;
    }

    /** The side of the second layout, for tests. */
    Optional<Beside> beside() {
        return beside;
    }

    /** The view of the parts, for tests. */
    Viewport viewport() {
        return viewport;
    }
}
