package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import darkrim.layout.form.Measure;
import darkrim.layout.form.Range;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The keys of the beam, each declared once. */
final class BeamKeys {
    private static final Kind WINDOW_INDEX =
            new Kind.Numeric("window_index", Optional.of(Measure.NUMBER), Range.closed(1, 10));
    private static final Kind FACE_REFLECTANCE =
            new Kind.Numeric("face_reflectance", Optional.of(Measure.NUMBER), Range.closed(0, 0.99));
    private static final Kind INTERNAL =
            new Kind.Numeric("internal_transmittance", Optional.of(Measure.NUMBER), Range.above(0, 1));

    private static final List<Key> PUPIL_COMMON = List.of(
            Key.required(
                    "distance", Kinds.SIZE, "Distance of its centre from the focal plane along z; mm unless stated."),
            Key.withDefault("shift", Kinds.SHIFT, "[0, 0]", "Shift of its centre along x and y; mm unless stated."),
            Key.withDefault(
                    "tilt", Kinds.pair(Kinds.TILT), "[0, 0]", "Tilt about x, then about y; degrees unless stated."));

    private static final List<Key> FIELD_COMMON = List.of(
            Key.withDefault(
                    "at_height", Kinds.LENGTH, "0", "Height of its plane above the focal plane; mm unless stated."),
            Key.withDefault("shift", Kinds.SHIFT, "[0, 0]", "Shift of its centre along x and y; mm unless stated."));

    private static final Kind PUPIL = new Kind.Variants(
            "pupil",
            "shape",
            "Shape of the pupil.",
            Optional.empty(),
            List.of(
                    shape(
                            "disc",
                            "pupil",
                            PUPIL_COMMON,
                            Key.required("diameter", Kinds.SIZE, "Diameter; mm unless stated."),
                            Key.withDefault(
                                    "hole",
                                    Kinds.GAP,
                                    "0",
                                    "Diameter of the shaded middle, 0 for none; mm unless stated.")),
                    shape("rectangle", "pupil", PUPIL_COMMON, width(), height()),
                    shape("polygon", "pupil", PUPIL_COMMON, corners())));

    private static final Kind FIELD = new Kind.Variants(
            "field",
            "shape",
            "Shape of the field; square where it is left out.",
            Optional.of("square"),
            List.of(
                    shape(
                            "square",
                            "field",
                            FIELD_COMMON,
                            Key.required(
                                    "half_width", Kinds.SIZE, "Half the side of a square field; mm unless stated.")),
                    shape("rectangle", "field", FIELD_COMMON, width(), height()),
                    shape(
                            "disc",
                            "field",
                            FIELD_COMMON,
                            Key.required("diameter", Kinds.SIZE, "Diameter; mm unless stated.")),
                    shape("polygon", "field", FIELD_COMMON, corners())));

    private static final Kind WINDOW = Kind.Structure.of(
            "window",
            Key.withDefault("name", Kinds.NAME, "window", "Its name, by which paths of light name it."),
            Key.required(
                    "at_height",
                    Kinds.SIZE,
                    "Height of its lower face above the focal plane; all parts lie below; mm unless stated."),
            Key.required("thickness", Kinds.SIZE, "Thickness; mm unless stated."),
            Key.required("n", WINDOW_INDEX, "Refractive index, the same over the band."),
            Key.optional(
                    "reflectance_below",
                    FACE_REFLECTANCE,
                    "Reflectance of the lower face at every angle, for a coating; by the index if left out."),
            Key.optional("reflectance_above", FACE_REFLECTANCE, "The same of the upper face."),
            Key.withDefault(
                    "internal_transmittance",
                    INTERNAL,
                    "1",
                    "Share of light that one straight crossing leaves, without the faces."));

    static final Kind BEAM = Kind.Structure.of(
            "beam",
            Key.required("pupil", PUPIL, "Where the light comes from; it has the same radiance everywhere."),
            Key.optional("field", FIELD, "What the light must pass: the edge of the lit field."),
            Key.optional(
                    "window", WINDOW, "A plane plate, a window or a filter, that the light passes above all parts."),
            Key.optional("radiance", Kinds.RADIANCE, "Radiance of the pupil, W/(m2 sr)."));

    private BeamKeys() {}

    private static Key width() {
        return Key.required("width", Kinds.SIZE, "Size along x; mm unless stated.");
    }

    private static Key height() {
        return Key.required("height", Kinds.SIZE, "Size along y; mm unless stated.");
    }

    private static Key corners() {
        return Key.required("corners", Kinds.CORNERS, "Corners [x, y], in order around it; mm unless stated.");
    }

    private static Kind.Case shape(String word, String of, List<Key> common, Key... own) {
        List<Key> keys = new ArrayList<>(List.of(own));
        keys.addAll(common);
        return new Kind.Case(word, new Kind.Structure(word + "_" + of, keys, List.of()));
    }
}
