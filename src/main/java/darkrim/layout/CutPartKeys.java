package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.List;

/** The keys of parts whose outlines go straight through along z, and of wire bonds, each declared once. */
final class CutPartKeys {
    private static final Key HEIGHT =
            Key.required("height", Kinds.LENGTH, "Height of the underside above the part's origin; mm unless stated.");
    private static final Key THICKNESS = Key.required("thickness", Kinds.SIZE, "Thickness; mm unless stated.");

    static final List<Key> EXTRUDED = List.of(
            Key.required("corners", Kinds.CORNERS, "Corners [x, y] in order around the outline; mm unless stated."),
            Key.optional(
                    "sides",
                    Kinds.SIDE_NAMES,
                    "Names of the faces that the sides make, from the first corner to the second onward; the same name for several makes"
                            + " one face. Without them they are numbered from 1."),
            Key.required("length", Kinds.SIZE, "Length along z, upward from the part's origin; mm unless stated."));

    /** Of these keys a honeycomb has exactly one. */
    static final String[] OUTER = {"size", "diameter"};

    static final List<Key> HONEYCOMB = List.of(
            Key.optional("size", Kinds.SPACING, "Size of a square outline, or [along x, along y]; mm unless stated."),
            Key.optional("diameter", Kinds.SIZE, "Diameter of a round outline; mm unless stated."),
            HEIGHT,
            THICKNESS,
            Key.required("cell", Kinds.SIZE, "Width of a hexagonal cell across flats; mm unless stated."),
            Key.required("wall", Kinds.SIZE, "Least material between cells and at the rim; mm unless stated."));

    static final List<Key> COLD_STOP = List.of(
            Key.required("diameter", Kinds.SIZE, "Outer diameter; mm unless stated."),
            Key.required("opening", Kinds.SIZE, "Diameter of the opening; mm unless stated."),
            Key.required("hub", Kinds.SIZE, "Diameter of the hub in its middle; mm unless stated."),
            Key.required(
                    "arms", new Kind.Whole(2, 24), "Number of spider arms that hold the hub; the first lies along +x."),
            Key.required("arm_width", Kinds.SIZE, "Width of an arm; mm unless stated."),
            HEIGHT,
            THICKNESS,
            TurnedPartKeys.CHORD);

    static final List<Key> BOND_WIRES = List.of(
            Key.required("wire_diameter", Kinds.SIZE, "Diameter of the wire; mm unless stated."),
            Key.required("span", Kinds.SIZE, "Distance along x from the first foot to the second; mm unless stated."),
            Key.withDefault(
                    "drop", Kinds.LENGTH, "0", "How far the second foot lies below the first; mm unless stated."),
            Key.required(
                    "loop_height",
                    Kinds.SIZE,
                    "Height of the middle of the wire above the first foot where it is highest; mm unless stated."),
            Key.withDefault("count", new Kind.Whole(1, 1000), "1", "Number of wires, side by side along y."),
            Key.optional("spacing", Kinds.SIZE, "Step between wires along y; mm unless stated."),
            Key.withDefault(
                    "chord",
                    Kinds.SIZE,
                    "0.001",
                    "Greatest distance between the wire and its facets; mm unless stated."));

    private CutPartKeys() {}
}
