package darkrim.view.window;

import darkrim.view.parts.Hit;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.shape.Line;

/** A mark over a view that keys move. What the mouse does where it points, keys do at the mark: name, select, measure, the menu. */
final class KeyMark {
    private static final double STEP = 16;
    private static final double FINE = 1;
    private static final double ARM = 12;
    private static final double GAP = 4;

    private final Eye eye;
    private final Picking picking;
    private final Consumer<Optional<Hit>> hover;
    private final Group cross = new Group();
    private double x;
    private double y;

    /**
     * @param hover told what is under the mark as it moves
     */
    KeyMark(Eye eye, Picking picking, Consumer<Optional<Hit>> hover) {
        this.eye = eye;
        this.picking = picking;
        this.hover = hover;
        for (int side = 0; side < 4; side++) {
            double right = side == 0 ? 1 : side == 1 ? -1 : 0;
            double down = side == 2 ? 1 : side == 3 ? -1 : 0;
            for (String style : new String[] {"mark-halo", "mark"}) {
                Line line = new Line(GAP * right, GAP * down, ARM * right, ARM * down);
                line.getStyleClass().add(style);
                cross.getChildren().add(line);
            }
        }
        cross.setId("mark");
        cross.setManaged(false);
        cross.setMouseTransparent(true);
        hide();
    }

    Node node() {
        return cross;
    }

    /** Takes the mark away, as when the mouse is used. */
    void hide() {
        cross.setVisible(false);
    }

    /** Does what a key stands for; whether it stands for something here. */
    boolean press(KeyEvent event) {
        double step = event.isShiftDown() ? FINE : STEP;
        boolean moving = event.isShortcutDown() && !event.isAltDown();
        KeyCode code = event.getCode();
        if (moving && code == KeyCode.LEFT) {
            move(-step, 0);
        } else if (moving && code == KeyCode.RIGHT) {
            move(step, 0);
        } else if (moving && code == KeyCode.UP) {
            move(0, -step);
        } else if (moving && code == KeyCode.DOWN) {
            move(0, step);
        } else if (code == KeyCode.ENTER) {
            pick();
        } else if (code == KeyCode.CONTEXT_MENU || (code == KeyCode.F10 && event.isShiftDown())) {
            menu();
        } else if (code == KeyCode.ESCAPE && cross.isVisible()) {
            hide();
            hover.accept(Optional.empty());
        } else {
            return false;
        }
        event.consume();
        return true;
    }

    private void move(double right, double down) {
        if (cross.isVisible()) {
            x = Math.max(0, Math.min(eye.width() - 1, x + right));
            y = Math.max(0, Math.min(eye.height() - 1, y + down));
        }
        show();
    }

    /** In the middle of the view at first, and where it was then. */
    private void show() {
        boolean never = x <= 0 && y <= 0;
        if (never || x >= eye.width() || y >= eye.height()) {
            x = Math.floor(eye.width() / 2);
            y = Math.floor(eye.height() / 2);
        }
        cross.setVisible(true);
        cross.setLayoutX(x);
        cross.setLayoutY(y);
        hover.accept(eye.at(x, y));
    }

    private void pick() {
        if (cross.isVisible()) {
            picking.at(x, y);
        } else {
            show();
        }
    }

    private void menu() {
        show();
        picking.menu(cross.getParent(), x, y);
    }
}
