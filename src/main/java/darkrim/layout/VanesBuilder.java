package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.VanesShape.Taper;
import darkrim.layout.VanesShape.Tip;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A set of vanes from its keys. */
final class VanesBuilder {
    private static final List<String> EVEN = List.of("count", "first", "spacing");

    private final Fields fields;
    private final Findings findings;
    private boolean sound = true;

    VanesBuilder(Fields fields, Findings findings) {
        this.fields = fields;
        this.findings = findings;
    }

    /** The vanes; empty, with findings, if they cannot be as described. */
    Optional<Shape> build() {
        Taper wall = taper("wall_diameter");
        Taper edge = fields.has("depth")
                ? new Taper(wall.atBase() - fields.number("depth"), wall.atTop() - fields.number("depth"))
                : taper("edge_diameter");
        String key = fields.has("depth") ? "depth" : "edge_diameter";
        if (!(edge.atBase() > 0 && edge.atTop() > 0)) {
            error(key, "the vanes leave no opening, expected less depth");
        } else if (!(edge.atBase() < wall.atBase() && edge.atTop() < wall.atTop())) {
            error(key, "the edges do not stand out from the wall, expected a smaller diameter than that of the wall");
        }
        Tip tip = tip();
        List<Double> heights = heights();
        checkHeights(heights);
        if (!sound) {
            return Optional.empty();
        }
        return Optional.of(new VanesShape(
                wall,
                edge,
                fields.number("base"),
                fields.number("height"),
                fields.has("wall_thickness")
                        ? OptionalDouble.of(fields.number("wall_thickness"))
                        : OptionalDouble.empty(),
                heights,
                fields.number("thickness"),
                fields.number("tilt"),
                tip,
                fields.number("chord")));
    }

    private Taper taper(String key) {
        List<Double> both = fields.numbers(key);
        return new Taper(both.get(0) / 2, both.get(both.size() - 1) / 2);
    }

    private Tip tip() {
        double thickness = fields.number("thickness");
        double radius = fields.number("edge_radius");
        if (!fields.has("knife_edge")) {
            if (2 * radius > thickness) {
                error(
                        "edge_radius",
                        "a vane of " + Wording.number(thickness) + " mm can be rounded to a radius of "
                                + Wording.number(thickness / 2) + " mm at most, expected a smaller radius");
            }
            return new Tip(thickness - 2 * radius, 0, radius, Shape.Toward.PUPIL);
        }
        Fields edge = fields.fields("knife_edge");
        double land = edge.number("land");
        double bevel = edge.number("bevel");
        if (land > 0 && radius > 0) {
            error("edge_radius", "the knife edge has a land and is rounded, expected one of them");
        }
        double taken = land + radius * (1 + StrictMath.sin(Math.toRadians(bevel)));
        if (taken >= thickness) {
            findings.error(
                    "knife-edge",
                    edge.place(),
                    "the edge takes " + Wording.number(taken) + " mm and leaves no bevel in a vane of "
                            + Wording.number(thickness) + " mm, expected a thicker vane");
            sound = false;
        }
        return new Tip(land, bevel, radius, PlateBuilder.toward(edge));
    }

    private List<Double> heights() {
        List<String> given = EVEN.stream().filter(fields::has).toList();
        if (fields.has("heights")) {
            if (!given.isEmpty()) {
                error(
                        given.get(0),
                        "the vanes have 'heights' as well, expected either these or 'count', 'first' and 'spacing'");
            }
            return fields.numbers("heights");
        }
        boolean even =
                fields.has("count") && fields.has("first") && (fields.has("spacing") || fields.count("count") == 1);
        if (!even) {
            findings.error(
                    "vanes",
                    fields.place(),
                    "it is not said where the vanes are, expected 'heights', or 'count', 'first' and 'spacing'");
            sound = false;
            return List.of();
        }
        double step = fields.has("spacing") ? fields.number("spacing") : 0;
        List<Double> heights = new ArrayList<>();
        for (int i = 0; i < fields.count("count"); i++) {
            heights.add(fields.number("first") + i * step);
        }
        return heights;
    }

    private void checkHeights(List<Double> heights) {
        double thickness = fields.number("thickness");
        for (int i = 0; i < heights.size(); i++) {
            double z = heights.get(i);
            double above = z - fields.number("base");
            if (!(above > 0 && above <= fields.number("height"))) {
                error(
                        place(i),
                        "vane " + (i + 1) + " at " + Wording.number(z)
                                + " mm does not lie between base and top of the wall, from "
                                + Wording.number(fields.number("base")) + " to "
                                + Wording.number(fields.number("base") + fields.number("height"))
                                + " mm, expected it within");
            } else if (i > 0 && !(z - heights.get(i - 1) > thickness)) {
                error(
                        place(i),
                        "vane " + (i + 1) + " lies " + Wording.number(z - heights.get(i - 1)) + " mm above vane " + i
                                + ", expected more than the thickness of " + Wording.number(thickness) + " mm");
            }
        }
    }

    private Place place(int vane) {
        return fields.has("heights") ? fields.list("heights").get(vane).place() : fields.place("count");
    }

    private void error(String key, String message) {
        error(fields.place(key), message);
    }

    private void error(Place place, String message) {
        findings.error("vanes", place, message);
        sound = false;
    }
}
