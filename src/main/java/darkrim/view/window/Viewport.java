package darkrim.view.window;

import darkrim.present.picture.ColourScale;
import darkrim.scene.Surface;
import darkrim.view.camera.Camera;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.Hit;
import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.ViewModel;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;

/** The view of the parts with all that lies over it. It draws what has changed, once a frame. */
final class Viewport {
    private final ViewModel model;
    private final SceneView scene = new SceneView();
    private final Eye eye;
    private final Overlay overlay;
    private final SectionHandle handle;
    private final Canvas canvas = new Canvas();
    private final Label hover = new Label();
    private final Pane pane = new Pane();
    private Content drawnContent = Content.NOTHING;
    private Optional<Look> drawnLook = Optional.empty();
    private boolean resized = true;

    Viewport(ViewModel model) {
        this.model = model;
        eye = new Eye(model, scene);
        overlay = new Overlay(model, eye);
        handle = new SectionHandle(model, eye);
        canvas.setMouseTransparent(true);
        hover.getStyleClass().add("plate");
        hover.setMouseTransparent(true);
        hover.setManaged(false);
        hover.setVisible(false);
        pane.setId("viewport");
        pane.setFocusTraversable(true);
        pane.setMinSize(200, 150);
        pane.getChildren().addAll(scene.node(), canvas, handle.node(), hover);
        pane.widthProperty().addListener(changed -> resize());
        pane.heightProperty().addListener(changed -> resize());
    }

    Pane node() {
        return pane;
    }

    Eye eye() {
        return eye;
    }

    Overlay overlay() {
        return overlay;
    }

    SceneView scene() {
        return scene;
    }

    private void resize() {
        scene.node().setWidth(pane.getWidth());
        scene.node().setHeight(pane.getHeight());
        canvas.setWidth(pane.getWidth());
        canvas.setHeight(pane.getHeight());
        resized = true;
    }

    /** Tells a listener what is under the mouse, in words, and shows its name beside the mouse. */
    MouseGestures mouse(Commands commands, Consumer<String> status) {
        MouseGestures gestures = new MouseGestures(model, eye, commands, hit -> hovered(hit, status));
        gestures.listen(pane);
        return gestures;
    }

    private void hovered(Optional<Hit> hit, Consumer<String> status) {
        hover.setVisible(hit.isPresent());
        if (hit.isEmpty()) {
            status.accept("");
            return;
        }
        String name = hit.get().surface().isPresent() ? hit.get().name() : hit.get().name() + ", cut face";
        hover.setText(name);
        hover.autosize();
        var seen = eye.project(hit.get().point());
        double x = Math.max(4, Math.min(seen.getX() + 16, eye.width() - hover.getWidth() - 4));
        double y = Math.max(4, Math.min(seen.getY() + 18, eye.height() - hover.getHeight() - 4));
        hover.relocate(x, y);
        var at = hit.get().point();
        status.accept(String.format(
                Locale.ROOT, "%s   (%.3f, %.3f, %.3f) mm%s", name, at.getX(), at.getY(), at.getZ(), value(name)));
    }

    private String value(String surface) {
        Light light = model.look().light();
        return model.content()
                .facts()
                .filter(facts -> light != Light.NONE && facts.surfaces().containsKey(surface))
                .map(facts -> "   " + light.words() + " "
                        + facts.surfaces().get(surface).of(light).words())
                .orElse("");
    }

    /** Draws what has changed since the last frame; whether anything was. */
    boolean draw() {
        Content content = model.content();
        Look look = model.look();
        Optional<Stage> stage = content.stage();
        if (stage.isEmpty() || pane.getWidth() <= 0) {
            return false;
        }
        boolean newStage = !drawnContent.stage().equals(stage);
        boolean newFacts = newStage || !drawnContent.facts().equals(content.facts());
        Look before = drawnLook.orElse(null);
        if (!newFacts && !resized && look.equals(before)) {
            return false;
        }
        ColourScale scale = Scales.of(look, content.facts());
        if (newStage) {
            scene.show(stage.get());
        }
        boolean otherParts = newStage
                || before == null
                || !before.hidden().equals(look.hidden())
                || !before.section().equals(look.section());
        if (otherParts) {
            scene.arrange(look);
        }
        if (newFacts
                || before == null
                || before.light() != look.light()
                || !before.scale().equals(look.scale())) {
            scene.paint(look, content.facts(), scale);
        }
        if (otherParts
                || newFacts
                || !before.selected().equals(look.selected())
                || before.verdictMarks() != look.verdictMarks()) {
            scene.outline(look, content.facts());
        }
        scene.move(look);
        overlay.draw(canvas.getGraphicsContext2D(), scale);
        handle.follow();
        drawnContent = content;
        drawnLook = Optional.of(look);
        resized = false;
        return true;
    }

    /** Draws everything over the parts once more. */
    void redraw() {
        resized = true;
    }

    /** The first look at a layout, as it fits the view. */
    Camera first(Stage stage) {
        return Camera.at(stage.box(), eye.aspect());
    }

    /** The surface of a name, if it is shown. */
    Optional<Surface> surface(String name) {
        return model.content().stage().flatMap(stage -> stage.scene().surface(name));
    }
}
