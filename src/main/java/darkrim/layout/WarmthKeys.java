package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import darkrim.layout.form.Measure;
import darkrim.layout.form.Range;
import java.util.Optional;

/** The keys of temperatures and of what is made of them. */
final class WarmthKeys {
    private static final Kind TEMPERATURE =
            new Kind.Numeric("temperature", Optional.of(Measure.NUMBER), Range.closed(0, 5000));

    /** What every part can have. */
    static final Key PART_TEMPERATURE = Key.optional(
            "temperature",
            TEMPERATURE,
            "Temperature of all its surfaces in K, in place of that of warmth; temperature rules can change it for some of them.");

    private static final Kind RULE = Kind.Structure.of(
            "temperature_rule",
            Key.required("surfaces", Kinds.PATTERN, "Pattern that selects surfaces."),
            Key.required("temperature", TEMPERATURE, "Temperature they have, K."));

    private static final Kind PUPIL = Kind.Structure.of(
            "warm_pupil",
            Key.required("temperature", TEMPERATURE, "Temperature of the optics that are seen through the pupil, K."),
            Key.required("emissivity", Kinds.SHARE, "Emissivity of all these optics together, 0 to 1."));

    /** What is warm. */
    static final Kind WARMTH = Kind.Structure.of(
            "warmth",
            Key.optional(
                    "temperature",
                    TEMPERATURE,
                    "Temperature of all parts that state none, K; left out, that at which a cooled layout works."),
            Key.required(
                    "band",
                    FinishKeys.BAND,
                    "Shortest and longest wavelength, um, to which the detectors respond: the longest is the cut-off."),
            Key.withDefault(
                    "quantum_efficiency", Kinds.LEAST_SHARE, "1", "Share of the arriving photons that are counted."),
            Key.optional(
                    "pixel_pitch",
                    Kinds.SIZE,
                    "Pixel pitch on surfaces that belong to no detector; mm unless stated. Without it, what they get is told for 1 mm2."),
            Key.optional(
                    "surroundings",
                    TEMPERATURE,
                    "Temperature, K, of what is met where no part stands and the beam does not come from, taken as black; left out, it"
                            + " emits nothing."),
            Key.optional("pupil", PUPIL, "What the optics emit through the pupil; left out, nothing."),
            Key.optional(
                    "temperature_rules",
                    new Kind.ListOf(RULE, 0, 1000),
                    "Temperatures of chosen surfaces; a later rule wins over an earlier one and over the part."));

    /** Of a finish. */
    static final Key EMISSIVITY = Key.optional(
            "emissivity",
            Kinds.SHARE,
            "Emissivity at normal incidence; at no angle is it more than what is not reflected. Left out: all that is not reflected"
                    + " (Kirchhoff's law).");

    private WarmthKeys() {}
}
