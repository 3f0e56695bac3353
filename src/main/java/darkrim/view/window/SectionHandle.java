package darkrim.view.window;

import darkrim.view.camera.Box;
import darkrim.view.parts.Section;
import darkrim.view.work.ViewModel;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Cursor;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseEvent;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** A round handle on the section plane that is dragged along its axis, with the plane's place beside it. */
final class SectionHandle {
    private static final double ARROW = 34;
    /** Where the axis points at the viewer a pixel of the mouse is this share of the parts. */
    private static final double ALONG_SIGHT = 1.0 / 600;

    private final ViewModel model;
    private final Eye eye;
    private final Circle knob = new Circle(9);
    private final Line arrow = new Line();
    private final Label place = new Label();
    private final Group group = new Group(arrow, knob, place);
    private double pressedX;
    private double pressedY;
    private double pressedOffset;

    SectionHandle(ViewModel model, Eye eye) {
        this.model = model;
        this.eye = eye;
        group.setManaged(false);
        knob.setId("section-handle");
        knob.getStyleClass().add("section-knob");
        arrow.getStyleClass().add("section-arrow");
        arrow.setMouseTransparent(true);
        place.getStyleClass().add("plate");
        place.setMouseTransparent(true);
        knob.setCursor(Cursor.HAND);
        Tooltip.install(knob, new Tooltip("Drag to move the section; [ and ] move it, B turns it"));
        knob.setOnMousePressed(event -> {
            pressedX = event.getSceneX();
            pressedY = event.getSceneY();
            pressedOffset = model.look().section().map(Section::offset).orElse(0.0);
            event.consume();
        });
        knob.setOnMouseDragged(this::drag);
        knob.setOnMouseReleased(event -> {
            model.rest();
            event.consume();
        });
    }

    Node node() {
        return group;
    }

    private static Vector3D axis(Section section) {
        return Vector3D.of(section.axis() == 0 ? 1 : 0, section.axis() == 1 ? 1 : 0, section.axis() == 2 ? 1 : 0);
    }

    private void drag(MouseEvent event) {
        Optional<Section> section = model.look().section();
        if (section.isPresent() && model.content().stage().isPresent()) {
            Box box = model.content().stage().get().box();
            double right = event.getSceneX() - pressedX;
            double down = event.getSceneY() - pressedY;
            Vector3D axis = axis(section.get());
            double perPixel = model.look().camera().millimetresPerPixel(on(section.get(), box), eye.height());
            double axisRight = axis.dot(model.look().camera().right());
            double axisDown = -axis.dot(model.look().camera().up());
            double seen = axisRight * axisRight + axisDown * axisDown;
            double moved = seen > 0.04
                    ? (right * axisRight + down * axisDown) * perPixel / seen
                    : -down * ALONG_SIGHT * 2 * box.radius();
            double offset = pressedOffset + moved;
            model.drag(look -> look.cut(look.section().map(plane -> plane.at(offset))));
        }
        event.consume();
    }

    /** The point of the plane that is nearest to the middle of the parts. */
    private static Vector3D on(Section section, Box box) {
        Vector3D centre = box.centre();
        return centre.subtract(section.outward().multiply(section.beyond(centre)));
    }

    /** Follows the look. */
    void follow() {
        Optional<Section> section = model.look().section();
        boolean shown = section.isPresent() && model.content().stage().isPresent();
        group.setVisible(shown);
        if (!shown) {
            return;
        }
        Section plane = section.get();
        Vector3D seen = eye.project(on(plane, model.content().stage().get().box()));
        double x = Math.max(20, Math.min(eye.width() - 20, seen.getX()));
        double y = Math.max(20, Math.min(eye.height() - 60, seen.getY()));
        Vector3D out = plane.outward();
        double right = ARROW * out.dot(model.look().camera().right());
        double up = ARROW * out.dot(model.look().camera().up());
        knob.setCenterX(x);
        knob.setCenterY(y);
        arrow.setStartX(x);
        arrow.setStartY(y);
        arrow.setEndX(x + right);
        arrow.setEndY(y - up);
        place.setText(String.format(Locale.ROOT, "%s = %.2f mm", plane.axisName(), plane.offset()));
        place.relocate(x + 14, y + 10);
    }
}
