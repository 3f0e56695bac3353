package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Wording;
import java.util.List;
import java.util.Optional;

/**
 * Parts whose outlines go straight through, and wire bonds, from their keys.
 *
 * @param fields the keys
 * @param findings receives what is wrong
 */
record CutPartBuilder(Fields fields, Findings findings) {
    /** More cells than this could not be triangulated within seconds. */
    private static final int MOST_CELLS = 2_000;

    Optional<Shape> extruded() {
        Optional<List<String>> sides = TurnedPartBuilder.sides(fields, "corners", findings);
        Optional<TurnedPartBuilder.Corners> corners = TurnedPartBuilder.Corners.of(fields, "corners", findings);
        if (sides.isEmpty() || corners.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new CutShape.Extruded(
                Polygon.of(corners.get().loop()), corners.get().inOrder(sides.get()), fields.number("length")));
    }

    Optional<Shape> honeycomb() {
        CutShape.Honeycomb comb = new CutShape.Honeycomb(
                fields.has("size")
                        ? OutlineBuilder.rectangle(fields.numbers("size"))
                        : Ring.disc(fields.number("diameter") / 2),
                fields.number("height"),
                fields.number("thickness"),
                fields.number("cell"),
                fields.number("wall"));
        double pitch = comb.cell() + comb.wall();
        double cells = comb.outer().area() / (StrictMath.sqrt(0.75) * pitch * pitch);
        if (cells > MOST_CELLS) {
            findings.error(
                    "too-many",
                    fields.place("cell"),
                    "the honeycomb has about " + Math.round(cells) + " cells, expected at most " + MOST_CELLS);
            return Optional.empty();
        }
        return Optional.of(comb);
    }

    Optional<Shape> coldStop() {
        double outer = fields.number("diameter");
        double opening = fields.number("opening");
        double hub = fields.number("hub");
        double width = fields.number("arm_width");
        int arms = fields.count("arms");
        boolean sound = true;
        if (opening >= outer) {
            findings.error(
                    "cold-stop",
                    fields.place("opening"),
                    "the opening of " + Wording.number(opening) + " mm leaves nothing of the stop of "
                            + Wording.number(outer) + " mm, expected it smaller");
            sound = false;
        }
        if (hub >= opening) {
            findings.error(
                    "cold-stop",
                    fields.place("hub"),
                    "the hub of " + Wording.number(hub) + " mm fills the opening of " + Wording.number(opening)
                            + " mm, expected it smaller");
            sound = false;
        }
        // Arms that leave something of the hub's rim between them do so everywhere farther out.
        if (width >= hub * StrictMath.sin(Math.PI / arms)) {
            findings.error(
                    "cold-stop",
                    fields.place("arm_width"),
                    arms + " arms of " + Wording.number(width) + " mm meet at a hub of " + Wording.number(hub)
                            + " mm, expected narrower arms or a larger hub");
            sound = false;
        }
        return sound
                ? Optional.of(new CutShape.ColdStop(
                        outer / 2,
                        opening / 2,
                        hub / 2,
                        arms,
                        width,
                        fields.number("height"),
                        fields.number("thickness"),
                        fields.number("chord")))
                : Optional.empty();
    }

    Optional<Shape> bondWires() {
        double diameter = fields.number("wire_diameter");
        double loop = fields.number("loop_height");
        double drop = fields.number("drop");
        int count = fields.count("count");
        boolean sound = true;
        if (loop <= diameter || loop + drop <= diameter) {
            findings.error(
                    "bond-wires",
                    fields.place("loop_height"),
                    "the loop of " + Wording.number(loop)
                            + " mm does not rise above both feet by more than the wire's diameter of "
                            + Wording.number(diameter) + " mm, expected it higher");
            sound = false;
        }
        if (count > 1 && !fields.has("spacing")) {
            findings.error(
                    "missing-spacing",
                    fields.place("count"),
                    count + " wires need the key 'spacing', expected the step from wire to wire");
            sound = false;
        } else if (count > 1 && fields.number("spacing") <= diameter) {
            findings.error(
                    "overlap",
                    fields.place("spacing"),
                    "wires of " + Wording.number(diameter) + " mm run into each other at a step of "
                            + Wording.number(fields.number("spacing")) + " mm, expected a larger step");
            sound = false;
        }
        return sound
                ? Optional.of(new BondWiresShape(
                        diameter,
                        fields.number("span"),
                        drop,
                        loop,
                        count,
                        fields.has("spacing") ? fields.number("spacing") : 0,
                        fields.number("chord")))
                : Optional.empty();
    }
}
