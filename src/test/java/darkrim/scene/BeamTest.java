package darkrim.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.reference.ReferenceCase;
import darkrim.reference.ReferenceCases;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** The irradiance of the unobstructed pupil, against closed forms and against plain sums over the area. */
@ExtendWith(Validation.class)
class BeamTest {
    static Stream<ReferenceCase> circularPupils() {
        return ReferenceCases.family("B").stream().filter(each -> each.kind().equals("E"));
    }

    /** Each receiver is made the origin of the layout, facing +z. Sources: in each case of cases.json. */
    @ParameterizedTest
    @MethodSource("circularPupils")
    void theUnobstructedPupilGivesTheIrradianceOfTheBooks(ReferenceCase known) {
        JsonNode emitter = known.geometry().get("emitter");
        JsonNode receiver = known.geometry().get("receiver");
        Ring ring = new Ring(
                emitter.get("radius").asDouble(), emitter.get("innerRadius").asDouble());
        Vector3D facing = ReferenceCase.vector(receiver.get("normal"));
        List<Vector3D> points = known.receiverPoints();
        for (int i = 0; i < points.size(); i++) {
            Vector3D centre = ReferenceCase.vector(emitter.get("center")).subtract(points.get(i));
            Frame turned = Frame.about(Vector3D.ZERO, facing);
            Frame pupil = Frame.about(
                    seenFrom(turned, centre), seenFrom(turned, ReferenceCase.vector(emitter.get("normal"))));
            ReferenceScalar scalar = new ReferenceScalar(known, i);
            Validation.requireExact(scalar, "the beam", reference(ring, pupil), 1e-11 * scalar.value());
        }
    }

    @Test
    void theCasesAreThere() {
        assertThat(circularPupils()).hasSize(6);
    }

    /** F = pi r^2 / (r^2 + h^2), any radiometry text: also for pupils as wide as the sky. */
    @ParameterizedTest
    @CsvSource({"22.5, 320", "1, 10000", "50, 50", "1000, 10"})
    void onTheAxisOfADiscTheIrradianceIsThatOfItsHalfAngle(double radius, double height) {
        double expected = Math.PI * radius * radius / (radius * radius + height * height);
        assertThat(reference(Ring.disc(radius), down(0, 0, height))).isCloseTo(expected, within(1e-11 * expected));
    }

    /** Element to a rectangle with one corner above it, four times: catalogue of J. R. Howell, entry B-3 (from memory). */
    @ParameterizedTest
    @CsvSource({"10, 20, 50", "60, 60, 30", "1, 300, 100"})
    void aRectangularPupilGivesTheClosedFormOfARectangle(double width, double height, double distance) {
        double x = width / 2 / distance;
        double y = height / 2 / distance;
        double quarter = (x / Math.sqrt(1 + x * x) * Math.atan(y / Math.sqrt(1 + x * x))
                        + y / Math.sqrt(1 + y * y) * Math.atan(x / Math.sqrt(1 + y * y)))
                / 2;
        double expected = 4 * quarter;
        Validation.requireExact(
                "B07 %.0f x %.0f at %.0f".formatted(width, height, distance),
                "rectangular pupil on its axis, mm",
                "J. R. Howell, 'A Catalog of Radiation Heat Transfer Configuration Factors', entry B-3 (entry number from memory), four times",
                expected,
                "the beam",
                reference(Polygon.rectangle(width, height), down(0, 0, distance)),
                1e-13 * expected);
    }

    /** Against the plain sum of cos cos / r^2 over 160,000 cells, good to 1e-6: shifted and tilted pupils have no short closed form. */
    @Test
    void shiftedAndTiltedPupilsGiveTheSumOverTheirArea() {
        List<Vector2D> hexagon = Stream.iterate(0, k -> k + 1)
                .limit(6)
                .map(k -> Vector2D.of(25 * Math.cos(k * Math.PI / 3), 25 * Math.sin(k * Math.PI / 3)))
                .toList();
        List<Vector2D> arrow =
                List.of(Vector2D.of(-20, -15), Vector2D.of(20, 0), Vector2D.of(-20, 15), Vector2D.of(-10, 0));
        Frame tilted = Frame.about(Vector3D.of(40, -30, 180), Vector3D.of(0.3, 0.1, -1));
        for (Outline outline : List.of(new Ring(30, 12), Polygon.of(hexagon), Polygon.of(arrow))) {
            double expected = sum(outline, tilted);
            assertThat(reference(outline, tilted)).isCloseTo(expected, within(1e-6 * expected));
        }
    }

    @Test
    void aPupilThatLooksAwayDoesNotShine() {
        Frame up = Frame.about(Vector3D.of(0, 0, 100), Vector3D.Unit.PLUS_Z);
        assertThat(reference(Ring.disc(10), up)).isNegative();
        assertThat(reference(Polygon.rectangle(4, 4), up)).isNegative();
    }

    @Test
    void aFieldLimitPassesLinesInsideItsOutlineOnly() {
        FieldLimit limit =
                new FieldLimit(Polygon.rectangle(20, 10), Frame.about(Vector3D.of(0, 0, 50), Vector3D.Unit.PLUS_Z));
        Vector3D u = limit.frame().u();
        Vector3D v = limit.frame().v();
        Vector3D inside = limit.frame().origin().add(u.multiply(9.99)).add(v.multiply(-4.99));
        Vector3D outside = limit.frame().origin().add(u.multiply(4.99)).add(v.multiply(5.01));
        Vector3D below = Vector3D.of(3, 4, -7);
        assertThat(passes(limit, below, inside)).isTrue();
        assertThat(passes(limit, below, outside)).isFalse();
        // A line has two ends: from above, and from beyond the plane, it is the same line.
        Vector3D above = inside.multiply(2).subtract(below);
        assertThat(passes(limit, above, inside)).isTrue();
        assertThat(limit.passes(3, 4, 50, 1, 0, 0)).isFalse();
    }

    private static boolean passes(FieldLimit limit, Vector3D from, Vector3D to) {
        Vector3D way = to.subtract(from);
        return limit.passes(from.getX(), from.getY(), from.getZ(), way.getX(), way.getY(), way.getZ());
    }

    private static double reference(Outline outline, Frame frame) {
        return Beam.of(new Pupil(outline, frame)).referenceIrradiance();
    }

    private static Frame down(double x, double y, double z) {
        return Frame.about(Vector3D.of(x, y, z), Vector3D.Unit.MINUS_Z);
    }

    private static Vector3D seenFrom(Frame frame, Vector3D direction) {
        return Vector3D.of(direction.dot(frame.u()), direction.dot(frame.v()), direction.dot(frame.normal()));
    }

    private static double sum(Outline outline, Frame frame) {
        int steps = 400;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            for (int j = 0; j < steps; j++) {
                double s = (i + 0.5) / steps;
                double t = (j + 0.5) / steps;
                if (outline instanceof Ring ring) {
                    double radius = ring.hole() + s * (ring.radius() - ring.hole());
                    double angle = 2 * Math.PI * t;
                    double cell = 2 * Math.PI * radius * (ring.radius() - ring.hole());
                    sum += cell * shine(frame, radius * Math.cos(angle), radius * Math.sin(angle));
                } else if (outline instanceof Polygon polygon) {
                    sum += fan(polygon.corners(), frame, s, t);
                }
            }
        }
        return sum / steps / steps;
    }

    /** Triangles from the first corner to each side, those outside of the outline with negative area. */
    private static double fan(List<Vector2D> corners, Frame frame, double s, double t) {
        double sum = 0;
        Vector2D first = corners.get(0);
        for (int k = 1; k + 1 < corners.size(); k++) {
            Vector2D a = corners.get(k).subtract(first);
            Vector2D b = corners.get(k + 1).subtract(first);
            Vector2D p = first.add(a.multiply(s * (1 - t))).add(b.multiply(s * t));
            sum += s * (a.getX() * b.getY() - a.getY() * b.getX()) * shine(frame, p.getX(), p.getY());
        }
        return sum;
    }

    /** cos cos / r^2 for a receiver at the origin that faces +z. */
    private static double shine(Frame frame, double u, double v) {
        Vector3D r = frame.at(u, v);
        double squared = r.normSq();
        return r.getZ() * -r.dot(frame.normal()) / (squared * squared);
    }
}
