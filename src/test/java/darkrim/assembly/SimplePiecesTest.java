package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.layout.Shape;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SimplePiecesTest {
    private static Body body(Shape shape) {
        List<Body> bodies = Layouts.bodies(shape);
        assertThat(bodies).hasSize(1);
        MeshLaws.hold(bodies.get(0));
        return bodies.get(0);
    }

    private static Map<String, Double> areas(Body body) {
        return body.faces().stream().collect(Collectors.toMap(Face::name, Face::area));
    }

    private static String problem(Shape shape) {
        Findings findings = new Findings();
        Assembly.of(Layouts.layout(Layouts.part("thing", shape)), findings);
        assertThat(findings.sorted()).hasSize(1);
        assertThat(findings.sorted().get(0).code()).isEqualTo("part-not-buildable");
        return findings.sorted().get(0).message();
    }

    @Test
    void aBlockStandsOnItsBase() {
        Body bar = body(new Shape.Block(4, 100, 3));
        assertThat(bar.volume()).isCloseTo(1200, within(1e-10));
        assertThat(areas(bar))
                .containsExactlyInAnyOrderEntriesOf(Map.of(
                        "part/-x", 300.0, "part/+x", 300.0, "part/-y", 12.0, "part/+y", 12.0, "part/-z", 400.0,
                        "part/+z", 400.0));
        for (Face face : bar.faces()) {
            Vector3D normal = face.triangles().get(0).doubledNormal().normalize();
            double along = switch (face.name().charAt(6)) {
                case 'x' -> normal.getX();
                case 'y' -> normal.getY();
                default -> normal.getZ();
            };
            assertThat(along).as(face.name()).isEqualTo(face.name().charAt(5) == '-' ? -1 : 1);
        }
        assertThat(bar.triangles().mapToDouble(t -> t.a().getZ()).min()).hasValue(0);
    }

    /** Walls of level thickness t between frustums: volume is the integral of (w + 2t)(d + 2t) - w d = 2 t (w + d) + 4 t^2. */
    @ParameterizedTest
    @ValueSource(doubles = {-10, 0, 4, 45})
    void aBoxOfTiltedWallsHasTheVolumeOfItsLevelSlices(double tilt) {
        Body walls = body(new Shape.Box(90, 80, 1, 12, tilt, 1.5));
        double lean = 12 * Math.tan(Math.toRadians(tilt));
        double meanPerimeter = 90 + 80 + 2 * lean;
        assertThat(walls.volume()).isCloseTo(12 * (2 * 1.5 * meanPerimeter + 4 * 1.5 * 1.5), within(1e-8));
        Map<String, Double> area = areas(walls);
        double slant = Math.hypot(12, lean);
        assertThat(area.get("part/inside/+y")).isCloseTo(slant * (90 + lean), within(1e-9));
        assertThat(area.get("part/outside/-x")).isCloseTo(slant * (83 + lean), within(1e-9));
        assertThat(area.get("part/base/+x")).isCloseTo(1.5 * (80 + 83) / 2, within(1e-9));
        assertThat(area.get("part/top/+x")).isCloseTo(1.5 * (80 + 83 + 4 * lean) / 2, within(1e-9));
        assertThat(area).hasSize(16);
        // Positive tilt widens toward +z: the inner wall then looks up a little.
        Face inner = walls.faces().stream()
                .filter(face -> face.name().equals("part/inside/+x"))
                .findFirst()
                .orElseThrow();
        Vector3D normal = inner.triangles().get(0).doubledNormal().normalize();
        assertThat(normal.getX()).isCloseTo(-Math.cos(Math.toRadians(tilt)), within(1e-12));
        assertThat(normal.getZ()).isCloseTo(Math.sin(Math.toRadians(tilt)), within(1e-12));
    }

    @Test
    void wallsThatLeanUntilTheyMeetAreRefused() {
        assertThat(problem(new Shape.Box(10, 10, 0, 20, -20, 1)))
                .contains("part thing")
                .contains("walls meet");
    }

    @Test
    void aTubeHasNoMoreMaterialThanTheTrueOneAndLittleLess() {
        Body snout = body(new Shape.Tube(40, 42, 5, 50));
        double exact = Math.PI * (42 * 42 - 40 * 40) * 50;
        // Both walls are off by less than 0.001 mm.
        assertThat(snout.volume()).isLessThan(exact).isGreaterThan(exact - 0.001 * 2 * Math.PI * 82 * 50);
        assertThat(areas(snout)).containsOnlyKeys("part/inside", "part/outside", "part/top", "part/base");
        // A polygon of n sides inside radius r has the perimeter 2 n r sin(pi/n); n = 456 for 42 mm.
        int n = RoundSides.forRadius(42).count();
        assertThat(areas(snout).get("part/outside")).isCloseTo(50 * 2 * n * 42 * Math.sin(Math.PI / n), within(1e-8));
        assertThat(areas(snout).get("part/inside")).isCloseTo(50 * 2 * n * 40 * Math.tan(Math.PI / n), within(1e-8));
        for (Triangle facet : snout.triangles().toList()) {
            for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                double radius = Math.hypot(corner.getX(), corner.getY());
                assertThat(radius).isBetween(40.0, 42 + 1e-12);
            }
        }
    }

    @Test
    void aTubeThinnerThanItsPolygonsIsRefused() {
        assertThat(problem(new Shape.Tube(40, 40.001, 0, 5))).contains("wall is thinner");
    }

    @Test
    void aDiscIsASheetOfLittleLessThanItsTrueArea() {
        Body stop = body(new Shape.Disc(30, 20));
        double exact = Math.PI * (900 - 400);
        assertThat(areas(stop).get("part/front")).isLessThan(exact).isGreaterThan(exact - 0.001 * 2 * Math.PI * 50);
        assertThat(stop.faces().get(0).surfaces()).containsExactly("part/front", "part/back");
        assertThat(stop.triangles()).allMatch(t -> t.doubledNormal().getZ() > 0);
        Body whole = body(new Shape.Disc(30, 0));
        assertThat(areas(whole).get("part/front"))
                .isLessThan(Math.PI * 900)
                .isGreaterThan(Math.PI * 900 - 0.001 * 2 * Math.PI * 30);
        assertThat(problem(new Shape.Disc(30, 29.9999))).contains("hole");
    }

    @Test
    void aRectangleIsASheetThatFacesUp() {
        Body flag = body(new Shape.Rectangle(10, 20));
        assertThat(areas(flag)).containsExactly(Map.entry("part/front", 200.0));
        assertThat(flag.triangles()).allMatch(t -> t.doubledNormal().getZ() > 0);
    }

    @ParameterizedTest
    @CsvSource({"50, 30", "50, 90", "7, 150", "50, 180", "0.5, 1"})
    void aSphereCapHasItsCornersOnTheSphereAndNearlyItsArea(double radius, double halfAngle) {
        Assembly assembly =
                Layouts.assemble(Layouts.layout(Layouts.part("part", new Shape.SphereCap(radius, halfAngle))));
        Body dome = assembly.bodies().get(0);
        MeshLaws.hold(dome);
        // Cap: 2 pi r^2 (1 - cos); facets lie inside it by at most the chord error, which shrinks areas by about twice
        // that share.
        double exact = 2 * Math.PI * radius * radius * (1 - Math.cos(Math.toRadians(halfAngle)));
        double error = assembly.largestChordError();
        assertThat(error).isPositive().isLessThanOrEqualTo(1.05 * Math.max(0.001, 1e-4 * radius));
        assertThat(areas(dome).get("part/outside"))
                .isLessThan(exact)
                .isGreaterThan(exact * (1 - 3 * error / radius) * (1 - 1e-3));
        assertThat(dome.faces().get(0).surfaces()).containsExactly("part/outside", "part/inside");
        for (Triangle facet : dome.triangles().toList()) {
            for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                if (Math.abs(corner.norm() - radius) > 1e-12 * radius) {
                    throw new AssertionError(corner + " is not on the sphere");
                }
            }
            double depth = radius - facet.doubledNormal().normalize().dot(facet.a());
            if (!(depth > 0 && depth <= error)) {
                throw new AssertionError(
                        "facet " + facet + " lies " + depth + " mm inside, the stated error is " + error);
            }
        }
    }

    @Test
    void aWholeSphereIsClosed() {
        Body ball = Layouts.bodies(new Shape.SphereCap(10, 180)).get(0);
        List<Triangle> facets = ball.triangles().toList();
        assertThat(MeshLaws.windingNumber(Vector3D.of(1, 2, 3), facets)).isCloseTo(1, within(1e-9));
        assertThat(MeshLaws.windingNumber(Vector3D.of(8, 8, 8), facets)).isCloseTo(0, within(1e-9));
        assertThat(ball.volume()).isCloseTo(4.0 / 3 * Math.PI * 1000, within(2.0));
    }

    /** 1 / cos(pi/n) - 1 for the bound; the least multiple of 4 found by trying all of them. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.5, 3, 18.9, 42, 100, 103, 500, 1e6})
    void circlesGetTheFewestSidesThatKeepTheTolerance(double radius) {
        int fewest = 48;
        while (fewest < 720 && radius / Math.cos(Math.PI / fewest) - radius > 0.001) {
            fewest += 4;
        }
        assertThat(RoundSides.forRadius(radius).count()).isEqualTo(fewest);
    }
}
