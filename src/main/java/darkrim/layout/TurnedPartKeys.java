package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.List;

/** The keys of parts about the z axis, each declared once. */
final class TurnedPartKeys {
    /** How a circle becomes a polygon. */
    static final Key CHORD = Key.withDefault(
            "chord",
            Kinds.SIZE,
            "0.001",
            "Greatest distance between a circle and the polygon that stands for it, which has from 48 to 720 sides; mm unless stated.");

    static final Key BASE =
            Key.withDefault("base", Kinds.LENGTH, "0", "Height of the base above the part's origin; mm unless stated.");

    static final List<Key> REVOLVED = List.of(
            Key.required(
                    "profile",
                    Kinds.CORNERS,
                    "Corners [distance from the z axis, height] in order around the profile; mm unless stated."),
            Key.optional(
                    "sides",
                    Kinds.SIDE_NAMES,
                    "Names of the faces that the sides of the profile make, from the first corner to the second onward; the same name for"
                            + " several makes one face. Without them they are numbered from 1."),
            CHORD);

    static final List<Key> CONE = List.of(
            Key.required("base_diameter", Kinds.SIZE, "Inner diameter at the base; mm unless stated."),
            Key.required("top_diameter", Kinds.SIZE, "Inner diameter at the top; mm unless stated."),
            BASE,
            Key.required("height", Kinds.SIZE, "Height; mm unless stated."),
            Key.required("thickness", Kinds.SIZE, "Thickness of the wall, measured level; mm unless stated."),
            CHORD);

    private static final Kind SOCKET = Kind.Structure.of(
            "socket",
            Key.required("across", Kinds.SIZE, "Width of the hexagon across flats; mm unless stated."),
            Key.required("depth", Kinds.SIZE, "Depth; mm unless stated."));

    static final List<Key> SCREW_HEAD = List.of(
            Key.required("diameter", Kinds.SIZE, "Diameter; mm unless stated."),
            Key.required("height", Kinds.SIZE, "Height above the part's origin; mm unless stated."),
            Key.withDefault(
                    "chamfer", Kinds.GAP, "0", "Width and height of the chamfer around the top; mm unless stated."),
            Key.optional("socket", SOCKET, "A hexagonal hole in the top."),
            CHORD);

    /** Of these keys a labyrinth joint has exactly one. */
    static final String[] PATH = {"size", "diameter"};

    static final List<Key> LABYRINTH_JOINT = List.of(
            Key.optional(
                    "size",
                    Kinds.SPACING,
                    "Size of the square that the middle of the tongue runs along, or [along x, along y]; mm unless stated."),
            Key.optional(
                    "diameter",
                    Kinds.SIZE,
                    "Diameter of the circle that the middle of the tongue runs along; mm unless stated."),
            Key.required("tongue", Kinds.SIZE, "Width of the tongue; mm unless stated."),
            Key.required("gap", Kinds.SIZE, "Gap around the tongue and over the rims of the groove; mm unless stated."),
            Key.required("engagement", Kinds.SIZE, "Height over which tongue and groove overlap; mm unless stated."),
            Key.required("wall", Kinds.SIZE, "Width of each wall of the groove; mm unless stated."),
            Key.required(
                    "floor",
                    Kinds.SIZE,
                    "Thickness of the floor of the groove and of the cap over it; mm unless stated."),
            CHORD);

    private TurnedPartKeys() {}
}
