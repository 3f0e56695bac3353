package darkrim.view.files;

import darkrim.view.camera.Camera;
import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Remembers size and place of the window and where the viewer stood, for each layout file. What cannot be read is as if there were
 * nothing; what cannot be written is forgotten.
 */
public final class Memory {
    private final Path file;

    /**
     * @param file where it is kept
     */
    public Memory(Path file) {
        this.file = file;
    }

    /**
     * The place for a user's settings by the custom of the system.
     *
     * @param environment the environment of the program
     * @param home the user's folder
     */
    public static Memory of(Map<String, String> environment, Path home) {
        String place = environment.getOrDefault("XDG_CONFIG_HOME", environment.getOrDefault("APPDATA", ""));
        Path folder = place.isEmpty() ? home.resolve(".config") : Path.of(place);
        return new Memory(folder.resolve("darkrim").resolve("windows.properties"));
    }

    /**
     * What is remembered of a layout.
     *
     * @param x left border of the window, pixels
     * @param y upper border
     * @param width width of the window
     * @param height height of the window
     * @param camera where the viewer stood
     */
    public record Window(double x, double y, double width, double height, Camera camera) {}

    /** What is remembered of a layout, if anything. */
    public Optional<Window> recall(Path layout) {
        String text = all().getProperty(key(layout), "");
        String[] words = text.split(" ", -1);
        if (words.length != 11) {
            return Optional.empty();
        }
        try {
            double[] n = new double[10];
            for (int i = 0; i < n.length; i++) {
                n[i] = Double.parseDouble(words[i]);
                if (!Double.isFinite(n[i])) {
                    return Optional.empty();
                }
            }
            Camera camera =
                    new Camera(Vector3D.of(n[4], n[5], n[6]), n[7], n[8], n[9], Boolean.parseBoolean(words[10]));
            return Optional.of(new Window(n[0], n[1], n[2], n[3], camera));
        } catch (NumberFormatException damaged) {
            return Optional.empty();
        }
    }

    /** Remembers a layout's window; whether that worked. */
    public boolean remember(Path layout, Window window) {
        Properties all = all();
        Camera camera = window.camera();
        all.setProperty(
                key(layout),
                window.x() + " " + window.y() + " " + window.width() + " " + window.height() + " "
                        + camera.focus().getX() + " " + camera.focus().getY() + " "
                        + camera.focus().getZ() + " " + camera.azimuth() + " " + camera.elevation() + " "
                        + camera.span() + " " + camera.parallel());
        try {
            Files.createDirectories(file.getParent());
            StringWriter text = new StringWriter();
            all.store(text, "Darkrim: windows by layout file");
            Path fresh = Files.createTempFile(file.getParent(), "windows", ".tmp");
            try {
                Files.writeString(fresh, text.toString(), StandardCharsets.UTF_8);
                Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(fresh);
            }
            return true;
        } catch (IOException refused) {
            return false;
        }
    }

    private Properties all() {
        Properties all = new Properties();
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            all.load(reader);
        } catch (IOException | IllegalArgumentException nothing) {
            all.clear();
        }
        return all;
    }

    private static String key(Path layout) {
        return layout.toAbsolutePath().normalize().toString();
    }
}
