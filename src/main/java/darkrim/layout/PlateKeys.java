package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The keys of plates and their openings, each declared once. */
final class PlateKeys {
    /** Of these keys a plate has exactly one. */
    static final String[] OUTLINE = {"size", "diameter", "corners"};

    private static final Kind KNIFE_EDGE = Kind.Structure.of(
            "knife_edge",
            Key.required("land", Kinds.SIZE, "Height of the straight land at the edge; mm unless stated."),
            Key.required(
                    "bevel",
                    Kinds.BEVEL,
                    "Angle between bevel and axis of the opening, which widens away from the edge; degrees unless stated."),
            Key.required("toward", Kinds.choice("pupil", "detector"), "The side of the plate on which the edge is."));

    private static final Kind UNDERCUT = Kind.Structure.of(
            "undercut",
            Key.required("land", Kinds.SIZE, "Height of the straight land at the edge; mm unless stated."),
            Key.required(
                    "depth",
                    Kinds.SIZE,
                    "How far the wall stands back behind the land, by a level step; mm unless stated."),
            Key.required("toward", Kinds.choice("pupil", "detector"), "The side of the plate on which the land is."));

    private static final List<Key> COMMON = List.of(
            Key.withDefault("name", Kinds.NAME, "opening", "Name of these openings in the paths of their surfaces."),
            Key.withDefault("grid", Kinds.GRID, "[1, 1]", "Number of openings along x and y."),
            Key.optional(
                    "spacing",
                    Kinds.SPACING,
                    "Step between the centres of openings, one length or [along x, along y]; mm unless stated."),
            Key.withDefault("centre", Kinds.SHIFT, "[0, 0]", "Centre of the grid of openings; mm unless stated."),
            Key.optional("knife_edge", KNIFE_EDGE, "A land and a bevel; without it the wall is straight."),
            Key.optional("undercut", UNDERCUT, "A land and a wall that stands back; not together with a knife edge."));

    private static final Kind OPENING = new Kind.Variants(
            "opening",
            "shape",
            "Shape of the opening.",
            Optional.empty(),
            List.of(
                    shape(
                            "rectangle",
                            Key.required(
                                    "size",
                                    Kinds.SPACING,
                                    "Size of a square opening, or [x, y], where it is least; mm unless stated.")),
                    shape(
                            "disc",
                            Key.required("diameter", Kinds.SIZE, "Diameter where it is least; mm unless stated.")),
                    shape(
                            "polygon",
                            Key.required(
                                    "corners",
                                    Kinds.CORNERS,
                                    "Corners [x, y] about its centre, in order around it; mm unless stated."))));

    static final List<Key> ALL = List.of(
            Key.optional("size", Kinds.SPACING, "Size of a square plate, or [along x, along y]; mm unless stated."),
            Key.optional("diameter", Kinds.SIZE, "Diameter of a round plate; mm unless stated."),
            Key.optional(
                    "corners", Kinds.CORNERS, "Corners [x, y] of the plate, in order around it; mm unless stated."),
            Key.required("height", Kinds.LENGTH, "Height of the underside above the part's origin; mm unless stated."),
            Key.required("thickness", Kinds.SIZE, "Thickness; mm unless stated."),
            Key.optional(
                    "openings",
                    new Kind.Either(List.of(OPENING, new Kind.ListOf(OPENING, 1, 100))),
                    "The openings: a group of equal ones, or a list of groups."));

    private PlateKeys() {}

    private static Kind.Case shape(String word, Key own) {
        List<Key> keys = new ArrayList<>(List.of(own));
        keys.addAll(COMMON);
        return new Kind.Case(word, new Kind.Structure(word + "_opening", keys, List.of()));
    }
}
