package darkrim.view.window;

import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.work.Content;
import darkrim.view.work.ViewModel;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.layout.Pane;

/** The one scale of the window, below the view or below both: it has room of its own, and covers no part. Not there while no light is shown. */
final class ScaleStrip {
    private final ViewModel model;
    private final BooleanSupplier comparing;
    private final Canvas canvas = new Canvas();
    private final Pane pane = new Pane(canvas);
    private List<Object> drawn = List.of();

    /**
     * @param comparing whether the difference of two layouts is shown
     */
    ScaleStrip(ViewModel model, BooleanSupplier comparing) {
        this.model = model;
        this.comparing = comparing;
        pane.setId("scale");
        pane.setMinSize(0, ScaleBar.HEIGHT);
        pane.setPrefHeight(ScaleBar.HEIGHT);
        pane.setMaxHeight(ScaleBar.HEIGHT);
        canvas.setHeight(ScaleBar.HEIGHT);
        canvas.setManaged(false);
        canvas.widthProperty().bind(pane.widthProperty());
    }

    Node node() {
        return pane;
    }

    /** Draws what has changed since the last frame. */
    void draw() {
        Look look = model.look();
        List<Object> now = List.of(
                look.light(),
                look.source(),
                look.scale(),
                look.cells(),
                model.content(),
                model.besideContent(),
                comparing.getAsBoolean(),
                pane.getWidth());
        if (isAsBefore(now)) {
            return;
        }
        drawn = now;
        boolean shown = look.light() != Light.NONE && !model.stages().isEmpty();
        pane.setVisible(shown);
        pane.setManaged(shown);
        if (!shown || pane.getWidth() <= 0) {
            return;
        }
        if (comparing.getAsBoolean()) {
            ChangeBar.draw(canvas.getGraphicsContext2D(), pane.getWidth(), look);
        } else {
            ScaleBar.draw(
                    canvas.getGraphicsContext2D(),
                    pane.getWidth(),
                    Scales.of(model),
                    look,
                    watts(look, model.content(), model.besideContent()));
        }
    }

    /** Contents are large and come whole: only one that is another can be otherwise. */
    private boolean isAsBefore(List<Object> now) {
        for (int i = 0; i < now.size(); i++) {
            boolean same = i < drawn.size()
                    && (now.get(i) instanceof Content
                            ? now.get(i) == drawn.get(i)
                            : now.get(i).equals(drawn.get(i)));
            if (!same) {
                return false;
            }
        }
        return true;
    }

    /** How many W/m2 a value of 1 stands for; unknown where it is not, and where two layouts differ in it. */
    static OptionalDouble watts(Look look, Content... contents) {
        List<OptionalDouble> all = Stream.of(contents)
                .flatMap(content -> content.lighting(look.source()).stream())
                .map(lighting -> lighting.watts())
                .distinct()
                .toList();
        return all.size() == 1 ? all.get(0) : OptionalDouble.empty();
    }
}
