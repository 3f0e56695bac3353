package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.Ring;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Wording;
import darkrim.layout.mesh.MeshFiles;
import java.util.Optional;

/**
 * A part of a file.
 *
 * @param finishes knows the names of finishes
 * @param meshes the mesh files of the layout
 * @param findings receives what is wrong
 */
record PartBuilder(FinishBuilder finishes, MeshFiles meshes, Findings findings) {
    /** The part; empty, with a finding, if it cannot be as described. */
    Optional<Part> build(String name, Fields fields, Place place) {
        Optional<Shape> shape = shape(fields);
        Optional<darkrim.geom.Placement> placement = new PlacementBuilder(findings).placement(fields);
        Optional<Part.Repeat> repeat = PlacementBuilder.repeat(fields);
        repeat.ifPresent(copies -> checkSteps(copies, fields));
        Optional<String> finish = fields.find("finish").map(Fields::text);
        if (shape.isEmpty()
                || placement.isEmpty()
                || !finish.map(finishes::isKnown).orElse(true)) {
            return Optional.empty();
        }
        Optional<PlacementTolerance> tolerance = new ToleranceBuilder(findings).ofPart(fields);
        return Optional.of(new Part(name, shape.get(), placement.get(), repeat, finish, tolerance, place));
    }

    private Optional<Shape> shape(Fields fields) {
        return switch (fields.variant()) {
            case "detectors" -> new DetectorsBuilder(fields, findings).build();
            case "plate" -> new PlateBuilder(fields, findings).build();
            case "box" -> box(fields);
            case "tube" -> tube(fields);
            case "block" ->
                Optional.of(new Shape.Block(fields.number("width"), fields.number("depth"), fields.number("height")));
            case "disc" ->
                new OutlineBuilder(findings)
                        .ring(fields)
                        .map(outline -> new Shape.Disc(((Ring) outline).radius(), ((Ring) outline).hole()));
            case "rectangle" -> Optional.of(new Shape.Rectangle(fields.number("width"), fields.number("depth")));
            case "mesh" -> new MeshBuilder(finishes, meshes, findings).build(fields);
            case "cone" -> new TurnedPartBuilder(fields, findings).cone();
            case "revolved" -> new TurnedPartBuilder(fields, findings).revolved();
            case "screw_head" -> new TurnedPartBuilder(fields, findings).screwHead();
            case "labyrinth_joint" -> new TurnedPartBuilder(fields, findings).labyrinthJoint();
            case "vanes" -> new VanesBuilder(fields, findings).build();
            case "extruded" -> new CutPartBuilder(fields, findings).extruded();
            case "honeycomb" -> new CutPartBuilder(fields, findings).honeycomb();
            case "cold_stop" -> new CutPartBuilder(fields, findings).coldStop();
            case "bond_wires" -> new CutPartBuilder(fields, findings).bondWires();
            case "sphere_cap" -> Optional.of(new Shape.SphereCap(fields.number("radius"), fields.number("half_angle")));
            default -> throw new IllegalStateException("nothing reads the kind of part '" + fields.variant() + "'");
        };
    }

    private Optional<Shape> box(Fields fields) {
        double width = fields.number("width");
        double depth = fields.number("depth");
        double height = fields.number("height");
        double tilt = fields.number("tilt");
        double atTop = Math.min(width, depth) + 2 * height * StrictMath.tan(Math.toRadians(tilt));
        if (atTop < Kinds.TINY) {
            findings.error(
                    "walls",
                    fields.place("tilt"),
                    "walls of " + Wording.number(height) + " mm that lean by " + Wording.number(tilt)
                            + " deg close an inside of " + Wording.number(Math.min(width, depth))
                            + " mm, expected less tilt");
            return Optional.empty();
        }
        return Optional.of(
                new Shape.Box(width, depth, fields.number("base"), height, tilt, fields.number("thickness")));
    }

    private Optional<Shape> tube(Fields fields) {
        double inner = fields.number("inner_diameter");
        double outer = fields.number("outer_diameter");
        if (inner >= outer) {
            findings.error(
                    "tube",
                    fields.place("inner_diameter"),
                    "the inner diameter of " + Wording.number(inner) + " mm leaves no wall inside the outer of "
                            + Wording.number(outer) + " mm, expected it smaller");
            return Optional.empty();
        }
        return Optional.of(new Shape.Tube(inner / 2, outer / 2, fields.number("base"), fields.number("height")));
    }

    private void checkSteps(Part.Repeat copies, Fields part) {
        boolean stacked = (copies.columns() > 1 && copies.stepX() == 0) || (copies.rows() > 1 && copies.stepY() == 0);
        if (stacked) {
            findings.error(
                    "overlap",
                    part.fields("repeat").place("step"),
                    "a step of 0 puts copies in the same place, expected a step along each direction with copies");
        }
    }
}
