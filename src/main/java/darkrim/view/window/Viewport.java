package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.present.picture.ColourScale;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.view.camera.Camera;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.Hit;
import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.FacePair;
import darkrim.view.work.Lighting;
import darkrim.view.work.Reading;
import darkrim.view.work.ViewModel;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The view of the parts with all that lies over it. It draws what has changed, once a frame. */
final class Viewport {
    /** So long after the last movement of the camera very many facets are shown whole again. */
    private static final long REST_NANOSECONDS = 300_000_000;

    private final ViewModel model;
    private final SceneView parts = new SceneView();
    private final Eye eye;
    private final Overlay overlay;
    private final SectionHandle handle;
    private final Canvas canvas = new Canvas();
    private final Label hover = new Label();
    private final Pane pane = new Pane();
    private Content drawnContent = Content.NOTHING;
    private Content drawnBeside = Content.NOTHING;
    private Optional<Look> drawnLook = Optional.empty();
    private boolean resized = true;
    private boolean comparing;
    private long moved = System.nanoTime() - REST_NANOSECONDS;

    Viewport(ViewModel model) {
        this.model = model;
        eye = new Eye(model, parts);
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
        pane.getChildren().addAll(parts.node(), canvas, handle.node(), hover);
        pane.widthProperty().addListener(changed -> resize());
        pane.heightProperty().addListener(changed -> resize());
    }

    Pane node() {
        return pane;
    }

    Eye eye() {
        return eye;
    }

    /** Shows the difference to what stands beside, or what is here. */
    void compare(boolean on) {
        comparing = on;
        drawnLook = Optional.empty();
    }

    /** Whether the difference is shown. */
    boolean comparing() {
        return comparing;
    }

    private void resize() {
        parts.node().setWidth(pane.getWidth());
        parts.node().setHeight(pane.getHeight());
        canvas.setWidth(pane.getWidth());
        canvas.setHeight(pane.getHeight());
        resized = true;
    }

    /** Takes mouse and keys; tells a listener in words what the mouse or the mark points at, and shows its name there. */
    void listen(Commands commands, Keys keys, Consumer<String> status) {
        Picking picking = new Picking(model, eye, commands);
        Consumer<Optional<Hit>> told = hit -> hovered(hit, status);
        KeyMark mark = new KeyMark(eye, picking, told);
        pane.getChildren().add(mark.node());
        new MouseGestures(model, eye, commands, picking, hit -> {
                    mark.hide();
                    told.accept(hit);
                })
                .listen(pane);
        pane.setOnKeyPressed(event -> {
            if (!mark.press(event)) {
                keys.press(event);
            }
        });
    }

    private void hovered(Optional<Hit> hit, Consumer<String> status) {
        hover.setVisible(hit.isPresent());
        if (hit.isEmpty()) {
            status.accept("");
            return;
        }
        String name =
                hit.get().surface().isPresent() ? hit.get().name() : hit.get().name() + ", cut face";
        hover.setText(name);
        hover.autosize();
        Vector3D seen = eye.project(hit.get().point());
        double x = Math.max(4, Math.min(seen.getX() + 16, eye.width() - hover.getWidth() - 4));
        double y = Math.max(4, Math.min(seen.getY() + 18, eye.height() - hover.getHeight() - 4));
        hover.relocate(x, y);
        Vector3D at = hit.get().point();
        status.accept(String.format(
                Locale.ROOT,
                "%s   (%s, %s, %s) mm%s",
                name,
                Figures.length(at.getX()),
                Figures.length(at.getY()),
                Figures.length(at.getZ()),
                value(hit.get())));
    }

    /** The value under the mouse: of the cell where there is a map, otherwise of the face. */
    private String value(Hit hit) {
        Look look = model.look();
        Light light = look.light();
        if (light == Light.NONE || hit.surface().isEmpty()) {
            return "";
        }
        if (comparing) {
            FacePair pair = new FacePair(hit.name(), model.besideContent(), model.content(), look.source());
            return "   " + look.lightWords() + ", mean of the face: "
                    + pair.absence().orElse(pair.change(light).words());
        }
        Optional<Lighting> lighting = model.content().lighting(look.source());
        if (lighting.isEmpty()) {
            return "";
        }
        SurfaceMap map = look.cells() ? model.content().maps(look.source()).get(hit.name()) : null;
        if (map != null) {
            Vector3D at = hit.point();
            int cell = map.cells().cellAt(hit.facet(), at.getX(), at.getY(), at.getZ());
            return "   " + look.lightWords() + ", this cell "
                    + lighting.get().words(Reading.of(map, light.kind(), cell));
        }
        return Optional.ofNullable(lighting.get().surfaces().get(hit.name()))
                .map(known -> "   " + look.lightWords() + ", mean of the face "
                        + lighting.get().words(known.of(light)))
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
        boolean newSources = !drawnContent.sources().equals(content.sources());
        boolean newMaps = newStage || newSources || !drawnContent.maps().equals(content.maps());
        boolean newWays = newStage || !drawnContent.ways().equals(content.ways());
        Content beside = model.besideContent();
        // Both sides share one scale: what is found beside can change the colours here.
        boolean newScale = !drawnBeside.stage().equals(beside.stage())
                || !drawnBeside.facts().equals(beside.facts())
                || !drawnBeside.sources().equals(beside.sources())
                || !drawnBeside.maps().equals(beside.maps());
        boolean moving = before != null && !look.camera().equals(before.camera());
        moved = moving ? System.nanoTime() : moved;
        boolean otherDetail = parts.coarsen(moving || System.nanoTime() - moved < REST_NANOSECONDS);
        if (!newFacts && !newMaps && !newWays && !newScale && !resized && look.equals(before)) {
            return otherDetail;
        }
        ColourScale scale = Scales.of(model);
        Optional<Differences> differences = comparing ? Differences.of(look, beside, content) : Optional.empty();
        if (newStage) {
            parts.show(stage.get());
        }
        boolean otherParts = newStage
                || before == null
                || !before.hidden().equals(look.hidden())
                || !before.section().equals(look.section());
        boolean otherLight = before == null
                || before.light() != look.light()
                || !before.source().equals(look.source());
        if (otherParts) {
            parts.arrange(look);
        }
        if (newFacts
                || newMaps
                || newScale
                || before == null
                || (look.cells() && !before.section().equals(look.section()))
                || before.cells() != look.cells()
                || otherLight
                || !before.hidden().equals(look.hidden())
                || !before.scale().equals(look.scale())) {
            differences.ifPresentOrElse(found -> parts.paint(look, found), () -> parts.paint(look, content, scale));
        }
        if (otherParts
                || newFacts
                || otherLight
                || !before.selected().equals(look.selected())
                || before.verdictMarks() != look.verdictMarks()) {
            // Outlines of verdicts would be taken for those of faces that are gone.
            parts.outline(look.marking(look.verdictMarks() && differences.isEmpty()), content.facts());
        }
        if (newWays || newFacts || newSources || otherLight || !look.selected().equals(before.selected())) {
            overlay.mark(content.ways());
            parts.draw(PathLines.of(content.ways(), PathLines.straight(look, content)));
        }
        parts.move(look);
        overlay.draw(canvas.getGraphicsContext2D(), differences);
        handle.follow();
        drawnContent = content;
        drawnBeside = beside;
        drawnLook = Optional.of(look);
        resized = false;
        return true;
    }

    /** The first look at a layout, as it fits the view. */
    Camera first(Stage stage) {
        return eye.fitted(Camera.at(stage.box(), 1), stage.box());
    }
}
