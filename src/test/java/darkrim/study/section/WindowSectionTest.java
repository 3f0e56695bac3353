package darkrim.study.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.LayoutReader;
import darkrim.scene.Pupil;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rays through a window in sections, against a fan of lines from the landing along the edge, each followed to the pupil by Snell's law. */
class WindowSectionTest {
    private static final double PUPIL = 60;
    private static final double BOTTOM = 14;
    private static final double THICKNESS = 6;
    private static final double INDEX = 1.8;

    private static CheckResult checked(String pupil) throws Exception {
        String text = """
                title: Section through a window
                finishes: {black: {diffuse: 0.04}}
                beam:
                  pupil: {%s, distance: 60}
                  window: {name: pane, at_height: 14, thickness: 6, n: 1.8}
                parts:
                  floor: {kind: rectangle, width: 200, depth: 200, at: [0, 0, -1], finish: black}
                  lid:
                    kind: plate
                    size: [120, 120]
                    height: 6
                    thickness: 1
                    openings: {shape: rectangle, size: [18, 24]}
                    knife_edge: {land: 0.2, bevel: 40}
                    finish: black
                """.formatted(pupil);
        return Check.of(
                LayoutReader.read("section.yaml", text.getBytes(StandardCharsets.UTF_8))
                        .layout()
                        .orElseThrow(),
                new Findings(),
                new Effort(2, Optional.empty(), Optional.of(1L)),
                Watch.NONE);
    }

    /** Where a line from a point below comes from on the plane of the pupil: sin a = n sin b. */
    private static Vector3D origin(Vector3D at, Vector3D through) {
        Vector3D way = through.subtract(at).normalize();
        double sine = Math.hypot(way.getX(), way.getY());
        double within = sine / INDEX;
        double aside = (PUPIL - at.getZ() - THICKNESS) * sine / Math.sqrt(1 - sine * sine)
                + THICKNESS * within / Math.sqrt(1 - within * within);
        double share = sine > 0 ? aside / sine : 0;
        return Vector3D.of(at.getX() + share * way.getX(), at.getY() + share * way.getY(), PUPIL);
    }

    private static boolean holds(Pupil pupil, Vector3D point) {
        double u = pupil.frame().inU(point);
        double v = pupil.frame().inV(point);
        Outline outline = pupil.outline();
        return outline instanceof Ring ring ? Math.hypot(u, v) <= ring.radius() : ((Polygon) outline).contains(u, v);
    }

    /** Whether some line from a point past the very edge comes from within the rim of the pupil. */
    private static boolean edgeCrossesPupil(Pupil pupil, SectionRay ray, Vector3D at) {
        int steps = 40_000;
        for (int i = 0; i <= steps; i++) {
            Vector3D onEdge = ray.past().add(ray.edge().along().multiply(20.0 * (2.0 * i / steps - 1)));
            if (holds(pupil, origin(at, onEdge))) {
                return true;
            }
        }
        return false;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "shape: disc, diameter: 40",
                "shape: disc, diameter: 40, hole: 12, shift: [5, 3]",
                "shape: rectangle, width: 30, height: 24, shift: [-4, 2]"
            })
    void eachLandingPartsWhereTheEdgeCrossesThePupilFromWhereItDoesNot(String shape) throws Exception {
        CheckResult result = checked(shape);
        Pupil pupil = result.scene().beam().pupil();
        for (SectionPlane plane : List.of(
                SectionPlane.square(0, 2),
                SectionPlane.square(1, -3),
                SectionPlane.through(Vector3D.of(1, 2, 0), Vector3D.of(1, 0.5, 0)),
                SectionPlane.through(Vector3D.of(1, 2, 0), Vector3D.of(-0.3, 1, 0.1)))) {
            LayoutSection section = LayoutSection.of(result, plane);
            assertThat(section.rays().size() + section.stopped().size())
                    .as(plane.words())
                    .isEqualTo(6);
            // Aslant, one may touch the line of the edge where the lid is.
            assertThat(section.rays()).hasSizeGreaterThanOrEqualTo(5);
            assertThat(section.stopped())
                    .allSatisfy(each -> assertThat(each.reason()).isEqualTo("lid/top stops it"));
            for (SectionRay ray : section.rays()) {
                look(pupil, plane, ray);
            }
        }
    }

    private static void look(Pupil pupil, SectionPlane plane, SectionRay ray) {
        double step = 1e-4;
        double inward =
                Math.signum(ray.edge().open().getX() - ray.edge().narrowest().getX());
        Vector3D way = plane.frame().u().multiply(inward * step);
        boolean ends = ray.kind() == SectionRay.Kind.LIGHT_ENDS;
        if (ray.kind() == SectionRay.Kind.CHIEF) {
            // 1e-6 mm beside the edge, which the pupil shows enlarged.
            assertThat(pupil.frame().origin().distance(nearest(pupil, ray)))
                    .as(ray.toString())
                    .isLessThan(1e-4);
        } else {
            assertThat(edgeCrossesPupil(pupil, ray, ray.to().add(way)))
                    .as(ray.toString())
                    .isEqualTo(ends);
            assertThat(edgeCrossesPupil(pupil, ray, ray.to().subtract(way)))
                    .as(ray.toString())
                    .isNotEqualTo(ends);
        }
        bends(plane, ray);
    }

    /** The point on the pupil nearest to its middle from which a line comes past the edge, by halving where the middle is passed. */
    private static Vector3D nearest(Pupil pupil, SectionRay ray) {
        double low = -20;
        double high = 20;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            Vector3D from = origin(ray.to(), ray.past().add(ray.edge().along().multiply(middle)));
            if (from.subtract(pupil.frame().origin()).dot(ray.edge().along()) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return origin(ray.to(), ray.past().add(ray.edge().along().multiply(low)));
    }

    /** In the section, at the faces of the window and the pupil; outside the window in one direction; where the edge is square to it, by Snell's law. */
    private static void bends(SectionPlane plane, SectionRay ray) {
        List<Vector3D> course = ray.course();
        assertThat(course).hasSize(4);
        assertThat(course)
                .allSatisfy(point -> assertThat(plane.frame().height(point)).isCloseTo(0, within(1e-9)));
        assertThat(course.get(0).getZ()).isCloseTo(PUPIL, within(1e-9));
        assertThat(course.get(1).getZ()).isCloseTo(BOTTOM + THICKNESS, within(1e-9));
        assertThat(course.get(2).getZ()).isCloseTo(BOTTOM, within(1e-9));
        Vector3D below = course.get(2).subtract(ray.to()).normalize();
        Vector3D above = course.get(0).subtract(course.get(1)).normalize();
        assertThat(below.distance(above)).isLessThan(1e-9);
        assertThat(below.distance(ray.past().subtract(ray.to()).normalize())).isLessThan(1e-6);
        boolean square = Math.abs(ray.edge().along().dot(plane.frame().normal())) > 1 - 1e-12;
        boolean inPlane = Math.abs(plane.frame().height(ray.from())) < 1e-9;
        if (square && inPlane) {
            Vector3D inside = course.get(1).subtract(course.get(2)).normalize();
            assertThat(INDEX * Math.hypot(inside.getX(), inside.getY()))
                    .isCloseTo(Math.hypot(below.getX(), below.getY()), within(1e-9));
            assertThat(course.get(0).distance(ray.from())).isLessThan(1e-9);
        }
    }
}
