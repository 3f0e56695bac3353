package darkrim.view.window;

import darkrim.view.camera.Camera;
import darkrim.view.parts.Hit;
import darkrim.view.work.ViewModel;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Turns the mouse into looks: orbit about what is under the cursor, pan, zoom to the cursor, select, measure. */
final class MouseGestures {
    private static final double DEGREES_PER_PIXEL = 0.35;
    /** Less than this is a click, pixels. */
    private static final double CLICK = 4;
    /** One notch of the wheel. */
    private static final double NOTCH = 40;

    private static final double ZOOM_PER_NOTCH = 0.85;

    private final ViewModel model;
    private final Eye eye;
    private final Commands commands;
    private final Picking picking;
    private final Consumer<Optional<Hit>> hover;
    private double pressedX;
    private double pressedY;
    private Camera pressedCamera;
    private Vector3D pivot = Vector3D.ZERO;
    private boolean moved;

    /**
     * @param hover told what is under the mouse as it moves
     */
    MouseGestures(ViewModel model, Eye eye, Commands commands, Picking picking, Consumer<Optional<Hit>> hover) {
        this.model = model;
        this.eye = eye;
        this.commands = commands;
        this.picking = picking;
        this.hover = hover;
    }

    /** Listens to a node that covers the view. */
    void listen(Node node) {
        node.setOnMousePressed(this::press);
        node.setOnMouseDragged(this::drag);
        node.setOnMouseReleased(this::release);
        node.setOnMouseMoved(event -> hover.accept(eye.at(event.getX(), event.getY())));
        node.setOnMouseExited(event -> hover.accept(Optional.empty()));
        node.setOnScroll(this::scroll);
    }

    private void press(MouseEvent event) {
        ((Node) event.getSource()).requestFocus();
        pressedX = event.getX();
        pressedY = event.getY();
        pressedCamera = model.look().camera();
        pivot = under(pressedX, pressedY);
        moved = false;
    }

    /** What is under the cursor, or else the point at the depth of the focus. */
    private Vector3D under(double x, double y) {
        Camera camera = model.look().camera();
        return eye.at(x, y).map(Hit::point).orElseGet(() -> {
            Vector3D line = camera.through(x, y, eye.width(), eye.height(), camera.distance())
                    .direction();
            Vector3D origin = camera.through(x, y, eye.width(), eye.height(), camera.distance())
                    .origin();
            double depth = camera.distance() / line.dot(camera.back().negate());
            return origin.add(line.multiply(depth));
        });
    }

    private void drag(MouseEvent event) {
        double right = event.getX() - pressedX;
        double down = event.getY() - pressedY;
        if (pressedCamera == null || (!moved && Math.hypot(right, down) < CLICK)) {
            return;
        }
        moved = true;
        Camera camera;
        if (event.getButton() == MouseButton.PRIMARY && !event.isShiftDown()) {
            camera = pressedCamera.orbited(pivot, -right * DEGREES_PER_PIXEL, down * DEGREES_PER_PIXEL);
        } else {
            double scale = pressedCamera.millimetresPerPixel(pivot, eye.height());
            camera = pressedCamera.panned(right * scale, down * scale);
        }
        model.drag(look -> look.with(camera));
    }

    private void release(MouseEvent event) {
        model.rest();
        if (moved || pressedCamera == null) {
            return;
        }
        if (event.getButton() == MouseButton.SECONDARY) {
            picking.menu((Node) event.getSource(), event.getX(), event.getY());
        } else if (event.getButton() == MouseButton.PRIMARY) {
            boolean selecting = !commands.measuring();
            picking.at(event.getX(), event.getY());
            if (selecting && event.getClickCount() == 2) {
                commands.camera().fitSelection();
            }
        }
    }

    private void scroll(ScrollEvent event) {
        if (event.getDeltaY() == 0) {
            return;
        }
        double factor = StrictMath.pow(ZOOM_PER_NOTCH, event.getDeltaY() / NOTCH);
        Vector3D about = under(event.getX(), event.getY());
        model.change(look -> look.with(look.camera().zoomed(about, factor)));
    }
}
