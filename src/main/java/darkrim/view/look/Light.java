package darkrim.view.look;

import darkrim.study.irradiance.LightKind;
import java.util.List;
import java.util.stream.Stream;

/** The class of light that is shown. */
public enum Light {
    /** Straight from the pupil. */
    DIRECT("Direct", "D", "direct"),
    /** After one reflection. */
    ONCE_REFLECTED("Reflected", "R", "once reflected"),
    /** Both together. */
    TOTAL("Total", "T", "direct + once reflected"),
    /** No light: parts in grey. */
    NONE("Parts", "N", "parts only");

    private final String title;
    private final String key;
    private final String words;

    Light(String title, String key, String words) {
        this.title = title;
        this.key = key;
        this.words = words;
    }

    /** The classes that stand for light, in the order in which they are listed; the parts without light are none of them. */
    public static List<Light> classes() {
        return Stream.of(values()).filter(light -> light != NONE).toList();
    }

    /** What stands on its button. */
    public String title() {
        return title;
    }

    /** The letter that stands for it on the keyboard. */
    public String key() {
        return key;
    }

    /** Its name for people. */
    public String words() {
        return words;
    }

    /** The same class of light in a map; of parts without light, direct light. */
    public LightKind kind() {
        return switch (this) {
            case DIRECT, NONE -> LightKind.DIRECT;
            case ONCE_REFLECTED -> LightKind.ONCE_REFLECTED;
            case TOTAL -> LightKind.TOTAL;
        };
    }
}
