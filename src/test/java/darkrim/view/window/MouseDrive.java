package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.view.camera.Camera;
import darkrim.view.work.ViewModel;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Works the picture of the plate with the mouse, for {@link WindowDrive}. */
final class MouseDrive {
    private final ViewerWindow window;
    private final Hands hands;
    private final ViewModel model;

    MouseDrive(ViewerWindow window, Hands hands) {
        this.window = window;
        this.hands = hands;
        model = window.model();
    }

    Node view() {
        return hands.find("viewport");
    }

    /** Where a point of the layout is in the view. */
    Vector3D pixel(double x, double y, double z) {
        return Hands.on(() -> window.viewport().eye().project(Vector3D.of(x, y, z)));
    }

    void top() {
        hands.click(view(), 12, 12);
        hands.key(KeyCode.DIGIT1);
        Hands.until("the top", 20, () -> model.look().camera().elevation() == 90);
    }

    /** What is under the mouse is named, and a click selects it. */
    void picks() {
        top();
        Vector3D middle = pixel(0, 0, 0);
        hands.moveTo(view(), middle.getX(), middle.getY());
        Label under = (Label) hands.find("under");
        Hands.until("a name", 20, () -> under.getText().startsWith("sheet/front "));
        hands.click(view(), middle.getX(), middle.getY());
        Hands.until("a selection", 20, () -> model.look().selected().equals(Optional.of("sheet/front")));
        Label name = (Label) hands.find("selected-name");
        assertThat(Hands.on(name::getText)).isEqualTo("sheet/front");
        Vector3D beside = pixel(15, 15, 21);
        hands.click(view(), beside.getX(), beside.getY());
        Hands.until("another selection", 20, () -> model.look().selected().equals(Optional.of("lid/top")));
    }

    /** Dragging turns the parts about the point under the mouse. */
    void orbits() {
        hands.key(KeyCode.HOME);
        Camera before = Hands.on(() -> model.look().camera());
        Vector3D corner = pixel(15, -15, 21);
        hands.drag(view(), corner.getX(), corner.getY(), 60, 20, MouseButton.PRIMARY);
        Camera after = Hands.on(() -> model.look().camera());
        assertThat(after.azimuth()).isNotEqualTo(before.azimuth());
        assertThat(after.elevation()).isGreaterThan(before.elevation());
        Vector3D now = pixel(15, -15, 21);
        // The mouse meets a pixel, not the point itself: within a pixel or two as it is turned.
        assertThat(Math.hypot(now.getX() - corner.getX(), now.getY() - corner.getY()))
                .isLessThan(3);
    }

    /** The wheel comes nearer to the point under the mouse, and Ctrl+Z takes it back. */
    void zooms() {
        top();
        Camera before = Hands.on(() -> model.look().camera());
        Vector3D corner = pixel(15, 15, 21);
        hands.wheel(view(), corner.getX(), corner.getY(), -2);
        Camera after = Hands.on(() -> model.look().camera());
        assertThat(after.span()).isLessThan(before.span());
        Vector3D now = pixel(15, 15, 21);
        assertThat(Math.hypot(now.getX() - corner.getX(), now.getY() - corner.getY()))
                .isLessThan(2);
        while (!Hands.on(() -> model.look().camera().equals(before)) && Hands.on(model::canUndo)) {
            hands.key(KeyCode.CONTROL, KeyCode.Z);
        }
        assertThat(Hands.on(() -> model.look().camera())).isEqualTo(before);
    }

    /** A section opens the parts, and its handle is dragged. */
    void cuts() {
        hands.click(view(), 12, 12);
        hands.key(KeyCode.HOME);
        hands.key(KeyCode.Y);
        Hands.until("a section", 20, () -> model.look().section().isPresent());
        Hands.pause(300);
        double before = Hands.on(() -> model.look().section().get().offset());
        Node knob = hands.find("section-handle");
        double[] middle = Hands.on(() -> {
            Bounds bounds = knob.getBoundsInLocal();
            return new double[] {bounds.getCenterX(), bounds.getCenterY()};
        });
        hands.drag(knob, middle[0], middle[1], -30, 30, MouseButton.PRIMARY);
        assertThat(Hands.on(() -> model.look().section().get().offset())).isNotEqualTo(before);
        hands.key(KeyCode.Y);
        assertThat(Hands.on(() -> model.look().section())).isEmpty();
    }

    /** The ruler measures between two clicked points in mm. */
    void measures() {
        top();
        hands.key(KeyCode.M);
        Vector3D from = pixel(-20, -20, 21);
        Vector3D to = pixel(20, -20, 21);
        // Beside the corners by a few pixels: they are caught.
        hands.click(view(), from.getX() + 3, from.getY() - 3);
        hands.click(view(), to.getX() - 3, to.getY() - 3);
        Hands.until("a length", 20, () -> model.look().ruler().isWhole());
        assertThat(Hands.on(() -> model.look().ruler().words())).startsWith("40.000 mm ");
        hands.key(KeyCode.ESCAPE);
        assertThat(Hands.on(() -> model.look().ruler().points())).isEmpty();
    }
}
