package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Outlines from their keys.
 *
 * @param findings receives what is wrong with an outline
 */
record OutlineBuilder(Findings findings) {
    /** A polygon from a list of corners; empty, with a finding, if they do not go around a simple outline. */
    Optional<Outline> polygon(Fields fields) {
        return polygon(fields, "corners");
    }

    /** The same from the list of corners of a key. */
    Optional<Outline> polygon(Fields fields, String key) {
        List<Vector2D> corners = new ArrayList<>();
        for (Value corner : fields.list(key)) {
            Vector2D point = point(((Value.Items) corner).items());
            int same = corners.indexOf(point);
            if (same >= 0) {
                findings.error(
                        "outline",
                        corner.place(),
                        "corner " + (corners.size() + 1) + " repeats corner " + (same + 1)
                                + ", expected every corner once; the outline closes by itself");
                return Optional.empty();
            }
            corners.add(point);
        }
        try {
            return Optional.of(Polygon.of(corners));
        } catch (IllegalArgumentException notSimple) {
            findings.error(
                    "outline",
                    fields.place(key),
                    notSimple.getMessage() + ", expected corners in order around an area, without crossings");
            return Optional.empty();
        }
    }

    /** A disc with an optional hole, from their diameters; empty, with a finding, if the hole leaves nothing. */
    Optional<Outline> ring(Fields fields) {
        double diameter = fields.number("diameter");
        double hole = fields.has("hole") ? fields.number("hole") : 0;
        if (hole >= diameter) {
            findings.error(
                    "hole",
                    fields.place("hole"),
                    "the hole of " + Wording.number(hole) + " mm leaves nothing of the disc of "
                            + Wording.number(diameter) + " mm, expected a smaller hole");
            return Optional.empty();
        }
        return Optional.of(new Ring(diameter / 2, hole / 2));
    }

    /** A rectangle whose sides are given by a key with one number or two. */
    static Outline rectangle(List<Double> size) {
        return Polygon.rectangle(size.get(0), size.get(size.size() - 1));
    }

    static Vector2D point(List<Value> pair) {
        return Vector2D.of(Fields.number(pair.get(0)), Fields.number(pair.get(1)));
    }
}
