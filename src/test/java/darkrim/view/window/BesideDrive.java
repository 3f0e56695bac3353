package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.study.Effort;
import darkrim.view.camera.Camera;
import darkrim.view.files.Memory;
import darkrim.view.files.Pixels;
import darkrim.view.look.Light;
import darkrim.view.work.FacePair;
import darkrim.view.work.LightChange;
import darkrim.view.work.RequirementPair;
import darkrim.view.work.ViewModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import javafx.geometry.BoundingBox;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Works a window of two layouts, for {@link WindowDrive}. */
final class BesideDrive {
    private BesideDrive() {}

    /** Where a node lies in the window, less a hair: what only touches does not cover. */
    private static Bounds bounds(Node node) {
        Bounds whole = node.localToScene(node.getBoundsInLocal());
        return new BoundingBox(
                whole.getMinX() + 0.5, whole.getMinY() + 0.5, whole.getWidth() - 1, whole.getHeight() - 1);
    }

    /** The scale lies below both views, in a narrow window too. */
    private static void requireNothingCovered(Hands two, Stage second) {
        for (double[] size : new double[][] {{800, 600}, {1000, 640}}) {
            Hands.on(() -> {
                second.setWidth(size[0]);
                second.setHeight(size[1]);
                return true;
            });
            Hands.pause(500);
            Bounds scale = Hands.on(() -> bounds(two.lookup("scale")));
            assertThat(scale.getHeight()).isEqualTo(ScaleBar.HEIGHT - 1);
            assertThat(scale.getWidth()).isGreaterThan(200);
            for (String view : new String[] {"viewport", "viewport-beside"}) {
                assertThat(Hands.on(() -> bounds(two.lookup(view)).intersects(scale)))
                        .as("the scale covers a part of the " + view)
                        .isFalse();
            }
        }
    }

    /** Opens two revisions of the plate, turns, compares and breaks the second. */
    static void run(Path folder) throws IOException {
        Path before = Files.writeString(folder.resolve("before.yaml"), PlateLayout.TEXT);
        Path after = Files.writeString(
                folder.resolve("after.yaml"),
                PlateLayout.TEXT.replace("opening: 10", "opening: 14").replace("revision: A", "revision: B"));
        Stage second = Hands.on(Stage::new);
        ViewerWindow both = Hands.on(() -> {
            second.setX(0);
            second.setY(0);
            second.setWidth(1000);
            second.setHeight(640);
            ViewerWindow opened = new ViewerWindow(
                    second,
                    before,
                    Optional.of(after),
                    new Effort(1, Optional.empty(), Optional.of(100_000L)),
                    new Memory(folder.resolve("windows.properties")));
            opened.show(Optional.empty());
            return opened;
        });
        Hands two = new Hands(second);
        ViewModel left = both.model();
        Beside beside = both.beside().orElseThrow();
        ViewModel right = beside.model();
        Hands.until(
                "both verdicts",
                90,
                () -> left.content().facts().isPresent()
                        && right.content().facts().isPresent());
        assertThat(Hands.on(() -> RequirementPair.of(left.content(), right.content())))
                .filteredOn(RequirementPair::isChanged)
                .extracting(RequirementPair::name)
                .containsExactly("wide");
        Camera camera = Hands.on(() -> left.look().camera());
        Node view = two.find("viewport-beside");
        two.drag(view, 60, 200, 50, 20, MouseButton.PRIMARY);
        assertThat(Hands.on(() -> left.look().camera().azimuth())).isNotEqualTo(camera.azimuth());
        Hands.pause(300);
        // The same point stands at the same place of either view; their widths may differ by the one pixel that cannot
        // be halved.
        Vector3D corner = Vector3D.of(20, 20, 21);
        Vector3D here = Hands.on(() -> both.viewport().eye().project(corner));
        Vector3D there = Hands.on(() -> beside.viewport().eye().project(corner));
        assertThat(Math.abs(here.getX() - there.getX())).isLessThanOrEqualTo(0.5);
        assertThat(here.getY()).isEqualTo(there.getY());
        assertThat(here.getZ()).isEqualTo(there.getZ());
        assertThat(Hands.on(() -> Scales.of(left))).isEqualTo(Hands.on(() -> Scales.of(right)));
        requireNothingCovered(two, second);
        two.click("difference");
        assertThat(Hands.on(() -> beside.viewport().comparing())).isTrue();
        assertThat(Hands.on(() -> FacePair.of("sheet/front", left.content(), right.content())
                        .change(Light.DIRECT)
                        .kind()))
                .isEqualTo(LightChange.Kind.MORE);
        Pixels difference = Hands.on(() -> new Picture(left, true).of(new PictureSize(400, 300), LocalDate.EPOCH));
        Pixels sides = Hands.on(() -> new Picture(left, false).of(new PictureSize(400, 300), LocalDate.EPOCH));
        assertThat(difference.argb())
                .as("a saved difference has the colours of more light")
                .contains(
                        Hands.on(() -> new Differences(left.content(), right.content(), Light.DIRECT, Optional.empty())
                                .argb(right.content()
                                        .stage()
                                        .get()
                                        .scene()
                                        .surface("sheet/front")
                                        .get())));
        assertThat(difference.argb()).isNotEqualTo(sides.argb());
        two.key(KeyCode.K);
        assertThat(Hands.on(() -> beside.viewport().comparing())).isFalse();
        // The pages are those of the first layout until the switch says otherwise.
        two.key(KeyCode.CONTROL, KeyCode.DIGIT3);
        assertThat(Hands.on(() ->
                        ((TextField) two.lookup("slider-opening").getParent().lookup(".text-field")).getText()))
                .isEqualTo("10");
        two.click("pages-after");
        assertThat(Hands.on(() ->
                        ((TextField) two.lookup("slider-opening").getParent().lookup(".text-field")).getText()))
                .isEqualTo("14");
        VBox banner = (VBox) two.find("findings-beside");
        Files.writeString(after, PlateLayout.TEXT.replace("opening: 10", "opening: 10 kg"));
        Hands.until("the error at its side", 20, banner::isVisible);
        assertThat(Hands.on(() -> two.lookup("findings").isVisible())).isFalse();
        assertThat(Hands.on(() -> right.content().stage())).isPresent();
        Hands.on(() -> {
            second.close();
            return true;
        });
    }
}
