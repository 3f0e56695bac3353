package darkrim.view;

import darkrim.study.Effort;
import darkrim.view.files.Memory;
import darkrim.view.window.ViewerWindow;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.IntSupplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.ConditionalFeature;
import javafx.application.Platform;
import javafx.stage.Stage;

/** Opens the window of a layout and stays until it is closed. */
public final class Viewer {
    /** Held, so that its level is not forgotten. */
    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private static final long LOOK_MS = 200;

    private Viewer() {}

    /** Why no window can be shown, one line without a full stop. */
    public static final class NoWindow extends Exception {
        private static final long serialVersionUID = 1;

        NoWindow(String why) {
            super(why);
        }
    }

    /**
     * Opens the window.
     *
     * @param layout the layout file
     * @param beside another layout file, to be shown beside the first
     * @param result a result that was written before, instead of a check
     * @param effort how hard to work
     * @param environment the environment of the program
     * @param stop whether to close the window, as when the program is interrupted; asked a few times a second
     * @param lost says that the display has gone, and returns the exit code: the program ends at once
     * @throws NoWindow if there is no display, or none that shows three dimensions
     */
    public static void open(
            Path layout,
            Optional<Path> beside,
            Optional<Path> result,
            Effort effort,
            Map<String, String> environment,
            BooleanSupplier stop,
            IntSupplier lost)
            throws NoWindow {
        requireDisplay(environment);
        // That classes come from one jar and not from modules is as it should be here.
        TOOLKIT.setLevel(Level.SEVERE);
        CountDownLatch closed = new CountDownLatch(1);
        Memory memory = Memory.of(environment, Path.of(System.getProperty("user.home")));
        boolean[] solid = {false};
        try {
            CountDownLatch begun = new CountDownLatch(1);
            Platform.startup(() -> {
                solid[0] = Platform.isSupported(ConditionalFeature.SCENE3D);
                begun.countDown();
            });
            while (!begun.await(LOOK_MS, TimeUnit.MILLISECONDS)) {
                if (stop.getAsBoolean()) {
                    return;
                }
            }
            LostDisplay.heed(lost);
            if (!solid[0]) {
                Platform.exit();
                throw new NoWindow(
                        "this display draws no three-dimensional pictures (no usable OpenGL or Direct3D). On Linux"
                                + " without graphics hardware give Java -Dprism.order=es2 -Dprism.forceGPU=true, which draws by"
                                + " software (docs/view.md)");
            }
            Platform.runLater(() -> {
                Stage stage = new Stage();
                ViewerWindow window = new ViewerWindow(stage, layout, beside, effort, memory);
                Thread.currentThread().setUncaughtExceptionHandler((thread, broken) -> window.broke(broken));
                stage.showingProperty().addListener((property, before, now) -> {
                    if (!now) {
                        closed.countDown();
                    }
                });
                window.show(result);
            });
            while (!closed.await(LOOK_MS, TimeUnit.MILLISECONDS)) {
                if (stop.getAsBoolean()) {
                    // The toolkit has heard of the end, too, and would not answer any more.
                    return;
                }
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        } catch (UnsupportedOperationException | UnsatisfiedLinkError | NoClassDefFoundError missing) {
            throw new NoWindow("the display or a library that windows need is missing ("
                    + String.valueOf(missing.getMessage()).lines().findFirst().orElse("unknown") + ")");
        } catch (RuntimeException broken) {
            // A toolkit that is to begin while the program is being ended cannot.
            if (!hearsTheEnd(stop)) {
                throw broken;
            }
        }
    }

    /** Whether the program is being ended: what breaks by that may break a moment before it is known here. */
    private static boolean hearsTheEnd(BooleanSupplier stop) {
        try {
            TimeUnit.MILLISECONDS.sleep(LOOK_MS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
        return stop.getAsBoolean();
    }

    private static void requireDisplay(Map<String, String> environment) throws NoWindow {
        boolean other = System.getProperty("os.name").startsWith("Windows")
                || System.getProperty("os.name").startsWith("Mac");
        if (!other && environment.getOrDefault("DISPLAY", "").isEmpty()) {
            throw new NoWindow("there is no display (DISPLAY is not set)");
        }
    }
}
