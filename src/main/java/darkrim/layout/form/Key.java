package darkrim.layout.form;

import java.util.Optional;

/**
 * A key of a mapping: declared once, read, checked and published from this.
 *
 * @param name its name
 * @param kind what value it has
 * @param required whether it must be given
 * @param fallback what holds where it is not given, as YAML; empty where nothing holds
 * @param sentence what it means, one sentence with the unit
 */
public record Key(String name, Kind kind, boolean required, Optional<String> fallback, String sentence) {
    /** A key that must be given. */
    public static Key required(String name, Kind kind, String sentence) {
        return new Key(name, kind, true, Optional.empty(), sentence);
    }

    /** A key that may be left out. */
    public static Key optional(String name, Kind kind, String sentence) {
        return new Key(name, kind, false, Optional.empty(), sentence);
    }

    /** A key that has a value where it is left out. */
    public static Key withDefault(String name, Kind kind, String fallback, String sentence) {
        return new Key(name, kind, false, Optional.of(fallback), sentence);
    }
}
