package darkrim.view.window;

import darkrim.view.files.PictureFile;
import darkrim.view.files.Pixels;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;

/** Works a window as a person does, with a real mouse and real keys. Called from outside the window's thread. */
final class Hands {
    private final Stage stage;
    private final Robot robot;

    Hands(Stage stage) {
        this.stage = stage;
        robot = on(Robot::new);
    }

    /** Does something on the window's thread and waits for it. */
    static <T> T on(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        try {
            return task.get(30, TimeUnit.SECONDS);
        } catch (InterruptedException | ExecutionException | TimeoutException failure) {
            throw new AssertionError("the window did not answer: " + failure, failure);
        }
    }

    /** Waits until something holds. */
    static void until(String what, double seconds, BooleanSupplier holds) {
        long end = System.nanoTime() + (long) (seconds * 1e9);
        while (!on(holds::getAsBoolean)) {
            if (System.nanoTime() > end) {
                throw new AssertionError("waited " + seconds + " s in vain: " + what);
            }
            pause(30);
        }
    }

    static void pause(long ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    Node find(String id) {
        return on(() -> stage.getScene().lookup("#" + id));
    }

    /** As {@link #find}, on the window's thread. */
    Node lookup(String id) {
        return stage.getScene().lookup("#" + id);
    }

    void moveTo(Node node, double x, double y) {
        on(() -> {
            Point2D point = node.localToScreen(x, y);
            robot.mouseMove(point);
            return true;
        });
        pause(60);
    }

    void click(Node node, double x, double y) {
        click(node, x, y, MouseButton.PRIMARY);
    }

    void click(Node node, double x, double y, MouseButton button) {
        moveTo(node, x, y);
        on(() -> {
            robot.mousePress(button);
            robot.mouseRelease(button);
            return true;
        });
        pause(120);
    }

    void click(String id) {
        Node node = find(id);
        if (node == null) {
            throw new AssertionError("there is no " + id);
        }
        double[] middle = on(() -> new double[] {
            node.getLayoutBounds().getWidth() / 2, node.getLayoutBounds().getHeight() / 2
        });
        click(node, middle[0], middle[1]);
    }

    void drag(Node node, double x, double y, double right, double down, MouseButton button) {
        moveTo(node, x, y);
        on(() -> {
            robot.mousePress(button);
            return true;
        });
        for (int i = 1; i <= 8; i++) {
            moveTo(node, x + right * i / 8, y + down * i / 8);
        }
        on(() -> {
            robot.mouseRelease(button);
            return true;
        });
        pause(80);
    }

    void wheel(Node node, double x, double y, int notches) {
        moveTo(node, x, y);
        on(() -> {
            robot.mouseWheel(notches);
            return true;
        });
        pause(120);
    }

    void key(KeyCode... codes) {
        on(() -> {
            for (KeyCode code : codes) {
                robot.keyPress(code);
            }
            for (int i = codes.length - 1; i >= 0; i--) {
                robot.keyRelease(codes[i]);
            }
            return true;
        });
        pause(80);
    }

    void type(String text) {
        for (int i = 0; i < text.length(); i++) {
            key(KeyCode.getKeyCode(text.substring(i, i + 1).toUpperCase(Locale.ROOT)));
        }
    }

    /** What the screen shows where the window is. */
    Pixels screen() {
        return on(() -> {
            WritableImage image = robot.getScreenCapture(
                    null, stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight(), false);
            int width = (int) image.getWidth();
            int height = (int) image.getHeight();
            int[] argb = new int[width * height];
            image.getPixelReader().getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), argb, 0, width);
            return new Pixels(width, height, argb);
        });
    }

    /** Keeps what the screen shows. */
    void photograph(Path file) {
        pause(250);
        try {
            PictureFile.write(file, screen());
        } catch (IOException refused) {
            throw new AssertionError(refused);
        }
    }
}
