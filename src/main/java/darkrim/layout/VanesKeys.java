package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.List;

/** The keys of a set of vanes, each declared once. */
final class VanesKeys {
    /** Of these keys a set of vanes has exactly one. */
    static final String[] EDGE = {"edge_diameter", "depth"};

    private static final Kind KNIFE_EDGE = Kind.Structure.of(
            "vane_knife_edge",
            Key.withDefault("land", Kinds.GAP, "0", "Height of the straight land at the edge; mm unless stated."),
            Key.required(
                    "bevel",
                    Kinds.VANE_BEVEL,
                    "Angle between bevel and axis, which widens away from the edge; degrees unless stated."),
            Key.withDefault(
                    "toward",
                    Kinds.choice("pupil", "detector"),
                    "pupil",
                    "The side of the vane on which the edge is."));

    static final List<Key> ALL = List.of(
            Key.required(
                    "wall_diameter",
                    Kinds.SPACING,
                    "Inner diameter of the wall, or [at the base, at the top]; mm unless stated."),
            TurnedPartKeys.BASE,
            Key.required("height", Kinds.SIZE, "Height of the wall; mm unless stated."),
            Key.optional(
                    "wall_thickness",
                    Kinds.SIZE,
                    "Thickness of the wall, measured level; with it wall and vanes are one solid, without it each vane is a ring of its"
                            + " own; mm unless stated."),
            Key.optional(
                    "edge_diameter",
                    Kinds.SPACING,
                    "Diameter of the edges, or [at the base, at the top] of the wall; mm unless stated."),
            Key.optional("depth", Kinds.SIZE, "Distance of the edges from the wall, measured level; mm unless stated."),
            Key.optional(
                    "heights",
                    Kinds.HEIGHTS,
                    "Heights of the edges above the part's origin, from the lowest up; mm unless stated."),
            Key.optional("count", new Kind.Whole(1, 200), "Number of vanes, where they are evenly spaced."),
            Key.optional(
                    "first",
                    Kinds.LENGTH,
                    "Height of the lowest edge, where they are evenly spaced; mm unless stated."),
            Key.optional(
                    "spacing", Kinds.SIZE, "Step from edge to edge, where they are evenly spaced; mm unless stated."),
            Key.required("thickness", Kinds.SIZE, "Thickness of a vane, measured along the axis; mm unless stated."),
            Key.withDefault(
                    "tilt",
                    Kinds.WALL_TILT,
                    "0",
                    "Lean of the vanes; positive brings the edge nearer the light than the root; degrees unless stated."),
            Key.optional("knife_edge", KNIFE_EDGE, "A land and a bevel; without it the edge is square."),
            Key.withDefault(
                    "edge_radius",
                    Kinds.GAP,
                    "0",
                    "Radius to which the edge is rounded, before it is tilted; facets stand for the round; mm unless stated."),
            TurnedPartKeys.CHORD);

    private VanesKeys() {}
}
