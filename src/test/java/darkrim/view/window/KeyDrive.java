package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.view.parts.Section;
import darkrim.view.work.SeenFrom;
import darkrim.view.work.ViewModel;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.control.TabPane;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Works the window of the plate by keys alone, for {@link WindowDrive}. */
final class KeyDrive {
    /** A step of the mark, pixels. */
    private static final int STEP = 16;

    private final ViewerWindow window;
    private final Stage stage;
    private final Hands hands;
    private final ViewModel model;

    KeyDrive(ViewerWindow window, Stage stage, Hands hands) {
        this.window = window;
        this.stage = stage;
        this.hands = hands;
        model = window.model();
    }

    /** The mouse is laid aside: where it rests it would choose a line of a menu. */
    private void top() {
        hands.moveTo(hands.find("verdict"), 4, 4);
        hands.key(KeyCode.F6);
        hands.key(KeyCode.DIGIT1);
        Hands.until("the top", 20, () -> model.look().camera().elevation() == 90);
    }

    /** Moves the mark to a few pixels beside a point of the layout, by steps and then by pixels. */
    private void markTo(double x, double y, double z, int right, int down) {
        Vector3D to = Hands.on(() -> window.viewport().eye().project(Vector3D.of(x, y, z)));
        Node mark = hands.find("mark");
        if (!Hands.on(mark::isVisible)) {
            hands.key(KeyCode.ENTER);
        }
        press((int) Math.round(to.getX() + right - Hands.on(mark::getLayoutX)), KeyCode.RIGHT, KeyCode.LEFT);
        press((int) Math.round(to.getY() + down - Hands.on(mark::getLayoutY)), KeyCode.DOWN, KeyCode.UP);
    }

    private void press(int pixels, KeyCode more, KeyCode less) {
        KeyCode key = pixels > 0 ? more : less;
        for (int i = 0; i < Math.abs(pixels) / STEP; i++) {
            hands.key(KeyCode.CONTROL, key);
        }
        for (int i = 0; i < Math.abs(pixels) % STEP; i++) {
            hands.key(KeyCode.CONTROL, KeyCode.SHIFT, key);
        }
    }

    /** A mark names and picks a face, and opens its menu. */
    void picks() {
        top();
        markTo(0, 0, 0, 0, 0);
        Label under = (Label) hands.find("under");
        Hands.until("a name", 20, () -> under.getText().startsWith("sheet/front "));
        hands.key(KeyCode.ENTER);
        Hands.until("a selection", 20, () -> model.look().selected().equals(Optional.of("sheet/front")));
        hands.key(KeyCode.SHIFT, KeyCode.F10);
        // The second line: hide this face.
        hands.key(KeyCode.DOWN);
        hands.key(KeyCode.DOWN);
        hands.key(KeyCode.ENTER);
        Hands.until("it is hidden", 20, () -> model.look().hidden().contains("sheet/front"));
        hands.key(KeyCode.A);
        assertThat(Hands.on(() -> model.look().hidden())).isEmpty();
    }

    /** Two points, picked at the mark; corners are caught. */
    void measures() {
        top();
        hands.key(KeyCode.M);
        // Corners are caught from a few pixels away.
        markTo(-20, -20, 21, 4, -4);
        hands.key(KeyCode.ENTER);
        markTo(20, -20, 21, -4, -4);
        hands.key(KeyCode.ENTER);
        Hands.until("a length", 20, () -> model.look().ruler().isWhole());
        assertThat(Hands.on(() -> model.look().ruler().words())).startsWith("40.000 mm ");
        hands.key(KeyCode.ESCAPE);
        hands.key(KeyCode.ESCAPE);
        assertThat(Hands.on(() -> model.look().ruler().points())).isEmpty();
    }

    /** The section plane, by a step and by a tenth of it. */
    void cuts() {
        top();
        hands.key(KeyCode.Y);
        double at = offset();
        hands.key(KeyCode.CLOSE_BRACKET);
        double step = offset() - at;
        assertThat(step).isPositive();
        hands.key(KeyCode.SHIFT, KeyCode.OPEN_BRACKET);
        assertThat(offset()).isCloseTo(at + 0.9 * step, within(1e-9));
        hands.key(KeyCode.Y);
        assertThat(Hands.on(() -> model.look().section())).isEmpty();
    }

    private double offset() {
        return Hands.on(() -> model.look().section().map(Section::offset).orElseThrow());
    }

    /** A cell is read, a profile drawn and a point looked from on the page of maps; F6 leads back. */
    void maps() {
        Hands.on(() -> {
            model.change(look -> look.selecting(Optional.of("sheet/front")));
            return true;
        });
        Hands.until("a map", 60, () -> model.content().maps().containsKey("sheet/front"));
        hands.key(KeyCode.CONTROL, KeyCode.DIGIT3);
        for (int i = 0; i < 6 && !"map-keys".equals(focus()); i++) {
            hands.key(KeyCode.TAB);
        }
        assertThat(focus()).isEqualTo("map-keys");
        hands.key(KeyCode.RIGHT);
        Label reading = (Label) hands.find("map-reading");
        assertThat(Hands.on(reading::getText)).startsWith("cell (");
        String before = Hands.on(reading::getText);
        int blank = colours();
        hands.key(KeyCode.SPACE);
        hands.key(KeyCode.RIGHT);
        hands.key(KeyCode.RIGHT);
        hands.key(KeyCode.SPACE);
        assertThat(Hands.on(reading::getText)).startsWith("cell (").isNotEqualTo(before);
        assertThat(colours()).isGreaterThan(blank);
        hands.key(KeyCode.ENTER);
        Hands.until(
                "what the point sees",
                60,
                () -> model.content()
                        .seen()
                        .filter(SeenFrom::finished)
                        .filter(seen -> seen.point().surface().equals("sheet/front"))
                        .isPresent());
        assertThat(Hands.on(() -> ((TabPane) hands.lookup("pages"))
                        .getSelectionModel()
                        .getSelectedItem()
                        .getText()))
                .isEqualTo("Seen from");
        hands.key(KeyCode.F6);
        assertThat(focus()).isEqualTo("viewport");
    }

    /** How many colours the profile has. */
    private int colours() {
        return Hands.on(() -> {
            WritableImage image = ((Canvas) hands.lookup("profile")).snapshot(null, null);
            Set<Integer> seen = new HashSet<>();
            for (int y = 0; y < image.getHeight(); y++) {
                for (int x = 0; x < image.getWidth(); x++) {
                    seen.add(image.getPixelReader().getArgb(x, y));
                }
            }
            return seen.size();
        });
    }

    private String focus() {
        return Hands.on(() -> stage.getScene().getFocusOwner() == null
                ? ""
                : String.valueOf(stage.getScene().getFocusOwner().getId()));
    }
}
