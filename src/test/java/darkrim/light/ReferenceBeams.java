package darkrim.light;

import static darkrim.reference.ReferenceCase.vector;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import tools.jackson.databind.JsonNode;

/** The light of a case as a beam. */
final class ReferenceBeams {
    /** Distance and side of the square that stands for collimated light, mm: parallel to 1e-4 rad, even to 1e-5 over 100 mm. */
    private static final double FAR = 1e7;

    private static final double FAR_SIDE = 1000;

    private ReferenceBeams() {}

    /** A flat surface of a case as a pupil: it shines to its active side. Curved outlines are exact. */
    static Beam pupil(JsonNode surface, ReferenceMove move) {
        return switch (surface.get("type").asString()) {
            case "disk" -> {
                double radius = surface.get("radius").asDouble();
                double hole = surface.get("innerRadius").asDouble();
                yield Beam.of(new Pupil(new Ring(radius, hole), moved(middle(surface), move)));
            }
            case "rect" -> {
                double width = vector(surface.get("u")).norm();
                double height = vector(surface.get("v")).norm();
                yield Beam.of(new Pupil(Polygon.rectangle(width, height), moved(middle(surface), move)));
            }
            case "polygon" -> {
                Frame frame = middle(surface);
                List<Vector2D> inPlane = corners(surface).stream()
                        .map(corner -> Vector2D.of(frame.inU(corner), frame.inV(corner)))
                        .toList();
                yield Beam.of(new Pupil(Polygon.of(inPlane), moved(frame, move)));
            }
            default -> throw new IllegalArgumentException("no pupil for " + surface);
        };
    }

    /**
     * Collimated light: relative irradiance 1 is its irradiance on a surface that faces +z.
     *
     * @param from direction toward the light, any length, upward
     */
    static Beam collimated(Vector3D from) {
        Vector3D unit = from.normalize();
        Frame frame = Frame.about(unit.multiply(FAR), unit.negate());
        Beam beam = Beam.of(new Pupil(Polygon.rectangle(FAR_SIDE, FAR_SIDE), frame));
        double expected = FAR_SIDE * FAR_SIDE / (FAR * FAR) * unit.getZ();
        assertThat(beam.referenceIrradiance()).isCloseTo(expected, withinPercentage(1e-3));
        return beam;
    }

    /** The frame of a point or flat surface of a case: in its middle (of a polygon: a corner), the normal to its active side. */
    static Frame middle(JsonNode surface) {
        if (surface.has("position")) {
            return Frame.about(vector(surface.get("position")), vector(surface.get("normal")));
        }
        if (surface.has("center")) {
            return Frame.about(vector(surface.get("center")), vector(surface.get("normal")));
        }
        if (surface.has("vertices")) {
            List<Vector3D> corners = corners(surface);
            Vector3D first = corners.get(0);
            return Frame.of(
                    first, corners.get(1).subtract(first), corners.get(2).subtract(first));
        }
        Vector3D u = vector(surface.get("u"));
        Vector3D v = vector(surface.get("v"));
        Vector3D middle = vector(surface.get("origin")).add(u.add(v).multiply(0.5));
        return Frame.of(middle, u, v);
    }

    /** The corners of a polygon, mm. */
    static List<Vector3D> corners(JsonNode polygon) {
        List<Vector3D> corners = new ArrayList<>();
        polygon.get("vertices").forEach(corner -> corners.add(vector(corner)));
        return corners;
    }

    private static Frame moved(Frame frame, ReferenceMove move) {
        return Frame.of(move.point(frame.origin()), move.direction(frame.u()), move.direction(frame.v()));
    }
}
