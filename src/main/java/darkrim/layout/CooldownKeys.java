package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.List;

/** The keys of a cool-down, of materials, and what parts say of both. */
final class CooldownKeys {
    /** Temperatures. */
    static final Kind COOLDOWN = Kind.Structure.of(
            "cooldown",
            Key.withDefault("drawn_at", Kinds.KELVIN, "293", "Temperature at which all dimensions hold, K."),
            Key.required("works_at", Kinds.KELVIN, "Temperature at which the parts work, K, not above the first."),
            Key.optional("material", Kinds.NAME, "Material of the parts that state none."));

    /** A material of the designer's own. */
    static final Kind MATERIAL = new Kind.Structure(
            "material",
            List.of(
                    Key.optional(
                            "contraction",
                            new Kind.ListOf(Kinds.pair(Kinds.COMPONENT), 2, 1000),
                            "Pairs of a temperature in K and the contraction there, (L0 - L) / L0 from one length L0 that is"
                                    + " the same for all; straight lines between."),
                    Key.optional(
                            "file",
                            Kinds.FILE,
                            "A CSV file beside the layout with the same pairs, its columns temperature_k,contraction."),
                    Key.optional(
                            "accuracy",
                            Kinds.SHARE,
                            "How well the contraction is known, as a share of itself; for the stated uncertainty."),
                    Key.withDefault("source", Kinds.NOTE, "\"\"", "Where the numbers come from.")),
            List.of("contraction", "file"));

    /** What every part can say. */
    static final List<Key> OF_PARTS = List.of(
            Key.optional(
                    "material",
                    Kinds.NAME,
                    "What it is made of, for the cool-down: one of the program's own or one under 'materials'."),
            Key.withDefault(
                    "held_at",
                    Kinds.POINT,
                    "[0, 0, 0]",
                    "The point about which it contracts, in its own frame before it is mirrored, turned and moved; mm unless"
                            + " stated. Each copy of a repeated part has its own."),
            Key.optional(
                    "held_by",
                    Kinds.NAME,
                    "The part that holds it at that point: the point then moves as that part contracts. Otherwise it stays."),
            Key.withDefault(
                    "coating_thickness",
                    Kinds.GAP,
                    "0",
                    "Thickness of the coating on all its surfaces, drawn without it, for clearances: it grows outward; mm unless"
                            + " stated."));

    private CooldownKeys() {}
}
