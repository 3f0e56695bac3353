package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Wording;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Detectors in a grid, and whether their pieces fit on each other. */
final class DetectorsBuilder {
    /** Pixels of detectors lie between these, mm: common practice, no source. */
    private static final double SMALL_PITCH = 0.001;

    private static final double LARGE_PITCH = 0.1;
    /** Decimal lengths that fill their room exactly may exceed it by this share. */
    private static final double ROUNDING = 1e-12;

    private final Fields fields;
    private final Findings findings;
    private boolean sound = true;

    DetectorsBuilder(Fields fields, Findings findings) {
        this.fields = fields;
        this.findings = findings;
    }

    /** The detectors; empty, with findings, if pieces do not fit. */
    Optional<Shape> build() {
        Fields die = fields.fields("die");
        Fields readout = fields.fields("readout");
        Fields carrier = fields.fields("carrier");
        Optional<GridFields> grid = GridFields.of(fields, findings);
        DetectorsShape shape = new DetectorsShape(
                grid.map(GridFields::columns).orElse(1),
                grid.map(GridFields::rows).orElse(1),
                grid.map(GridFields::stepX).orElse(0.0),
                grid.map(GridFields::stepY).orElse(0.0),
                fields.count("pixels"),
                fields.number("pixel_pitch"),
                fields.count("reference_pixels"),
                fields.flag("mirrored"),
                sides(die, "margin"),
                die.number("thickness"),
                sides(readout, "ledge"),
                readout.number("thickness"),
                fields.ifGiven(
                        "underfill",
                        fillet -> new DetectorsShape.Underfill(fillet.number("height"), fillet.number("width"))),
                sides(carrier, "margin"),
                carrier.number("thickness"),
                fields.ifGiven("bonds", DetectorsBuilder::bonds));
        check(shape);
        return sound && grid.isPresent() ? Optional.of(shape) : Optional.empty();
    }

    private static DetectorsShape.Sides sides(Fields holder, String key) {
        if (holder.find(key).orElseThrow() instanceof Fields each) {
            return new DetectorsShape.Sides(each.number("-x"), each.number("+x"), each.number("-y"), each.number("+y"));
        }
        return DetectorsShape.Sides.all(holder.number(key));
    }

    private static DetectorsShape.Bonds bonds(Fields bonds) {
        Set<DetectorsShape.Side> sides = EnumSet.noneOf(DetectorsShape.Side.class);
        List<String> labels = bonds.texts("sides");
        for (DetectorsShape.Side side : DetectorsShape.Side.values()) {
            if (labels.contains(side.label())) {
                sides.add(side);
            }
        }
        return new DetectorsShape.Bonds(
                sides,
                bonds.number("pad_from_edge"),
                bonds.number("pad_width"),
                bonds.number("loop_height"),
                bonds.number("reach"));
    }

    private void check(DetectorsShape shape) {
        if (shape.pixelPitch() < SMALL_PITCH || shape.pixelPitch() > LARGE_PITCH) {
            findings.warning(
                    "pixel-pitch",
                    fields.place("pixel_pitch"),
                    "a pixel pitch of " + mm(shape.pixelPitch()) + " makes a pixel array of "
                            + mm(shape.pixels() * shape.pixelPitch())
                            + " and is unusual, expected from 1 um to 100 um: check its unit");
        }
        if (2L * shape.referencePixels() >= shape.pixels()) {
            report(
                    "pixels",
                    fields,
                    "reference_pixels",
                    "a border of " + shape.referencePixels() + " reference pixels leaves none of " + shape.pixels()
                            + " pixels, expected less than half");
        }
        shape.underfill().ifPresent(fillet -> checkUnderfill(shape, fillet));
        shape.bonds().ifPresent(bonds -> checkBonds(shape, bonds));
        checkNeighbours(shape);
    }

    private void checkUnderfill(DetectorsShape shape, DetectorsShape.Underfill fillet) {
        if (fillet.height() >= shape.dieThickness()) {
            report(
                    "underfill",
                    fields.fields("underfill"),
                    "height",
                    "the underfill is " + mm(fillet.height()) + " high, expected less than the die, which is "
                            + mm(shape.dieThickness()) + " thick");
        }
        for (DetectorsShape.Side side : DetectorsShape.Side.values()) {
            double ledge = shape.readoutLedge().on(side);
            if (ledge > 0 && fillet.width() >= ledge) {
                report(
                        "underfill",
                        fields.fields("underfill"),
                        "width",
                        "the underfill is " + mm(fillet.width()) + " wide, expected less than the ledge toward "
                                + side.label() + ", which is " + mm(ledge) + " wide");
                return;
            }
        }
    }

    private void checkBonds(DetectorsShape shape, DetectorsShape.Bonds bonds) {
        Fields keys = fields.fields("bonds");
        if (bonds.sides().size() < keys.texts("sides").size()) {
            report("bonds", keys, "sides", "a side is named twice, expected each side once");
        }
        double fillet = shape.underfill().map(DetectorsShape.Underfill::width).orElse(0.0);
        for (DetectorsShape.Side side : bonds.sides()) {
            double room = Math.max(0, shape.readoutLedge().on(side) - fillet);
            if (bonds.padFromEdge() + bonds.padWidth() > room * (1 + ROUNDING)) {
                report(
                        "bonds",
                        keys,
                        "pad_width",
                        "the pads end " + mm(bonds.padFromEdge() + bonds.padWidth())
                                + " from the edge of the readout, expected within the ledge toward " + side.label()
                                + ", which has " + mm(room) + (fillet > 0 ? " beside the underfill" : ""));
            }
            double margin = shape.carrierMargin().on(side);
            if (bonds.reach() > margin * (1 + ROUNDING)) {
                report(
                        "bonds",
                        keys,
                        "reach",
                        "the wires reach " + mm(bonds.reach())
                                + " beyond the readout, expected within the carrier, which has " + mm(margin)
                                + " toward " + side.label());
            }
        }
    }

    private void checkNeighbours(DetectorsShape shape) {
        double alongX =
                NeighbourRoom.widest(shape, shape.columns(), DetectorsShape.Side.MINUS_X, DetectorsShape.Side.PLUS_X);
        double alongY =
                NeighbourRoom.widest(shape, shape.rows(), DetectorsShape.Side.MINUS_Y, DetectorsShape.Side.PLUS_Y);
        checkRoom("x", alongX, shape.spacingX());
        checkRoom("y", alongY, shape.spacingY());
    }

    private void checkRoom(String axis, double needed, double spacing) {
        if (spacing > 0 && needed > spacing * (1 + ROUNDING)) {
            report(
                    "overlap",
                    fields,
                    "spacing",
                    "neighbours along " + axis + " need " + mm(needed)
                            + " from centre to centre, expected a spacing of at least that, got " + mm(spacing));
        }
    }

    private void report(String code, Fields holder, String key, String message) {
        sound = false;
        findings.error(code, holder.place(key), message);
    }

    private static String mm(double length) {
        return Wording.number(length) + " mm";
    }
}
