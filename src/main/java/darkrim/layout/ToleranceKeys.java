package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.List;

/** The keys of tolerances, each declared once. */
final class ToleranceKeys {
    private static final Key DISTRIBUTION = Key.optional(
            "distribution",
            Kinds.choice("uniform", "normal", "triangular"),
            "How the deviations of many builds spread within the tolerance; uniform where it is left out.");

    private static final Key SIGMAS = Key.optional(
            "sigmas",
            Kinds.SIGMAS,
            "With distribution normal: standard deviations from the middle of the tolerance to an end; 3 where it is left"
                    + " out, which is common practice.");

    private static final Kind ENDS = Kind.Structure.of(
            "tolerance",
            Key.required("minus", Kinds.DEVIATION, "How far below the value; at least 0."),
            Key.required("plus", Kinds.DEVIATION, "How far above the value; at least 0."));

    /** A named dimension written with keys. */
    static final Kind DIMENSION = Kind.Structure.of(
            "dimension",
            Key.required("value", Kinds.ANY, "A number, a number with a unit, or a formula."),
            Key.optional(
                    "tolerance",
                    new Kind.Either(List.of(Kinds.DEVIATION, ENDS)),
                    "How far what is built may be from the value, up and down; in the same unit unless stated. For the"
                            + " command tolerance; a check ignores it."),
            DISTRIBUTION,
            SIGMAS);

    /** Of a part. */
    static final Key PLACEMENT = Key.optional(
            "placement_tolerance",
            Kind.Structure.of(
                    "placement_tolerance",
                    Key.optional(
                            "shift",
                            new Kind.Either(List.of(Kinds.GAP, new Kind.ListOf(Kinds.GAP, 3, 3))),
                            "How far it may be shifted each way along x, y and z, one number or three; mm unless stated."),
                    Key.optional(
                            "tilt",
                            new Kind.Either(List.of(Kinds.TILT_DEVIATION, new Kind.ListOf(Kinds.TILT_DEVIATION, 3, 3))),
                            "How far it may be turned each way about x, y and z through its origin, one number or three;"
                                    + " degrees unless stated."),
                    DISTRIBUTION,
                    SIGMAS),
            "How far it may stand from its place, with all its copies as one; each axis deviates by itself. For the command"
                    + " tolerance; a check ignores it.");

    private ToleranceKeys() {}
}
