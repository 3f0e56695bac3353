package darkrim.view.window;

import darkrim.study.Effort;
import darkrim.verdict.Verdict;
import darkrim.view.camera.Camera;
import darkrim.view.files.Memory;
import darkrim.view.look.Look;
import darkrim.view.work.ViewModel;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Takes the pictures of docs/view.md, in a process of its own with a display, as a person at the keys would. Argument: a folder for them. */
public final class WindowPictures {
    static final int WIDTH = 1280;
    static final int HEIGHT = 800;
    static final List<String> NAMES = List.of("view.png", "view-beside.png");

    private static final Path FIRST = Path.of("geometries/nightglow-a.yaml");
    private static final Path SECOND = Path.of("geometries/nightglow-b.yaml");
    /** The parts, not the pupil far above them, are what is to be seen. */
    private static final Vector3D PARTS = Vector3D.of(0, 0, 5);

    private WindowPictures() {}

    /** Takes the pictures; ends with 2 where there is no display with three dimensions. */
    public static void main(String[] arguments) throws Exception {
        if (!WindowDrive.begins()) {
            System.exit(2);
        }
        Path folder = Path.of(arguments[0]);
        one(folder);
        two(folder);
        System.exit(0);
    }

    /** A section through a lit wall, and the ways by which light comes from there to the pixels. */
    private static void one(Path folder) throws IOException {
        Stage stage = Hands.on(Stage::new);
        ViewerWindow window = open(stage, Optional.empty(), folder);
        Hands hands = new Hands(stage);
        ViewModel model = window.model();
        Hands.until("the end of the check", 120, () -> isDone(model));
        change(model, look -> look.selecting(Optional.of("mosaic/die[1,2]/active")));
        hands.key(KeyCode.R);
        hands.key(KeyCode.Y);
        change(model, look -> look.with(near(look.camera(), 0.6, 14, 12)));
        photograph(hands, folder.resolve(NAMES.get(0)), stage);
    }

    /** The first drawing beside its repair. */
    private static void two(Path folder) throws IOException {
        Stage stage = Hands.on(Stage::new);
        ViewerWindow window = open(stage, Optional.of(SECOND), folder);
        Hands hands = new Hands(stage);
        ViewModel left = window.model();
        ViewModel right = window.beside().orElseThrow().model();
        Hands.until("the end of both checks", 180, () -> isDone(left) && isDone(right));
        change(left, look -> look.with(near(look.camera(), 0.74, 3, 12)));
        photograph(hands, folder.resolve(NAMES.get(1)), stage);
    }

    private static ViewerWindow open(Stage stage, Optional<Path> second, Path folder) {
        return Hands.on(() -> {
            ViewerWindow window = new ViewerWindow(
                    stage,
                    FIRST,
                    second,
                    new Effort(2, Optional.empty(), Optional.empty()),
                    new Memory(folder.resolve("windows-" + second.isPresent() + ".properties")));
            window.show(Optional.empty());
            stage.setX(0);
            stage.setY(0);
            stage.setWidth(WIDTH);
            stage.setHeight(HEIGHT);
            return window;
        });
    }

    /** The parts, shifted by mm: the ways of light stand above them. */
    private static Camera near(Camera camera, double nearer, double left, double down) {
        return camera.focused(PARTS).zoomed(PARTS, nearer).panned(-left, down);
    }

    private static boolean isDone(ViewModel model) {
        return model.content().activity().isEmpty()
                && model.content()
                        .facts()
                        .filter(facts -> facts.verdict() != Verdict.UNDECIDED)
                        .isPresent();
    }

    private static void change(ViewModel model, UnaryOperator<Look> how) {
        Hands.on(() -> {
            model.change(how);
            return true;
        });
    }

    /** Waits for cells and light paths, which come in the background, before the picture is taken. */
    private static void photograph(Hands hands, Path file, Stage stage) {
        Hands.pause(15_000);
        hands.photograph(file);
        Hands.on(() -> {
            stage.close();
            return true;
        });
    }
}
