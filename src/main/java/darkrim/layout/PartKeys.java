package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The keys of parts, each declared once: the reading and the JSON Schema follow from this table. */
final class PartKeys {
    private static final Kind TURN = Kind.Structure.of(
            "turn",
            Key.required(
                    "about",
                    new Kind.Either(List.of(Kinds.AXIS, new Kind.ListOf(Kinds.COMPONENT, 3, 3))),
                    "Axis through the part's origin: x, y, z, or a direction [x, y, z]."),
            Key.required("by", Kinds.ANGLE, "Angle, right-handed about the axis; degrees unless stated."));

    private static final Kind REPEAT = Kind.Structure.of(
            "repeat",
            Key.required("count", Kinds.GRID, "Number of copies along x and y."),
            Key.required("step", Kinds.SHIFT, "Step between copies along x and y; mm unless stated."));

    /** What every part can have. */
    private static final List<Key> COMMON = List.of(
            Key.optional(
                    "finish",
                    Kinds.NAME,
                    "Name of the finish of all its surfaces; finish_rules can change it for some of them. 'absorber' reflects"
                            + " nothing; so does a part that states none, with a warning where reflected light is asked for."),
            Key.withDefault(
                    "at", Kinds.POINT, "[0, 0, 0]", "Where the part's origin stands: x, y, z; mm unless stated."),
            Key.optional(
                    "turn",
                    new Kind.Either(List.of(TURN, new Kind.ListOf(TURN, 1, 20))),
                    "A turn, or several in this order, about the part's origin, after mirroring and before moving."),
            Key.optional(
                    "mirror",
                    Kinds.AXIS,
                    "Mirrors the part at the plane through its origin that is square to this axis, before turning."),
            Key.optional("repeat", REPEAT, "Copies in a grid about the part's place, along x and y; numbered from 1."),
            WarmthKeys.PART_TEMPERATURE,
            ToleranceKeys.PLACEMENT);

    private PartKeys() {}

    /** All kinds of parts. */
    static Kind part() {
        return new Kind.Variants(
                "part",
                "kind",
                "What the part is.",
                Optional.empty(),
                List.of(
                        kind("detectors", DetectorKeys.ALL),
                        kind("plate", PlateKeys.ALL, PlateKeys.OUTLINE),
                        kind("box", BOX),
                        kind("tube", TUBE),
                        kind("block", BLOCK),
                        kind("disc", DISC),
                        kind("rectangle", RECTANGLE),
                        kind("sphere_cap", SPHERE_CAP),
                        kind("mesh", MeshKeys.ALL),
                        kind("cone", TurnedPartKeys.CONE),
                        kind("revolved", TurnedPartKeys.REVOLVED),
                        kind("extruded", CutPartKeys.EXTRUDED),
                        kind("vanes", VanesKeys.ALL, VanesKeys.EDGE),
                        kind("honeycomb", CutPartKeys.HONEYCOMB, CutPartKeys.OUTER),
                        kind("cold_stop", CutPartKeys.COLD_STOP),
                        kind("labyrinth_joint", TurnedPartKeys.LABYRINTH_JOINT, TurnedPartKeys.PATH),
                        kind("screw_head", TurnedPartKeys.SCREW_HEAD),
                        kind("bond_wires", CutPartKeys.BOND_WIRES)));
    }

    private static final List<Key> BOX = List.of(
            Key.required("width", Kinds.SIZE, "Inner width along x at the base; mm unless stated."),
            Key.required("depth", Kinds.SIZE, "Inner width along y at the base; mm unless stated."),
            Key.withDefault("base", Kinds.LENGTH, "0", "Height of the base above the part's origin; mm unless stated."),
            Key.required("height", Kinds.SIZE, "Height of the walls; mm unless stated."),
            Key.withDefault(
                    "tilt",
                    Kinds.WALL_TILT,
                    "0",
                    "Lean of the walls; positive widens toward the light; degrees unless stated."),
            Key.required("thickness", Kinds.SIZE, "Thickness of the walls, measured level; mm unless stated."));

    private static final List<Key> TUBE = List.of(
            Key.required("inner_diameter", Kinds.SIZE, "Inner diameter; mm unless stated."),
            Key.required("outer_diameter", Kinds.SIZE, "Outer diameter; mm unless stated."),
            Key.withDefault("base", Kinds.LENGTH, "0", "Height of the base above the part's origin; mm unless stated."),
            Key.required("height", Kinds.SIZE, "Height; mm unless stated."));

    private static final List<Key> BLOCK = List.of(
            Key.required("width", Kinds.SIZE, "Size along x; mm unless stated."),
            Key.required("depth", Kinds.SIZE, "Size along y; mm unless stated."),
            Key.required("height", Kinds.SIZE, "Size along z, upward from the part's origin; mm unless stated."));

    private static final List<Key> DISC = List.of(
            Key.required("diameter", Kinds.SIZE, "Diameter of a thin disc that faces +z; mm unless stated."),
            Key.withDefault("hole", Kinds.GAP, "0", "Diameter of its round hole, 0 for none; mm unless stated."));

    private static final List<Key> RECTANGLE = List.of(
            Key.required("width", Kinds.SIZE, "Size along x of a thin rectangle that faces +z; mm unless stated."),
            Key.required("depth", Kinds.SIZE, "Size along y; mm unless stated."));

    private static final List<Key> SPHERE_CAP = List.of(
            Key.required("radius", Kinds.SIZE, "Radius of the sphere about the part's origin; mm unless stated."),
            Key.required(
                    "half_angle",
                    Kinds.HALF_ANGLE,
                    "Half angle of the cap as seen from the centre, its middle on +z; degrees unless stated."));

    private static Kind.Case kind(String word, List<Key> own, String... exactlyOneOf) {
        List<Key> keys = new ArrayList<>(own);
        keys.addAll(COMMON);
        keys.addAll(CooldownKeys.OF_PARTS);
        return new Kind.Case(word, new Kind.Structure(word, keys, List.of(exactlyOneOf)));
    }
}
