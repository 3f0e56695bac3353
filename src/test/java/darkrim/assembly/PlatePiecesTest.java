package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.Shape.KnifeEdge;
import darkrim.layout.Shape.Openings;
import darkrim.layout.Shape.Plate;
import darkrim.layout.Shape.Toward;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;

class PlatePiecesTest {
    private static final Outline SQUARE = Polygon.rectangle(120, 120);

    private static Openings one(Outline outline, KnifeEdge edge) {
        return new Openings("opening", outline, 1, 1, 0, 0, Vector2D.ZERO, Optional.ofNullable(edge));
    }

    private static Body plate(Outline outer, Openings... openings) {
        List<Body> bodies = Layouts.bodies(new Plate(outer, 3.2, 0.8, List.of(openings)));
        assertThat(bodies).hasSize(1);
        MeshLaws.holdForSolid(bodies.get(0));
        return bodies.get(0);
    }

    private static Map<String, Double> areas(Body body) {
        return body.faces().stream().collect(Collectors.toMap(Face::name, Face::area));
    }

    @Test
    void aPlateWithStraightOpeningsHasTheVolumeOfWhatIsLeft() {
        Body body = plate(
                SQUARE,
                new Openings(
                        "opening", Polygon.rectangle(37.8, 30), 2, 2, 40.2, 40.2, Vector2D.ZERO, Optional.empty()));
        assertThat(body.volume()).isCloseTo(0.8 * (120 * 120 - 4 * 37.8 * 30), within(1e-8));
        Map<String, Double> area = areas(body);
        assertThat(area.get("part/top")).isCloseTo(120 * 120 - 4 * 37.8 * 30, within(1e-8));
        assertThat(area.get("part/underside")).isCloseTo(120 * 120 - 4 * 37.8 * 30, within(1e-8));
        assertThat(area.get("part/rim/+x")).isCloseTo(120 * 0.8, within(1e-10));
        assertThat(area.get("part/opening[1,2]/wall/-y")).isCloseTo(37.8 * 0.8, within(1e-10));
        assertThat(area.get("part/opening[1,2]/wall/+x")).isCloseTo(30 * 0.8, within(1e-10));
        assertThat(area).hasSize(2 + 4 + 16);
    }

    @Test
    void sidesAreNamedByWhereTheyLie() {
        Body body = plate(SQUARE, one(Polygon.rectangle(30, 30), null));
        for (Face face : body.faces()) {
            if (face.name().contains("/wall/")) {
                Vector3D middle =
                        face.triangles().get(0).a().add(face.triangles().get(0).c());
                double along = face.name().endsWith("x") ? middle.getX() : middle.getY();
                assertThat(Math.signum(along))
                        .as(face.name())
                        .isEqualTo(face.name().contains("/-") ? -1 : 1);
            }
        }
        assertThat(areas(body)).containsKeys("part/opening/wall/-x", "part/opening/wall/+y");
    }

    @Test
    void aKnifeEdgeTowardThePupilWidensTowardTheDetector() {
        Body body = plate(SQUARE, one(Polygon.rectangle(38, 30), new KnifeEdge(0.05, 30, Toward.PUPIL)));
        double widen = 0.75 * Math.tan(Math.toRadians(30));
        Map<String, Double> area = areas(body);
        assertThat(area.get("part/top")).isCloseTo(120 * 120 - 38 * 30, within(1e-8));
        assertThat(area.get("part/underside")).isCloseTo(120 * 120 - (38 + 2 * widen) * (30 + 2 * widen), within(1e-8));
        assertThat(area.get("part/opening/land/-y")).isCloseTo(0.05 * 38, within(1e-10));
        assertThat(area.get("part/opening/bevel/-y"))
                .isCloseTo((38 + widen) * 0.75 / Math.cos(Math.toRadians(30)), within(1e-9));
        // Frustum with mitred corners: integral of (38 + 2 s)(30 + 2 s) over the height.
        double frustum = 0.75 * (38 * 30 + widen * (38 + 30) + 4 * widen * widen / 3);
        assertThat(body.volume()).isCloseTo(0.8 * 120 * 120 - 0.05 * 38 * 30 - frustum, within(1e-8));
    }

    @Test
    void openingsReportTheHeightsOfBothEndsOfTheLand() {
        Plate plate = new Plate(
                SQUARE,
                3.2,
                0.8,
                List.of(
                        new Openings(
                                "up",
                                Polygon.rectangle(20, 20),
                                1,
                                1,
                                0,
                                0,
                                Vector2D.of(-25, 0),
                                Optional.of(new KnifeEdge(0.05, 30, Toward.PUPIL))),
                        new Openings(
                                "down",
                                Polygon.rectangle(20, 20),
                                1,
                                1,
                                0,
                                0,
                                Vector2D.of(25, 0),
                                Optional.of(new KnifeEdge(0.05, 30, Toward.DETECTOR))),
                        new Openings(
                                "sharp",
                                Polygon.rectangle(5, 5),
                                1,
                                1,
                                0,
                                0,
                                Vector2D.of(0, 40),
                                Optional.of(new KnifeEdge(0, 30, Toward.PUPIL)))));
        Assembly assembly = Layouts.assemble(Layouts.layout(Layouts.part("lid", plate)));
        assembly.bodies().forEach(MeshLaws::hold);
        Opening up = assembly.openings().get(0);
        Opening down = assembly.openings().get(1);
        Opening sharp = assembly.openings().get(2);
        assertThat(up.name()).isEqualTo("lid/up");
        assertThat(up.landNearPupil().get(0).getZ()).isCloseTo(4.0, within(1e-12));
        assertThat(up.landNearDetector().get(0).getZ()).isCloseTo(3.95, within(1e-12));
        assertThat(down.landNearPupil().get(0).getZ()).isCloseTo(3.25, within(1e-12));
        assertThat(down.landNearDetector().get(0).getZ()).isCloseTo(3.2, within(1e-12));
        assertThat(sharp.landNearPupil().get(0).getZ())
                .isEqualTo(sharp.landNearDetector().get(0).getZ())
                .isCloseTo(4.0, within(1e-12));
        assertThat(assembly.surfaces()).noneMatch(name -> name.contains("sharp/land"));
        assertThat(up.centre().distance(Vector3D.of(-25, 0, 4))).isLessThan(1e-12);
        assertThat(up.landNearPupil().get(0).getX()).isEqualTo(-35);
        assertThat(up.detectorFace().get(0).getX()).isLessThan(-35.4);
        assertThat(down.pupilFace().get(0).getX()).isCloseTo(15 - 0.75 * Math.tan(Math.PI / 6), within(1e-12));
    }

    @Test
    void aRoundOpeningIsAPolygonAroundTheCircleAndARoundRimOneInside() {
        Assembly assembly = Layouts.assemble(Layouts.layout(Layouts.part(
                "part",
                new Plate(Ring.disc(50), 0, 2, List.of(one(Ring.disc(20), new KnifeEdge(0.5, 20, Toward.DETECTOR)))))));
        Body body = assembly.bodies().get(0);
        MeshLaws.holdForSolid(body);
        double widen = 1.5 * Math.tan(Math.toRadians(20));
        // Around: the distance of every point of a land facet from the axis is at least the radius.
        for (Face face : body.faces()) {
            for (Triangle facet : face.triangles()) {
                if (face.name().equals("part/opening/land")) {
                    double nearest = Math.abs(facet.doubledNormal().normalize().dot(facet.a()));
                    assertThat(nearest).isCloseTo(20, within(1e-12));
                }
                if (face.name().equals("part/rim")) {
                    assertThat(Math.hypot(facet.a().getX(), facet.a().getY())).isCloseTo(50, within(1e-12));
                }
            }
        }
        // True volume: cylinder less land less cone frustum; the mesh has less material, by at most the chord error
        // along all borders.
        double cone = Math.PI * 1.5 / 3 * (400 + 20 * (20 + widen) + (20 + widen) * (20 + widen));
        double exact = Math.PI * 2500 * 2 - Math.PI * 400 * 0.5 - cone;
        assertThat(body.volume()).isLessThan(exact).isGreaterThan(exact - 0.001 * 2 * Math.PI * (50 + 21) * 2);
        assertThat(assembly.largestChordError()).isPositive().isLessThan(0.001);
        assertThat(areas(body))
                .containsOnlyKeys("part/top", "part/underside", "part/rim", "part/opening/land", "part/opening/bevel");
    }

    @Test
    void aPolygonOpeningIsNumberedByItsSidesAndWidensWithMitredCorners() {
        List<Vector2D> hexagon = IntStream.range(0, 6)
                .mapToObj(i -> Vector2D.of(10 * Math.cos(i * Math.PI / 3), 10 * Math.sin(i * Math.PI / 3)))
                .toList();
        Body body = plate(
                Polygon.of(List.of(Vector2D.of(-30, -20), Vector2D.of(40, -20), Vector2D.of(0, 40))),
                one(Polygon.of(hexagon), new KnifeEdge(0.2, 45, Toward.PUPIL)));
        // A hexagon widened by 0.6: its apothem grows by 0.6; area of a hexagon of apothem a is 2 sqrt(3) a^2.
        double apothem = 10 * Math.cos(Math.PI / 6);
        double triangle = 70 * 60 / 2.0;
        Map<String, Double> area = areas(body);
        assertThat(area.get("part/top")).isCloseTo(triangle - 2 * Math.sqrt(3) * apothem * apothem, within(1e-9));
        assertThat(area.get("part/underside"))
                .isCloseTo(triangle - 2 * Math.sqrt(3) * Math.pow(apothem + 0.6, 2), within(1e-9));
        assertThat(area.get("part/opening/land/1")).isCloseTo(0.2 * 10, within(1e-10));
        assertThat(area).containsKeys("part/rim/1", "part/rim/3", "part/opening/bevel/6");
    }

    @Test
    void aConcaveOpeningStaysWatertight() {
        List<Vector2D> corner = List.of(
                Vector2D.of(0, 0),
                Vector2D.of(20, 0),
                Vector2D.of(20, 8),
                Vector2D.of(8, 8),
                Vector2D.of(8, 20),
                Vector2D.of(0, 20));
        Body body = plate(SQUARE, one(Polygon.of(corner), new KnifeEdge(0, 60, Toward.DETECTOR)));
        double widen = 0.8 * Math.tan(Math.toRadians(60));
        double wide = (20 + 2 * widen) * (20 + 2 * widen) - 12 * 12;
        assertThat(areas(body).get("part/top")).isCloseTo(14400 - wide, within(1e-8));
    }

    @Test
    void aPlateOfManyRoundOpeningsIsWatertight() {
        Body body =
                plate(SQUARE, new Openings("hole", Ring.disc(4), 5, 5, 12, 12, Vector2D.of(0.1, 0), Optional.empty()));
        assertThat(body.faces()).hasSize(2 + 4 + 25);
    }

    private static Finding problem(Plate plate) {
        Findings findings = new Findings();
        Assembly.of(Layouts.layout(Layouts.part("lid", plate)), findings);
        assertThat(findings.sorted()).hasSize(1);
        return findings.sorted().get(0);
    }

    @Test
    void openingsThatMeetEachOtherOrTheRimAreRefused() {
        Openings wide = new Openings("opening", SQUARE, 2, 1, 90, 0, Vector2D.ZERO, Optional.empty());
        Finding finding = problem(new Plate(Polygon.rectangle(300, 300), 0, 1, List.of(wide)));
        assertThat(finding.code()).isEqualTo("part-not-buildable");
        assertThat(finding.message()).contains("part lid").contains("openings").contains("meet");
        Finding outside = problem(new Plate(SQUARE, 0, 1, List.of(one(Polygon.rectangle(130, 10), null))));
        assertThat(outside.message()).contains("openings").contains("meet");
        Finding outsideWhole = problem(new Plate(
                SQUARE,
                0,
                1,
                List.of(new Openings(
                        "opening", Polygon.rectangle(5, 5), 1, 1, 0, 0, Vector2D.of(200, 0), Optional.empty()))));
        assertThat(outsideWhole.message()).contains("openings");
    }

    @Test
    void aBevelThatWouldRunIntoTheRimIsRefused() {
        Finding finding = problem(new Plate(
                SQUARE, 0, 5, List.of(one(Polygon.rectangle(119, 119), new KnifeEdge(0, 30, Toward.PUPIL)))));
        assertThat(finding.message()).contains("meet");
    }

    @Test
    void aBevelThatSwallowsASideOfItsOutlineIsRefused() {
        // A notch of 1 mm closes when its sides are moved by 0.8 tan(60) = 1.39 mm.
        List<Vector2D> notched = List.of(
                Vector2D.of(0, 0),
                Vector2D.of(9, 0),
                Vector2D.of(9, 5),
                Vector2D.of(10, 5),
                Vector2D.of(10, 0),
                Vector2D.of(20, 0),
                Vector2D.of(20, 20),
                Vector2D.of(0, 20));
        Finding finding = problem(new Plate(
                SQUARE, 0, 0.8, List.of(one(Polygon.of(notched), new KnifeEdge(0, 60, Toward.PUPIL)))));
        assertThat(finding.message()).contains("cannot be widened");
    }

    @Test
    void twoGroupsOfOpeningsOfOneNameAreRefused() {
        Finding finding = problem(new Plate(
                SQUARE, 0, 1, List.of(one(Polygon.rectangle(5, 5), null), one(Polygon.rectangle(5, 5), null))));
        assertThat(finding.message()).contains("two of its openings are named opening");
    }

    @Test
    void moreOpeningsThanCanBeHandledAreRefusedAtOnce() {
        Finding finding = problem(new Plate(
                Polygon.rectangle(4000, 4000),
                0,
                1,
                List.of(new Openings("hole", Ring.disc(4), 200, 200, 12, 12, Vector2D.ZERO, Optional.empty()))));
        assertThat(finding.message()).contains("200000 corners");
    }
}
