package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.verdict.Verdict;
import darkrim.view.camera.Camera;
import darkrim.view.files.Memory;
import darkrim.view.work.Content;
import darkrim.view.work.ViewModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.TabPane;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;

/** Changes the file of the plate in the window and beside it, for {@link WindowDrive}. */
final class FileDrive {
    private final Stage stage;
    private final Hands hands;
    private final ViewModel model;
    private final Path folder;
    private final Path layout;

    FileDrive(Stage stage, Hands hands, ViewModel model, Path folder, Path layout) {
        this.stage = stage;
        this.hands = hands;
        this.model = model;
        this.folder = folder;
        this.layout = layout;
    }

    private Verdict wide() {
        return model.content().facts().get().requirements().stream()
                .filter(requirement -> requirement.name().equals("wide"))
                .findFirst()
                .orElseThrow()
                .verdict();
    }

    void drags() throws IOException {
        Hands.on(() -> {
            ((TabPane) hands.lookup("pages")).getSelectionModel().select(1);
            return true;
        });
        assertThat(Hands.on(this::wide)).isEqualTo(Verdict.PASS);
        Node slider = hands.find("slider-opening");
        double width = Hands.on(() -> slider.getLayoutBounds().getWidth());
        double middle = Hands.on(() -> slider.getLayoutBounds().getHeight() / 2);
        hands.drag(slider, width / 2, middle, width / 2, 0, MouseButton.PRIMARY);
        Hands.until("the other verdict", 60, () -> wide() == Verdict.FAIL);
        double value = Hands.on(() -> ((Slider) slider).getValue());
        assertThat(value).isGreaterThan(12);
        hands.click("write-back");
        Hands.until(
                "the new file",
                20,
                () -> model.content()
                        .stage()
                        .get()
                        .layout()
                        .dimensions()
                        .get("opening")
                        .text()
                        .startsWith("12"));
        assertThat(Files.readString(layout))
                .contains("   # side of the opening")
                .contains("opening: 12");
        Files.writeString(layout, PlateLayout.TEXT);
        untilTheOpeningIs(10);
    }

    void reloads() throws IOException {
        Content before = Hands.on(model::content);
        Files.writeString(layout, PlateLayout.TEXT.replace("opening: 10", "opening: 10 kg"));
        VBox banner = (VBox) hands.find("findings");
        Hands.until("the error", 20, banner::isVisible);
        String shown = Hands.on(() -> ((Label) banner.getChildren().get(1)).getText());
        assertThat(shown).contains("plate.yaml:5:");
        assertThat(Hands.on(() -> model.content().stage())).isEqualTo(before.stage());
        Files.writeString(layout, PlateLayout.TEXT.replace("opening: 10", "opening: 12"));
        Hands.until("the repair", 20, () -> !banner.isVisible());
        untilTheOpeningIs(12);
    }

    private void untilTheOpeningIs(double side) {
        Hands.until(
                "the layout with an opening of " + side,
                20,
                () -> model.content()
                                .stage()
                                .get()
                                .layout()
                                .dimensions()
                                .get("opening")
                                .value()
                        == side);
    }

    void remembers() {
        Camera camera = Hands.on(() -> model.look().camera());
        Hands.on(() -> {
            stage.close();
            return true;
        });
        Hands.pause(300);
        assertThat(new Memory(folder.resolve("windows.properties")).recall(layout))
                .get()
                .extracting(Memory.Window::camera)
                .isEqualTo(camera);
    }
}
