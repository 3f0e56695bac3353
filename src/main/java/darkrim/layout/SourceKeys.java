package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The keys of sources of light, each declared once. */
final class SourceKeys {
    private static final List<Key> ENTRANCE_COMMON = List.of(
            Key.required("at_height", Kinds.SIZE, "Height of its plane above the focal plane; mm unless stated."),
            Key.withDefault("shift", Kinds.SHIFT, "[0, 0]", "Shift of its centre along x and y; mm unless stated."));

    private static final Kind ENTRANCE = new Kind.Variants(
            "entrance",
            "shape",
            "Shape of the entrance.",
            Optional.empty(),
            List.of(
                    entrance("disc", Key.required("diameter", Kinds.SIZE, "Diameter; mm unless stated.")),
                    entrance(
                            "rectangle",
                            Key.required("width", Kinds.SIZE, "Size along x; mm unless stated."),
                            Key.required("height", Kinds.SIZE, "Size along y; mm unless stated."))));

    private static final Key OFF_AXIS =
            Key.required("off_axis", Kinds.OFF_AXIS, "Angle of its centre from the z axis; degrees unless stated.");

    private static final Key AZIMUTH = Key.withDefault(
            "azimuth", Kinds.ANGLE, "0", "Direction of its centre about z, from +x toward +y; degrees unless stated.");

    private static final Key IRRADIANCE =
            Key.optional("irradiance", Kinds.IRRADIANCE, "Irradiance of a plane that faces it, W/m2.");

    private static final Key ENTERING = Key.optional(
            "entrance",
            ENTRANCE,
            "What its light must come through; without it the light comes in wherever the parts leave it open.");

    private static final List<Key> STAR = List.of(
            Key.required(
                    "at", Kinds.SHIFT, "Where its image lies, x and y; also beside the detectors; mm unless stated."),
            Key.withDefault(
                    "defocus",
                    Kinds.LENGTH,
                    "0",
                    "How far above the focal plane its light comes together, negative: below; mm unless stated."),
            Key.optional("flux", Kinds.FLUX, "Flux that comes through the pupil, W."));

    private static final List<Key> DISTANT = List.of(
            OFF_AXIS,
            AZIMUTH,
            Key.required("diameter", Kinds.ANGULAR_DIAMETER, "Angular diameter; degrees unless stated."),
            IRRADIANCE,
            ENTERING);

    static final Kind SOURCE = new Kind.Variants(
            "source",
            "kind",
            "What the source is.",
            Optional.empty(),
            List.of(source("star", STAR), source("distant", DISTANT)));

    private SourceKeys() {}

    private static Kind.Case source(String word, List<Key> keys) {
        return new Kind.Case(word, new Kind.Structure(word, keys, List.of()));
    }

    private static Kind.Case entrance(String word, Key... own) {
        List<Key> keys = new ArrayList<>(List.of(own));
        keys.addAll(ENTRANCE_COMMON);
        return new Kind.Case(word, new Kind.Structure(word + "_entrance", keys, List.of()));
    }
}
