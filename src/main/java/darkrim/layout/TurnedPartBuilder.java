package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Parts about the z axis from their keys.
 *
 * @param fields the keys
 * @param findings receives what is wrong
 */
record TurnedPartBuilder(Fields fields, Findings findings) {
    Optional<Shape> cone() {
        return Optional.of(new TurnedShape.Cone(
                fields.number("base_diameter") / 2,
                fields.number("top_diameter") / 2,
                fields.number("base"),
                fields.number("height"),
                fields.number("thickness"),
                fields.number("chord")));
    }

    Optional<Shape> revolved() {
        boolean sound = true;
        for (Value corner : fields.list("profile")) {
            double distance = Fields.number(((Value.Items) corner).items().get(0));
            if (distance < 0) {
                findings.error(
                        "outline",
                        corner.place(),
                        "a corner lies " + Wording.number(-distance)
                                + " mm on the other side of the axis, expected a distance of 0 or more");
                sound = false;
            }
        }
        Optional<List<String>> sides = sides(fields, "profile", findings);
        Optional<Corners> profile = Corners.of(fields, "profile", findings);
        if (!sound || sides.isEmpty() || profile.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new TurnedShape.Revolved(
                profile.get().loop(), profile.get().inOrder(sides.get()), fields.number("chord")));
    }

    /**
     * A loop of corners, counter-clockwise.
     *
     * @param loop the corners
     * @param turned whether the file has them clockwise
     */
    record Corners(List<Vector2D> loop, boolean turned) {
        /** The corners of a key; empty, with a finding, if they do not go around a simple outline. */
        static Optional<Corners> of(Fields fields, String key, Findings findings) {
            Optional<Outline> polygon = new OutlineBuilder(findings).polygon(fields, key);
            List<Vector2D> written = new ArrayList<>();
            fields.list(key).forEach(corner -> written.add(OutlineBuilder.point(((Value.Items) corner).items())));
            return polygon.map(outline -> new Corners(
                    ((Polygon) outline).corners(),
                    !((Polygon) outline).corners().equals(written)));
        }

        /** The names of the sides as the counter-clockwise loop has them: side i of it runs from corner i to the next. */
        List<String> inOrder(List<String> names) {
            if (!turned) {
                return names;
            }
            // Turned round, corner i is corner n - 1 - i, so side i is side n - 2 - i, and the last stays the last.
            List<String> reversed = new ArrayList<>(names.subList(0, names.size() - 1));
            Collections.reverse(reversed);
            reversed.add(names.get(names.size() - 1));
            return reversed;
        }
    }

    /** The names of the sides of an outline, numbers where none are given; empty, with a finding, if there are more or fewer than sides. */
    static Optional<List<String>> sides(Fields fields, String corners, Findings findings) {
        int count = fields.list(corners).size();
        if (!fields.has("sides")) {
            List<String> numbers = new ArrayList<>();
            for (int i = 1; i <= count; i++) {
                numbers.add(String.valueOf(i));
            }
            return Optional.of(numbers);
        }
        List<String> names = fields.texts("sides");
        if (names.size() != count) {
            findings.error(
                    "sides",
                    fields.place("sides"),
                    names.size() + " names for " + count
                            + " sides, expected one for each: side 1 runs from corner 1 to corner 2");
            return Optional.empty();
        }
        return Optional.of(names);
    }

    Optional<Shape> screwHead() {
        double diameter = fields.number("diameter");
        double height = fields.number("height");
        double chamfer = fields.number("chamfer");
        boolean sound = true;
        if (chamfer >= height || chamfer >= diameter / 2) {
            findings.error(
                    "screw-head",
                    fields.place("chamfer"),
                    "the chamfer of " + Wording.number(chamfer) + " mm leaves no side or no top, expected it smaller");
            sound = false;
        }
        Optional<TurnedShape.Socket> socket =
                fields.ifGiven("socket", keys -> new TurnedShape.Socket(keys.number("across"), keys.number("depth")));
        if (socket.isPresent()) {
            Fields keys = fields.fields("socket");
            if (socket.get().depth() >= height) {
                findings.error(
                        "screw-head",
                        keys.place("depth"),
                        "the socket of " + Wording.number(socket.get().depth()) + " mm goes through the head of "
                                + Wording.number(height) + " mm, expected it shallower");
                sound = false;
            }
            double corner = socket.get().across() / StrictMath.sqrt(3);
            // The rim of the top is a polygon of at least 48 sides.
            double least = (diameter / 2 - chamfer) * StrictMath.cos(Math.PI / 48);
            if (corner >= least) {
                findings.error(
                        "screw-head",
                        keys.place("across"),
                        "the corners of the socket lie " + Wording.number(corner)
                                + " mm from the axis and leave no rim, expected a narrower socket");
                sound = false;
            }
        }
        return sound
                ? Optional.of(new TurnedShape.ScrewHead(diameter / 2, height, chamfer, socket, fields.number("chord")))
                : Optional.empty();
    }

    Optional<Shape> labyrinthJoint() {
        Outline path = fields.has("size")
                ? OutlineBuilder.rectangle(fields.numbers("size"))
                : Ring.disc(fields.number("diameter") / 2);
        TurnedShape.LabyrinthJoint joint = new TurnedShape.LabyrinthJoint(
                path,
                fields.number("tongue"),
                fields.number("gap"),
                fields.number("engagement"),
                fields.number("wall"),
                fields.number("floor"),
                fields.number("chord"));
        String key = fields.has("size") ? "size" : "diameter";
        double across = fields.numbers(key).stream()
                .mapToDouble(Double::doubleValue)
                .min()
                .orElseThrow();
        if (across <= 2 * joint.halfWidth()) {
            findings.error(
                    "labyrinth-joint",
                    fields.place(key),
                    "a joint " + Wording.number(2 * joint.halfWidth()) + " mm wide closes an inside of "
                            + Wording.number(across) + " mm, expected it larger");
            return Optional.empty();
        }
        return Optional.of(joint);
    }
}
