package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import darkrim.layout.form.Letters;
import darkrim.layout.form.Measure;
import darkrim.layout.form.Range;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The keys of finishes, in a layout and in the finish library. */
final class FinishKeys {
    /** Names of the keys that say how much is reflected, beside the two that are 0 where they are left out. */
    static final List<String> LAWS = List.of("fresnel", "coat", "roll_off", "reflectance_table", "brdf_table");

    private static final Kind WAVELENGTH = number("wavelength", Range.closed(0.01, 1000));
    private static final Kind TABULATED = number("tabulated", Range.closed(-1e6, 1e9));
    private static final Kind INDEX = number("index", Range.closed(0.01, 100));
    private static final Kind COAT_INDEX = number("coat_index", Range.closed(1, 10));
    private static final Kind EXTINCTION = number("extinction", Range.closed(0, 1000));
    private static final Kind NUMERATOR = number("numerator", Range.above(0, 1e9));
    private static final Kind SHOULDER = number("shoulder", Range.closed(1e-12, 1e6));
    private static final Kind SLOPE = number("slope", Range.closed(0, 10));

    /** A band of wavelengths. */
    static final Kind BAND = new Kind.ListOf(WAVELENGTH, 2, 2);

    private static final Kind FRESNEL = Kind.Structure.of(
            "fresnel",
            Key.required("n", spectral("index", INDEX), "Refractive index."),
            Key.withDefault("k", spectral("extinction", EXTINCTION), "0", "Extinction coefficient."),
            Key.withDefault(
                    "times", Kinds.SHARE, "1", "What the reflectance is multiplied by, for roughness or haze."));

    private static final Kind COAT = Kind.Structure.of(
            "coat",
            Key.required("n", spectral("coat_index", COAT_INDEX), "Refractive index of the smooth coat."),
            Key.required(
                    "over",
                    spectral("share", Kinds.SHARE),
                    "Reflectance of the diffuse base as it would be within the coat's own material, 0 to 1."));

    private static final Kind ROLL_OFF = Kind.Structure.of(
            "roll_off",
            Key.required("a", spectral("numerator", NUMERATOR), "Numerator of a / (b + d^g), 1/sr."),
            Key.required("b", SHOULDER, "What sets the width of the shoulder."),
            Key.required("g", SLOPE, "Slope of the roll-off, 0 to 10."));

    private static final Kind REFLECTANCE_TABLE = new Kind.Structure(
            "reflectance_table",
            List.of(
                    Key.required(
                            "as",
                            Kinds.choice("mirror", "diffuse"),
                            "How what is reflected leaves: in the mirror direction, or to all sides."),
                    Key.optional(
                            "rows",
                            new Kind.ListOf(Kinds.pair(TABULATED), 2, 1000),
                            "Pairs of the angle of incidence in deg and the reflectance."),
                    Key.optional("file", Kinds.FILE, "A CSV file beside the layout with the same pairs.")),
            List.of("rows", "file"));

    private static final List<Key> REFLECTING = List.of(
            Key.withDefault("diffuse", spectral("share", Kinds.SHARE), "0", "Reflectance of the diffuse part, 0 to 1."),
            Key.withDefault("mirror", spectral("share", Kinds.SHARE), "0", "Reflectance of the mirror part, 0 to 1."),
            Key.optional("fresnel", FRESNEL, "A smooth face of a material, by its index."),
            Key.optional("coat", COAT, "A smooth clear coat over a diffuse base."),
            Key.optional(
                    "roll_off",
                    new Kind.Either(List.of(ROLL_OFF, new Kind.ListOf(ROLL_OFF, 1, 4))),
                    "A lobe about the mirror direction, or several that add up."),
            Key.optional(
                    "reflectance_table", REFLECTANCE_TABLE, "Measured reflectance against the angle of incidence."),
            Key.optional("brdf_table", Kinds.FILE, "A CSV file beside the layout with a measured BRDF."),
            Key.withDefault(
                    "dyed",
                    Kinds.FLAG,
                    "false",
                    "Whether it is black by an organic dye: such blacks turn bright beyond 0.75 um, and a warning says so."));

    /** A finish of a layout. */
    static final Kind FINISH = new Kind.Structure(
            "finish",
            with(
                    Key.optional(
                            "library",
                            Kinds.NAME,
                            "Name of an entry of the finish library, in place of all other keys but source and emissivity."),
                    WarmthKeys.EMISSIVITY,
                    Key.withDefault("source", Kinds.NOTE, "\"\"", "Where the numbers come from.")),
            List.of());

    /** The file of the finish library. */
    static final Kind.Structure LIBRARY = Kind.Structure.of(
            "finish_library",
            Key.required(
                    "finishes",
                    new Kind.Named(
                            Letters.NAME,
                            new Kind.Structure(
                                    "library_finish",
                                    with(
                                            Key.required("what", Kinds.TITLE, "What kind of surface it is."),
                                            Key.required("source", Kinds.TITLE, "Where the numbers come from.")),
                                    List.of()),
                            1,
                            1000),
                    "The entries by name."));

    private FinishKeys() {}

    private static List<Key> with(Key... others) {
        List<Key> keys = new ArrayList<>(REFLECTING);
        keys.addAll(List.of(others));
        return keys;
    }

    /** A number for all wavelengths, or one that changes with wavelength. */
    private static Kind spectral(String name, Kind plain) {
        return new Kind.Either(List.of(
                plain,
                new Kind.Structure(
                        name + "_by_wavelength",
                        List.of(
                                Key.optional(
                                        "over_wavelength",
                                        new Kind.ListOf(Kinds.pair(TABULATED), 2, 1000),
                                        "Pairs of a wavelength in um and the value, straight lines between."),
                                Key.optional(
                                        "per_band",
                                        new Kind.ListOf(new Kind.ListOf(TABULATED, 3, 3), 1, 100),
                                        "Triples of the two ends of a band in um and the value in it.")),
                        List.of("over_wavelength", "per_band"))));
    }

    private static Kind number(String name, Range range) {
        return new Kind.Numeric(name, Optional.of(Measure.NUMBER), range);
    }
}
