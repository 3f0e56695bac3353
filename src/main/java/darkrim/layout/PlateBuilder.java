package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** A plate with its openings. */
final class PlateBuilder {
    /** Steps in the paths of a plate's other surfaces. */
    private static final Set<String> TAKEN = Set.of("top", "underside", "rim");

    private final Fields fields;
    private final Findings findings;
    private final OutlineBuilder outlines;
    private boolean sound = true;

    PlateBuilder(Fields fields, Findings findings) {
        this.fields = fields;
        this.findings = findings;
        this.outlines = new OutlineBuilder(findings);
    }

    /** The plate; empty, with findings, if it cannot be as described. */
    Optional<Shape> build() {
        Optional<Outline> outer = outer();
        double thickness = fields.number("thickness");
        OpeningFit fit = new OpeningFit(thickness, findings);
        List<Shape.Openings> groups = new ArrayList<>();
        Set<String> names = new HashSet<>(TAKEN);
        for (Value value : fields.list("openings")) {
            Fields keys = (Fields) value;
            checkName(keys, names);
            openings(keys, thickness)
                    .ifPresentOrElse(
                            group -> {
                                groups.add(group);
                                sound &= fit.add(group, keys.place());
                            },
                            () -> sound = false);
        }
        if (outer.isPresent()) {
            sound &= fit.check(outer.get());
        }
        return outer.filter(outline -> sound)
                .map(outline -> new Shape.Plate(outline, fields.number("height"), thickness, groups));
    }

    private Optional<Outline> outer() {
        if (fields.has("size")) {
            return Optional.of(OutlineBuilder.rectangle(fields.numbers("size")));
        }
        return fields.has("diameter") ? outlines.ring(fields) : outlines.polygon(fields);
    }

    private void checkName(Fields keys, Set<String> names) {
        String name = keys.text("name");
        if (!names.add(name)) {
            findings.error(
                    "duplicate-name",
                    keys.place("name"),
                    TAKEN.contains(name)
                            ? "'" + name
                                    + "' names another surface of the plate, expected another name for the openings"
                            : "two groups of openings are named '" + Wording.shortened(name)
                                    + "', expected the key 'name' to tell them apart");
            sound = false;
        }
    }

    private Optional<Shape.Openings> openings(Fields keys, double thickness) {
        Optional<GridFields> grid = GridFields.of(keys, findings);
        Optional<Outline> outline = outline(keys);
        Optional<Shape.KnifeEdge> edge = keys.ifGiven("knife_edge", PlateBuilder::knifeEdge);
        if (edge.isPresent() && edge.get().land() >= thickness) {
            findings.error(
                    "knife-edge",
                    keys.fields("knife_edge").place("land"),
                    "the land of " + Wording.number(edge.get().land()) + " mm leaves no bevel in a plate of "
                            + Wording.number(thickness) + " mm, expected it thinner");
            return Optional.empty();
        }
        Optional<Shape.Undercut> undercut = keys.ifGiven("undercut", PlateBuilder::undercut);
        if (grid.isEmpty() || outline.isEmpty() || !undercutFits(keys, undercut, thickness)) {
            return Optional.empty();
        }
        Vector2D centre = OutlineBuilder.point(keys.list("centre"));
        return Optional.of(new Shape.Openings(
                keys.text("name"),
                outline.get(),
                grid.get().columns(),
                grid.get().rows(),
                grid.get().stepX(),
                grid.get().stepY(),
                centre,
                edge,
                undercut));
    }

    private boolean undercutFits(Fields keys, Optional<Shape.Undercut> undercut, double thickness) {
        if (undercut.isEmpty()) {
            return true;
        }
        if (keys.has("knife_edge")) {
            findings.error(
                    "undercut",
                    keys.place("undercut"),
                    "the opening has a knife edge and an undercut, expected one of them");
            return false;
        }
        if (undercut.get().land() >= thickness) {
            findings.error(
                    "undercut",
                    keys.fields("undercut").place("land"),
                    "the land of " + Wording.number(undercut.get().land()) + " mm leaves no undercut in a plate of "
                            + Wording.number(thickness) + " mm, expected it thinner");
            return false;
        }
        return true;
    }

    private Optional<Outline> outline(Fields keys) {
        return switch (keys.variant()) {
            case "rectangle" -> Optional.of(OutlineBuilder.rectangle(keys.numbers("size")));
            case "disc" -> outlines.ring(keys);
            default -> outlines.polygon(keys);
        };
    }

    private static Shape.KnifeEdge knifeEdge(Fields edge) {
        return new Shape.KnifeEdge(edge.number("land"), edge.number("bevel"), toward(edge));
    }

    private static Shape.Undercut undercut(Fields step) {
        return new Shape.Undercut(step.number("land"), step.number("depth"), toward(step));
    }

    /** The side that the key {@code toward} names. */
    static Shape.Toward toward(Fields fields) {
        return fields.text("toward").equals("pupil") ? Shape.Toward.PUPIL : Shape.Toward.DETECTOR;
    }
}
