package darkrim.study;

import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.text.similarity.LevenshteinDistance;

/** Finds a surface by its name, and the names that come nearest where there is none. */
public final class SurfaceNames {
    private static final int SHOWN = 3;
    /** Longer texts are not compared: the distance takes time with the product of the lengths. */
    private static final int LONGEST = 200;

    private SurfaceNames() {}

    /**
     * The surface of a name.
     *
     * @throws NoSuchPoint if there is none; the message gives the nearest names
     */
    public static Surface find(Scene scene, String name) throws NoSuchPoint {
        Surface found = scene.surface(name).orElse(null);
        if (found == null) {
            throw new NoSuchPoint("there is no surface '" + Wording.oneLine(name) + "'" + suggestion(scene, name));
        }
        return found;
    }

    private static String suggestion(Scene scene, String name) {
        if (name.length() > LONGEST) {
            return "";
        }
        List<String> names = Stream.concat(within(scene, name), nearest(scene, name))
                .distinct()
                .limit(SHOWN)
                .map(near -> "'" + Wording.oneLine(near) + "'")
                .toList();
        return names.isEmpty() ? "" : "; the nearest names are " + String.join(", ", names);
    }

    /** Names that hold all that was written, such as the surfaces of a part whose name is written alone. */
    private static Stream<String> within(Scene scene, String name) {
        String wanted = name.toLowerCase(Locale.ROOT);
        return wanted.isEmpty()
                ? Stream.empty()
                : scene.surfaces().stream()
                        .map(Surface::name)
                        .filter(near -> near.toLowerCase(Locale.ROOT).contains(wanted))
                        .sorted(Comparator.comparingInt(String::length));
    }

    private static Stream<String> nearest(Scene scene, String name) {
        String wanted = name.toLowerCase(Locale.ROOT);
        LevenshteinDistance distance = LevenshteinDistance.getDefaultInstance();
        record Near(String name, int distance) {}
        return scene.surfaces().stream()
                .map(surface -> surface.name())
                .filter(near -> near.length() <= LONGEST)
                .map(near -> new Near(near, distance.apply(wanted, near.toLowerCase(Locale.ROOT))))
                .sorted(Comparator.comparingInt(Near::distance))
                .map(Near::name);
    }
}
