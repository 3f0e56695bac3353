package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.Placement;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Where a part stands: mirrored, then turned, then moved.
 *
 * @param findings receives what is wrong
 */
record PlacementBuilder(Findings findings) {
    /** The placement; empty, with a finding, if an axis is no direction. */
    Optional<Placement> placement(Fields part) {
        Placement placement = Placement.NONE;
        if (part.has("mirror")) {
            placement = placement.thenMirrored(axis(part.text("mirror")));
        }
        for (Value turn : part.list("turn")) {
            Fields fields = (Fields) turn;
            Vector3D axis = fields.find("about").orElseThrow() instanceof Value.Items components
                    ? vector(components.items())
                    : axis(fields.text("about"));
            if (axis.norm() == 0) {
                findings.error(
                        "axis",
                        fields.place("about"),
                        "the axis [0, 0, 0] has no direction, expected one that is not 0");
                return Optional.empty();
            }
            placement = placement.thenTurned(axis, fields.number("by"));
        }
        return Optional.of(placement.thenMoved(vector(part.list("at"))));
    }

    /** The repeat, if there is one. */
    static Optional<Part.Repeat> repeat(Fields part) {
        return part.ifGiven("repeat", fields -> {
            List<Integer> count = fields.counts("count");
            List<Double> step = fields.numbers("step");
            return new Part.Repeat(count.get(0), count.get(1), step.get(0), step.get(1));
        });
    }

    private static Vector3D axis(String name) {
        return switch (name) {
            case "x" -> Vector3D.Unit.PLUS_X;
            case "y" -> Vector3D.Unit.PLUS_Y;
            default -> Vector3D.Unit.PLUS_Z;
        };
    }

    private static Vector3D vector(List<Value> three) {
        return Vector3D.of(Fields.number(three.get(0)), Fields.number(three.get(1)), Fields.number(three.get(2)));
    }
}
