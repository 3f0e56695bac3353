package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import java.util.List;

/** The keys of detectors, each declared once. */
final class DetectorKeys {
    private static final Kind SIDES = new Kind.Either(List.of(
            Kinds.GAP,
            Kind.Structure.of(
                    "sides",
                    Key.required("-x", Kinds.GAP, "Toward -x; mm unless stated."),
                    Key.required("+x", Kinds.GAP, "Toward +x; mm unless stated."),
                    Key.required("-y", Kinds.GAP, "Toward -y; mm unless stated."),
                    Key.required("+y", Kinds.GAP, "Toward +y; mm unless stated."))));

    private static final Kind DIE = Kind.Structure.of(
            "die",
            Key.required(
                    "margin",
                    SIDES,
                    "From the pixel array to the edge of the die, one length or one for each side; mm unless stated."),
            Key.required("thickness", Kinds.SIZE, "Thickness, which is the height of its edges; mm unless stated."));

    private static final Kind READOUT = Kind.Structure.of(
            "readout",
            Key.required(
                    "ledge",
                    SIDES,
                    "From the edge of the die to the edge of the readout, one length or one for each side; mm unless stated."),
            Key.required("thickness", Kinds.SIZE, "Thickness; mm unless stated."));

    private static final Kind UNDERFILL = Kind.Structure.of(
            "underfill",
            Key.required(
                    "height",
                    Kinds.SIZE,
                    "Where the fillet begins on the edge of the die, above the readout; mm unless stated."),
            Key.required("width", Kinds.SIZE, "How far it reaches onto the readout; mm unless stated."));

    private static final Kind CARRIER = Kind.Structure.of(
            "carrier",
            Key.required(
                    "margin",
                    SIDES,
                    "From the edge of the readout to the edge of the carrier, one length or one for each side; mm unless stated."),
            Key.required("thickness", Kinds.SIZE, "Thickness; mm unless stated."));

    private static final Kind BONDS = Kind.Structure.of(
            "bonds",
            Key.required(
                    "sides",
                    new Kind.ListOf(Kinds.choice("-x", "+x", "-y", "+y"), 1, 4),
                    "The sides that have wire bonds."),
            Key.required(
                    "pad_from_edge",
                    Kinds.GAP,
                    "From the edge of the readout to the near edge of the row of pads; mm unless stated."),
            Key.required("pad_width", Kinds.SIZE, "Width of the row of pads, square to the edge; mm unless stated."),
            Key.required("loop_height", Kinds.SIZE, "Height of the wires above the readout; mm unless stated."),
            Key.required(
                    "reach", Kinds.SIZE, "How far the wires reach beyond the edge of the readout; mm unless stated."));

    static final List<Key> ALL = List.of(
            Key.withDefault("grid", Kinds.GRID, "[1, 1]", "Number of detectors along x and y."),
            Key.optional(
                    "spacing",
                    Kinds.SPACING,
                    "Step between the centres of pixel arrays, one length or [along x, along y]; mm unless stated."),
            Key.required("pixels", new Kind.Whole(1, 100_000), "Pixels along each side, reference pixels included."),
            Key.required("pixel_pitch", Kinds.SIZE, "Pixel pitch; mm unless stated."),
            Key.withDefault(
                    "reference_pixels",
                    new Kind.Whole(0, 50_000),
                    "0",
                    "Width of the border of reference pixels, in pixels."),
            Key.withDefault(
                    "mirrored",
                    Kinds.FLAG,
                    "false",
                    "Whether sides are given for the quarter +x, +y and mirrored for detectors beyond the middle."),
            Key.required("die", DIE, "The light-sensitive chip."),
            Key.required("readout", READOUT, "The readout below the die."),
            Key.optional("underfill", UNDERFILL, "The fillet along the foot of the die."),
            Key.required("carrier", CARRIER, "The carrier below the readout."),
            Key.optional("bonds", BONDS, "The wire bonds."));

    private DetectorKeys() {}
}
