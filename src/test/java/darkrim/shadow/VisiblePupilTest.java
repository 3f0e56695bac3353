package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.reference.ReferenceCase;
import darkrim.reference.ReferenceCases;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

@ExtendWith(Validation.class)
class VisiblePupilTest {
    private static final Vector3D UP = Vector3D.Unit.PLUS_Z;

    static Stream<ReferenceCase> points() {
        return Stream.concat(ReferenceCases.beginning("B").stream(), ReferenceCases.beginning("C").stream())
                .filter(c -> List.of("E", "visArea").contains(c.kind()));
    }

    @ParameterizedTest
    @MethodSource("points")
    void areaAndIrradianceOfPointsAgreeWithTheReferenceCases(ReferenceCase reference) {
        Scene scene = scene(reference.geometry(), 0);
        VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
        JsonNode receiver = reference.geometry().get("receiver");
        JsonNode positions = receiver.has("position") ? null : receiver.get("positions");
        double[] expected = reference.answers();
        Vector3D normal = ReferenceCase.vector(receiver.get("normal"));
        for (int i = 0; i < expected.length; i++) {
            Vector3D point = ReferenceCase.vector(positions == null ? receiver.get("position") : positions.get(i));
            PupilView view = visible.from(point, normal);
            double got = reference.kind().equals("E") ? view.irradiance() : view.areaFraction();
            Validation.requireExact(
                    new ReferenceScalar(reference, i), "visible pupil", got, 1e-9 * Math.max(expected[i], 1e-4));
        }
    }

    @Test
    void theRatioToCosineToTheFourthIsThatOfTheReferenceCases() {
        for (ReferenceCase reference : ReferenceCases.beginning("B03")) {
            Scene scene = scene(reference.geometry(), 0);
            VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
            double onAxis = visible.from(Vector3D.ZERO, UP).irradiance();
            double[] x = reference.parameters("x");
            for (int i = 0; i < x.length; i++) {
                double cosine = Math.cos(Math.atan(x[i] / reference.parameter("H")));
                double got = visible.from(Vector3D.of(x[i], 0, 0), UP).irradiance() / (onAxis * Math.pow(cosine, 4));
                Validation.requireExact(new ReferenceScalar(reference, i), "visible pupil", got, 1e-9);
            }
        }
    }

    @Test
    void theMeanOverADieIsThatOfTheReferenceCases() {
        GaussLegendre rule = new GaussLegendre(24);
        for (ReferenceCase reference : ReferenceCases.beginning("B06")) {
            Scene scene = scene(reference.geometry(), 0);
            VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
            double[] die = reference.parameters("die");
            double sum = rule.integrate(
                    die[0],
                    die[1],
                    x -> rule.integrate(
                            die[2],
                            die[3],
                            y -> visible.from(Vector3D.of(x, y, 0), UP).irradiance()));
            double mean = sum / ((die[1] - die[0]) * (die[3] - die[2]));
            Validation.requireExact(
                    new ReferenceScalar(reference, 0), "visible pupil, Gauss's rule over the die", mean, 1e-9 * mean);
        }
    }

    @Test
    void theFactorThroughARoundOpeningIsThatOfTheReferenceCases() {
        GaussLegendre rule = new GaussLegendre(40);
        for (ReferenceCase reference : ReferenceCases.beginning("C05")) {
            double r1 = reference.parameter("r1");
            double scale = reference.parameter("L") / reference.parameter("c");
            double projected = reference.parameter("r3") * scale;
            // The smooth stretches end where the projected opening touches the far disc.
            double[] ends = {
                0,
                Math.min(r1, Math.abs(reference.parameter("r2") - projected) / (scale - 1)),
                Math.min(r1, (reference.parameter("r2") + projected) / (scale - 1)),
                r1
            };
            // A round opening in a wide plate is a limit that every line must pass.
            Scene plain = scene(reference.geometry(), 2);
            FieldLimit opening = new FieldLimit(
                    Ring.disc(reference.parameter("r3")),
                    Frame.about(Vector3D.of(0, 0, reference.parameter("c")), Vector3D.Unit.PLUS_Z));
            Scene scene = new TestParts()
                    .sheet("far", 1e4, 1e4 + 1, 0, 1, -1)
                    .build(new Beam(plain.beam().pupil(), Optional.of(opening), OptionalDouble.empty()));
            VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
            double factor = 0;
            for (int k = 0; k < 3; k++) {
                // Square-root ends, as where two circles begin to cut each other: a = end + (1 - cos) / 2 * length.
                double from = ends[k];
                double length = ends[k + 1] - from;
                factor += rule.integrate(0, Math.PI, t -> {
                    double a = from + 0.5 * (1 - Math.cos(t)) * length;
                    return a * visible.from(Vector3D.of(a, 0, 0), UP).irradiance() * 0.5 * Math.sin(t) * length;
                });
            }
            double expected = reference.answers()[0];
            Validation.requireExact(
                    new ReferenceScalar(reference, 0),
                    "visible pupil, Gauss's rule over the disc",
                    2 * factor / (r1 * r1 * Math.PI),
                    1e-9 * expected);
        }
    }

    @Test
    void anOpeningOfManySidesInsideAndOneAroundARoundOpeningBracketIt() {
        ReferenceCase reference = ReferenceCases.beginning("C05a").get(0);
        double[][] got = new double[2][];
        for (int kind = 0; kind < 2; kind++) {
            Scene scene = scene(reference.geometry(), kind);
            VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
            got[kind] = new double[] {
                visible.from(Vector3D.ZERO, UP).areaFraction(),
                visible.from(Vector3D.of(6, 0, 0), UP).areaFraction()
            };
        }
        // Opening of radius 8 at 30 seen from 80: radius 64/3, centre at 0 or -10; disc of radius 25.
        double[] expected = {64 * 64 / 9.0 / 625, lens(25, 64 / 3.0, 10) / (Math.PI * 625)};
        for (int i = 0; i < 2; i++) {
            assertThat(got[0][i]).isLessThan(expected[i]);
            assertThat(got[1][i]).isGreaterThan(expected[i]).isLessThan(got[0][i] + 4e-5);
        }
    }

    @Test
    void aPointBehindTheKnifeEdgeSeesACircularSegmentOfThePupil() {
        // Fraction (acos q - q sqrt(1 - q^2)) / pi with q = [d + (s - d) H / h] / r: reference family C01.
        double r = 20;
        double height = 200;
        double h = 50;
        Scene scene = new TestParts()
                .sheet("knife", -1e4, 0, -1e4, 1e4, h)
                .build(Beam.of(TestParts.pupilAt(height, Ring.disc(r))));
        VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
        for (int i = 0; i < 1000; i++) {
            double d = -8 + 16 * i / 999.0;
            double q = (d - d * height / h) / r;
            double clamped = Math.max(-1, Math.min(1, q));
            double expected = (Math.acos(clamped) - clamped * Math.sqrt(1 - clamped * clamped)) / Math.PI;
            assertThat(visible.from(Vector3D.of(d, 0.3, 0), UP).areaFraction()).isCloseTo(expected, within(1e-12));
        }
    }

    @Test
    void aFieldLimitBelowThePointKeepsTheLinesThatCrossIt() {
        Pupil pupil = TestParts.pupilAt(100, Polygon.rectangle(20, 20));
        // Lines from the point through x > 0 of the pupil cross z = -10 at x < 0, a tenth as far.
        for (double tilt : new double[] {0, 0.1}) {
            FieldLimit limit = new FieldLimit(
                    Polygon.rectangle(1, 0.5), Frame.about(Vector3D.of(0, 0, -10), Vector3D.of(tilt, 0, 1)));
            Scene scene = new TestParts()
                    .sheet("far", 80, 81, 80, 81, 1)
                    .build(new Beam(pupil, Optional.of(limit), OptionalDouble.empty()));
            double got = new VisiblePupil(scene, TestParts.tree(scene))
                    .from(Vector3D.ZERO, UP)
                    .areaFraction();
            double[][] corners = new double[4][];
            for (int k = 0; k < 4; k++) {
                Vector3D c = limit.frame().at(k == 0 || k == 3 ? -0.5 : 0.5, k < 2 ? -0.25 : 0.25);
                corners[k] = new double[] {c.getX() * 100 / c.getZ(), c.getY() * 100 / c.getZ()};
            }
            double area = 0;
            for (int k = 0; k < 4; k++) {
                double[] a = corners[k];
                double[] b = corners[(k + 1) % 4];
                area += 0.5 * (a[0] * b[1] - a[1] * b[0]);
            }
            assertThat(got).isCloseTo(Math.abs(area) / 400, within(1e-12));
        }
    }

    @Test
    void aRoundFieldLimitIsMetExactlyAndItsTiltedTwinAgrees() {
        Pupil pupil = TestParts.pupilAt(100, new Ring(10, 4));
        double[] got = new double[2];
        for (int k = 0; k < 2; k++) {
            FieldLimit limit =
                    new FieldLimit(new Ring(3, 1), Frame.about(Vector3D.of(2, 0, 50), Vector3D.of(k * 1e-7, 0, 1)));
            Scene scene = new TestParts()
                    .sheet("far", 80, 81, 80, 81, 1)
                    .build(new Beam(pupil, Optional.of(limit), OptionalDouble.empty()));
            got[k] = new VisiblePupil(scene, TestParts.tree(scene))
                    .from(Vector3D.ZERO, UP)
                    .areaFraction();
        }
        // Ring of radii 10, 4 met with a ring of radii 6, 2 about (4, 0): lens areas, textbook formula.
        double expected = lens(10, 6, 4) - lens(10, 2, 4) - lens(4, 6, 4) + lens(4, 2, 4);
        assertThat(got[0]).isCloseTo(expected / (Math.PI * 84), within(1e-13));
        assertThat(got[1]).isCloseTo(got[0], within(1e-7));
    }

    private static double lens(double a, double b, double d) {
        if (d <= Math.abs(a - b)) {
            return Math.PI * Math.min(a, b) * Math.min(a, b);
        }
        double x = (d * d + a * a - b * b) / (2 * d);
        double y = d - x;
        return a * a * Math.acos(x / a)
                - x * Math.sqrt(a * a - x * x)
                + b * b * Math.acos(y / b)
                - y * Math.sqrt(b * b - y * y);
    }

    /** The scene of a reference case; a round opening is a polygon inside (0), around it (1), or left out (2). */
    private static Scene scene(JsonNode geometry, int kind) {
        JsonNode emitter = geometry.has("emitter") ? geometry.get("emitter") : geometry.get("to");
        Vector3D centre = ReferenceCase.vector(emitter.get("center"));
        Pupil pupil = new Pupil(
                new Ring(
                        emitter.get("radius").asDouble(),
                        emitter.get("innerRadius").asDouble()),
                Frame.about(centre, ReferenceCase.vector(emitter.get("normal"))));
        TestParts parts = new TestParts().sheet("far", 1e4, 1e4 + 1, 0, 1, -1);
        if (geometry.has("blockers")) {
            int number = 0;
            for (JsonNode blocker : geometry.get("blockers")) {
                add(parts, "blocker[" + number++ + "]", blocker, kind);
            }
        }
        return parts.build(Beam.of(pupil));
    }

    private static void add(TestParts parts, String name, JsonNode blocker, int kind) {
        double z = blocker.get("z").asDouble();
        double wide = 2000;
        switch (blocker.get("type").asString()) {
            case "halfPlane" -> {
                Vector3D clear = ReferenceCase.vector(blocker.get("clearNormal"));
                Vector3D along = UP.cross(clear);
                Vector3D edge =
                        clear.multiply(blocker.get("edgeOffset").asDouble()).add(Vector3D.of(0, 0, z));
                parts.sheet(
                        name,
                        edge.add(along.multiply(-wide)),
                        edge.add(along.multiply(wide)),
                        edge.add(along.multiply(wide)).add(clear.multiply(-wide)),
                        edge.add(along.multiply(-wide)).add(clear.multiply(-wide)));
            }
            case "plateWithRectOpening" -> {
                double[] x = ReferenceCase.numbers(blocker.get("x"));
                double[] y = ReferenceCase.numbers(blocker.get("y"));
                parts.sheet(name + "a", -wide, x[0], -wide, wide, z)
                        .sheet(name + "b", x[1], wide, -wide, wide, z)
                        .sheet(name + "c", x[0], x[1], -wide, y[0], z)
                        .sheet(name + "d", x[0], x[1], y[1], wide, z);
            }
            case "plateWithCircleOpening" -> {
                int sides = 512;
                double step = 2 * Math.PI / sides;
                double r = blocker.get("radius").asDouble() * (kind == 0 ? 1 : 1 / Math.cos(step / 2));
                for (int i = 0; i < sides && kind < 2; i++) {
                    Vector3D a = Vector3D.of(Math.cos(i * step), Math.sin(i * step), 0);
                    Vector3D b = Vector3D.of(Math.cos((i + 1) % sides * step), Math.sin((i + 1) % sides * step), 0);
                    Vector3D up = Vector3D.of(0, 0, z);
                    parts.sheet(
                            name + "[" + i + "]",
                            a.multiply(r).add(up),
                            a.multiply(wide).add(up),
                            b.multiply(wide).add(up),
                            b.multiply(r).add(up));
                }
            }
            default -> throw new IllegalArgumentException("unknown blocker " + blocker);
        }
    }

    @Test
    void aPointInThePlaneOfThePupilSeesNothingOfItAndNothingIsInDoubt() {
        Scene scene = new TestParts()
                .sheet("floor", -5, 5, -5, 5, 0)
                .sheet("above", -5, 5, -5, 5, 150)
                .build(Beam.of(TestParts.pupilAt(100, Ring.disc(20))));
        VisiblePupil visible = new VisiblePupil(scene, TestParts.tree(scene));
        for (double height : new double[] {100, 150}) {
            PupilView view = visible.from(Vector3D.of(1, 2, height), UP);
            assertThat(view.areaFraction()).isZero();
            assertThat(view.roundingFraction()).isZero();
            assertThat(view.isNone()).isTrue();
        }
    }

    /** From a point aside and above the origin, by the corners of the triangle thrown from it onto the plane of the pupil. */
    @Test
    void aTiltedSheetHidesWhatItsCornersAreThrownOntoWhicheverSideItTurns() {
        SplittableRandom random = new SplittableRandom(12);
        for (int i = 0; i < 60; i++) {
            Vector3D eye = Vector3D.of(random.nextDouble(-9, 9), random.nextDouble(-9, 9), random.nextDouble(-9, 9));
            Vector3D[] corners = new Vector3D[3];
            double[] thrown = new double[6];
            for (int k = 0; k < 3; k++) {
                Vector3D on = Vector3D.of(random.nextDouble(-19, 19), random.nextDouble(-19, 19), 100);
                thrown[2 * k] = on.getX();
                thrown[2 * k + 1] = on.getY();
                corners[k] = eye.lerp(on, random.nextDouble(0.1, 0.9));
            }
            TestParts parts = new TestParts();
            parts.builder().sheet("one", Finish.ABSORBER, "one/back", Finish.ABSORBER, TestParts.NOWHERE);
            parts.builder().triangle("one", corners[0], corners[1], corners[2]);
            Scene scene = parts.build(Beam.of(TestParts.pupilAt(100, Polygon.rectangle(40, 40))));
            PupilView view = new VisiblePupil(scene, TestParts.tree(scene)).from(eye, UP);
            assertThat(view.areaFraction()).isCloseTo(1 - Math.abs(PlanarPolygons.area(thrown)) / 1600, within(1e-9));
        }
    }
}
