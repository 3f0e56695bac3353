package darkrim.present;

import darkrim.light.ReflectionPath;
import darkrim.light.Reflector;
import java.util.Locale;

/** Light paths in words. */
final class PathWords {
    private PathWords() {}

    /** What throws the light: a glint by mirrors and lobes alone, or diffuse. */
    static String kind(ReflectionPath path) {
        return path.isGlint() ? "glint" : "diffuse";
    }

    /** The part of the finish in a word. */
    static String part(Reflector reflector) {
        return reflector.part().word();
    }

    /** An angle, such as {@code 82 deg}. */
    static String degrees(double angle) {
        return String.format(Locale.ROOT, "%.0f deg", angle);
    }

    /** A number of reflections as a heading or a row: {@code once reflected}, {@code 3 times reflected}. */
    static String times(int order) {
        return switch (order) {
            case 0 -> "direct";
            case 1 -> "once reflected";
            case 2 -> "twice reflected";
            default -> order + " times reflected";
        };
    }
}
