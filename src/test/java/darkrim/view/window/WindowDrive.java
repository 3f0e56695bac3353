package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.picture.ColourScale;
import darkrim.present.picture.SeenPicture;
import darkrim.study.Effort;
import darkrim.verdict.Verdict;
import darkrim.view.camera.Camera;
import darkrim.view.camera.Direction;
import darkrim.view.files.Memory;
import darkrim.view.files.PictureFile;
import darkrim.view.files.Pixels;
import darkrim.view.look.Light;
import darkrim.view.work.Content;
import darkrim.view.work.SeenFrom;
import darkrim.view.work.ViewModel;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.ConditionalFeature;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Works a window with a real mouse and real keys, in a process of its own with a display. Prints a line for each claim; {@link WindowIT} reads
 * them. Arguments: a folder to work in.
 */
public final class WindowDrive {
    private static final double WIDTH = 1000;

    private static final double HEIGHT = 640;

    private static final int LOOKS = 25;

    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private final Path folder;

    private final Path layout;

    private final ViewerWindow window;

    private final Stage stage;

    private final Hands hands;

    private final ViewModel model;
    private final MouseDrive mouse;

    private WindowDrive(Path folder) throws IOException {
        this.folder = folder;
        layout = Files.writeString(folder.resolve("plate.yaml"), PlateLayout.TEXT);
        stage = Hands.on(Stage::new);
        Memory memory = new Memory(folder.resolve("windows.properties"));
        window = Hands.on(() -> {
            stage.setX(0);
            stage.setY(0);
            stage.setWidth(WIDTH);
            stage.setHeight(HEIGHT);
            return new ViewerWindow(stage, layout, new Effort(1, Optional.empty(), Optional.of(100_000L)), memory);
        });
        hands = new Hands(stage);
        model = window.model();
        mouse = new MouseDrive(window, hands);
    }

    /** A claim that is tried. */
    private interface Claim {
        void hold() throws Exception;
    }

    private static void claim(String words, Claim claim) {
        try {
            claim.hold();
            System.out.println("holds: " + words);
        } catch (AssertionError | Exception failure) {
            System.out.println("fails: " + words + ": "
                    + String.valueOf(failure.getMessage()).strip().replaceAll("\\s+", " "));
        }
    }

    /** Runs all claims; ends with 2 where there is no display with three dimensions. */
    public static void main(String[] arguments) throws Exception {
        if (!begins()) {
            System.out.println("no three-dimensional pictures here");
            System.exit(2);
        }
        new WindowDrive(Path.of(arguments[0])).run();
        System.exit(0);
    }

    /** Starts the toolkit; whether it can draw three dimensions. */
    static boolean begins() throws InterruptedException {
        TOOLKIT.setLevel(Level.SEVERE);
        CountDownLatch begun = new CountDownLatch(1);
        boolean[] solid = {false};
        Platform.startup(() -> {
            // One window is closed before the next is opened.
            Platform.setImplicitExit(false);
            solid[0] = Platform.isSupported(ConditionalFeature.SCENE3D);
            begun.countDown();
        });
        return begun.await(30, TimeUnit.SECONDS) && solid[0];
    }

    private void run() {
        claim("the window is there at once, the parts soon, values and a verdict after them", this::opens);
        claim("what is under the mouse is named, and a click selects it", mouse::picks);
        claim("dragging turns the parts about the point under the mouse", mouse::orbits);
        claim("the wheel comes nearer to the point under the mouse, and Ctrl+Z takes it back", mouse::zooms);
        claim("a face has exactly the colour of its value on the scale", this::colours);
        claim("keys change the class of light, the direction and the projection", this::keys);
        claim("a section opens the parts, and its handle is dragged", mouse::cuts);
        claim("the ruler measures between two clicked points in mm", mouse::measures);
        KeyDrive keys = new KeyDrive(window, stage, hands);
        claim("keys alone name and pick a face, and open its menu", keys::picks);
        claim("keys alone measure between two points in mm", keys::measures);
        claim("keys alone move a section, by a step or a tenth of it", keys::cuts);
        claim("keys alone read a map, draw a profile and look from a cell", keys::maps);
        claim("a search finds faces by words, and keys alone hide and show", this::searches);
        claim("a picture is saved whole, in the size that was chosen", this::saves);
        claim(
                "S shows what the clicked point sees, with the pupil in it, also after the file has changed",
                this::looks);
        FileDrive files = new FileDrive(stage, hands, model, folder, layout);
        claim("dragging a dimension changes the verdict, and its value is written into the file", files::drags);
        claim("an error in the file is shown at its place while the last good state stays", files::reloads);
        claim("the camera is remembered for the layout", files::remembers);
        claim(
                "two layouts open side by side, turning one turns the other, and their difference is shown",
                () -> BesideDrive.run(folder));
        claim("the light of a source is chosen, read and saved, of two layouts alike", () -> SourceDrive.run(folder));
    }

    private void opens() {
        Hands.on(() -> {
            window.show(Optional.empty());
            return true;
        });
        assertThat(Hands.on(stage::isShowing)).isTrue();
        Hands.until("parts", 60, () -> model.content().stage().isPresent());
        Hands.until("a verdict", 60, () -> model.content().facts().isPresent());
        Hands.until("the end of the check", 90, () -> model.content().activity().isEmpty());
        assertThat(Hands.on(() -> model.content().facts().get().verdict())).isEqualTo(Verdict.FAIL);
        hands.key(KeyCode.C);
    }

    private void colours() {
        mouse.top();
        hands.key(KeyCode.T);
        hands.key(KeyCode.D);
        Content content = Hands.on(model::content);
        ColourScale scale = Hands.on(() -> Scales.of(model.look(), content));
        double value =
                content.facts().get().surfaces().get("lid/top").of(Light.DIRECT).value();
        Vector3D at = mouse.pixel(12, -13, 21);
        Node view = mouse.view();
        double[] corner = Hands.on(() -> {
            Point2D point = view.localToScreen(at.getX(), at.getY());
            return new double[] {point.getX() - stage.getX(), point.getY() - stage.getY()};
        });
        int seen = colour(corner);
        // On a busy machine the picture is painted a while after the key.
        for (int i = 0; i < LOOKS && seen != scale.argb(value); i++) {
            Hands.pause(200);
            seen = colour(corner);
        }
        assertThat(Integer.toHexString(seen)).isEqualTo(Integer.toHexString(scale.argb(value)));
    }

    private int colour(double[] at) {
        Pixels screen = hands.screen();
        return screen.argb()[((int) at[1]) * screen.width() + (int) at[0]];
    }

    private void keys() {
        mouse.top();
        hands.key(KeyCode.R);
        assertThat(Hands.on(() -> model.look().light())).isEqualTo(Light.ONCE_REFLECTED);
        hands.key(KeyCode.P);
        assertThat(Hands.on(() -> model.look().camera().parallel())).isTrue();
        Camera before = Hands.on(() -> model.look().camera());
        hands.key(KeyCode.DIGIT6);
        assertThat(Hands.on(() -> model.look().camera().azimuth())).isEqualTo(Direction.RIGHT.azimuth());
        hands.key(KeyCode.CONTROL, KeyCode.Z);
        assertThat(Hands.on(() -> model.look().camera()))
                .as("a direction is one step")
                .isEqualTo(before);
        hands.click("light-direct");
        assertThat(Hands.on(() -> model.look().light())).isEqualTo(Light.DIRECT);
        hands.click(mouse.view(), 12, 12);
        hands.key(KeyCode.P);
    }

    private void searches() {
        hands.key(KeyCode.CONTROL, KeyCode.F);
        hands.type("sheet");
        Hands.pause(200);
        hands.key(KeyCode.TAB);
        hands.key(KeyCode.DOWN);
        hands.key(KeyCode.RIGHT);
        hands.key(KeyCode.DOWN);
        Hands.until(
                "a face chosen by keys",
                20,
                () -> model.look()
                        .selected()
                        .filter(name -> name.startsWith("sheet/"))
                        .isPresent());
        String chosen = Hands.on(() -> model.look().selected().get());
        hands.click(mouse.view(), 12, 12);
        Hands.on(() -> {
            window.model().change(look -> look.selecting(Optional.of(chosen)));
            return true;
        });
        hands.key(KeyCode.H);
        assertThat(Hands.on(() -> model.look().hidden())).containsExactly(chosen);
        hands.key(KeyCode.A);
        assertThat(Hands.on(() -> model.look().hidden())).isEmpty();
    }

    private void saves() throws IOException {
        Path file = folder.resolve("picture.png");
        Pixels pixels =
                Hands.on(() -> new Picture(model, false).of(new PictureSize(640, 480), LocalDate.of(2026, 1, 2)));
        PictureFile.write(file, pixels);
        BufferedImage image = ImageIO.read(file.toFile());
        assertThat(image.getWidth()).isEqualTo(640);
        assertThat(image.getHeight()).isEqualTo(480);
        assertThat(Arrays.stream(pixels.argb()).distinct().count()).isGreaterThan(20);
    }

    private void looks() throws IOException {
        mouse.top();
        Vector3D middle = mouse.pixel(0, 0, 0);
        hands.click(mouse.view(), middle.getX(), middle.getY());
        hands.key(KeyCode.S);
        Hands.until(
                "the picture",
                60,
                () -> model.content().seen().filter(SeenFrom::finished).isPresent());
        Label share = (Label) hands.find("seen-share");
        assertThat(Hands.on(share::getText)).isEqualTo("The point sees the whole pupil.");
        SeenPicture picture =
                Hands.on(() -> model.content().seen().get().picture().get());
        int outline = 0xff0a6b7a;
        assertThat(picture.copyArgb()).contains(outline);
        Node shown = hands.find("seen-picture");
        double side = Hands.on(() -> shown.getLayoutBounds().getHeight());
        double[] lid = picture.place(Vector3D.of(12, 0, 20)).get();
        hands.click(shown, lid[0] * side, lid[1] * side);
        Label reading = (Label) hands.find("seen-reading");
        Hands.until("the lid", 20, () -> reading.getText().startsWith("lid/underside\n"));
        hands.photograph(folder.resolve("seen.png"));
        for (int opening : new int[] {6, 10}) {
            Files.writeString(layout, PlateLayout.TEXT.replace("opening: 10", "opening: " + opening));
            Hands.until(
                    "the same point in the new layout",
                    60,
                    () -> model.content()
                            .seen()
                            .filter(seen -> seen.finished()
                                    && seen.stage()
                                                    .layout()
                                                    .dimensions()
                                                    .get("opening")
                                                    .value()
                                            == opening)
                            .isPresent());
        }
        Hands.until("the end of the check", 90, () -> model.content().activity().isEmpty());
    }
}
