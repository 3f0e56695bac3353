package darkrim.study.rejection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.light.ManyReflections;
import darkrim.light.Receiver;
import darkrim.scene.DistantBody;
import darkrim.scene.Scene;
import darkrim.study.CoarseHood;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.study.UnusableStudy;
import darkrim.study.rejection.OrderLight.Evidence;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Seeds are fixed. Comparisons within 3 standard errors would fail for one seed in 370 each. */
class RejectionStudyTest {
    private static final DistantBody MOON = new DistantBody(0, 0, 0.53, Optional.empty());

    /** A sheet that looks up, and a wall 40 mm high beside it. */
    private static final String WALL = """
            title: Sheet beside a wall
            finishes: {white: {diffuse: 0.5, source: "invented"}}
            beam: {pupil: {shape: disc, diameter: 30, distance: 320}}
            parts:
              sheet: {kind: rectangle, width: 10, depth: 10}
              wall: {kind: block, width: 2, depth: 400, height: 40, at: [21, 0, 0], finish: white}
            requirements: {dark: {surfaces: "sheet/back", direct: none}}
            """;

    private static PlacedScene placed(String text) throws Exception {
        var reading = LayoutReader.read("sheet.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.hasErrors()).isFalse();
        return PlacedScene.of(reading.layout().orElseThrow(), new Findings(), Watch.NONE);
    }

    private static RejectionResult curve(
            PlacedScene placed, String onto, List<Double> angles, double azimuth, int most, int threads)
            throws Exception {
        RejectionSettings settings = new RejectionSettings(
                Optional.empty(), MOON, OptionalDouble.empty(), angles, List.of(azimuth), onto, most, 4);
        return RejectionStudy.of(
                placed, settings, new Effort(threads, Optional.empty(), Optional.empty()), new Findings(), Watch.NONE);
    }

    /**
     * From -x nothing shades the sheet: it gets the cosine. The wall gets the sine on all of its face; its once-reflected light on the sheet is rho sin(a) F, F the view
     * factor from the sheet to the wall, by an integral of the closed form for an element (two-dimensional, the wall is 40 times as long as it is near: Howell, catalog
     * of configuration factors, crossed strings, from memory): F = (1 - x / sqrt(x2 + h2)) / 2 at distance x from a wall of height h.
     */
    @Test
    void aSheetBesideAWallGetsTheCosineAndTheLightOfTheWall() throws Exception {
        for (double angle : new double[] {30, 60}) {
            List<OrderLight> orders = curve(placed(WALL), "sheet/front", List.of(angle), 180, 2, 2)
                    .points()
                    .get(0)
                    .orders();
            double radians = Math.toRadians(angle);
            assertThat(orders.get(0).value())
                    .isCloseTo(Math.cos(radians), within(3 * orders.get(0).error() + 2e-5));
            double factor = 0;
            int steps = 1000;
            for (int i = 0; i < steps; i++) {
                double x = 20 + 5 - 10 * (i + 0.5) / steps;
                factor += (1 - x / Math.hypot(x, 40)) / 2 / steps;
            }
            // The wall ends 200 mm away on both sides, which costs up to 0.7 % of the factor.
            double exact = 0.5 * Math.sin(radians) * factor;
            assertThat(orders.get(1).value())
                    .isCloseTo(exact, within(3 * orders.get(1).error() + 0.007 * exact));
            assertThat(orders.get(1).error()).isLessThan(0.02 * exact);
            assertThat(orders.get(1).atMost()).isGreaterThan(exact);
            // Neither the black sheet nor the convex wall reflects again.
            assertThat(orders.get(2).evidence()).isEqualTo(Evidence.NONE_FOUND);
            assertThat(orders.get(2).atMost()).isPositive();
        }
    }

    /** From +x the wall shades the sheet below 90 - atan(40 / 15) = 20.6 deg from the horizon; its lit face looks away. */
    @Test
    void behindTheWallNothingArrivesAndThatIsProved() throws Exception {
        RejectionPoint point = curve(placed(WALL), "sheet/front", List.of(60.0), 0, 1, 1)
                .points()
                .get(0);
        assertThat(point.orders()).extracting(OrderLight::evidence).containsOnly(Evidence.PROVED);
        assertThat(point.total()).isZero();
        assertThat(point.atMost()).isZero();
    }

    /** No clearance is measured here, so a proof about facets that stand for curved surfaces is none. */
    @Test
    void behindFacetsThatStandForCurvedSurfacesNothingIsProved() throws Exception {
        for (String mesh : new String[] {"crease: 20", "chord: 0.01"}) {
            String text = CoarseHood.text(mesh, "shelf/outside", "none");
            var reading = LayoutReader.read(CoarseHood.NAME, text.getBytes(StandardCharsets.UTF_8));
            PlacedScene placed = PlacedScene.of(reading.layout().orElseThrow(), new Findings(), Watch.NONE);
            RejectionResult result = curve(placed, "shelf/base", List.of(10.0), 0, 1, 1);
            boolean doubted = mesh.startsWith("chord");
            assertThat(result.points().get(0).orders().get(0).evidence())
                    .isEqualTo(doubted ? Evidence.NONE_FOUND : Evidence.PROVED);
            assertThat(result.warnings())
                    .extracting(Finding::code)
                    .containsExactlyElementsOf(doubted ? List.of("mesh-tolerance") : List.of());
        }
    }

    @Test
    void theShippedTubeLetsTwiceReflectedLightThroughOnly() throws Exception {
        PlacedScene tube =
                PlacedScene.of(Path.of("geometries/dusk-tube.yaml"), Effort.asAsked(), new Findings(), Watch.NONE);
        RejectionPoint point =
                curve(tube, "**/active", List.of(20.0), 20, 2, 2).points().get(0);
        assertThat(point.orders())
                .extracting(OrderLight::evidence)
                .containsExactly(Evidence.PROVED, Evidence.PROVED, Evidence.SAMPLED);
        assertThat(point.orders().get(2).value()).isBetween(1e-7, 3e-6);
    }

    /**
     * Between two mirrors 40 mm high and apart, light from 60 deg strikes the left one 32 to 38 mm up, the right one 9 to 14 mm up and so the whole sheet:
     * 0.9^2 cos 60 deg, of which samples toward a body of 7e-5 sr find next to nothing. No bound may deny it.
     */
    @Test
    void whatTwoMirrorsCouldSendIsNotBoundedBySamplesThatMissIt() throws Exception {
        PlacedScene mirrors = placed("""
                title: Sheet between mirrors
                finishes: {glass: {mirror: 0.9, source: "invented"}}
                beam: {pupil: {shape: disc, diameter: 30, distance: 320}}
                parts:
                  sheet: {kind: rectangle, width: 10, depth: 10}
                  left: {kind: block, width: 2, depth: 40, height: 40, at: [-21, 0, 0], finish: glass}
                  right: {kind: block, width: 2, depth: 40, height: 40, at: [21, 0, 0], finish: glass}
                requirements: {dark: {surfaces: "sheet/back", direct: none}}
                """);
        RejectionResult result = curve(mirrors, "sheet/front", List.of(45.0, 60.0), 0, 2, 1);
        assertThat(result.shiny()).isTrue();
        assertThat(result.points()).allSatisfy(point -> {
            assertThat(point.orders().get(2).isBounded()).isFalse();
            assertThat(point.atMost()).isGreaterThan(0.81 * Math.cos(Math.toRadians(60)));
        });
        // At 45 deg the left mirror lights the sheet by itself, in full; the wall in front hides the body from it.
        OrderLight once = result.points().get(0).orders().get(1);
        assertThat(once.value()).isCloseTo(0.9 * Math.cos(Math.toRadians(45)), within(3 * once.error()));
        assertThat(once.atMost()).isGreaterThan(once.value());
    }

    /**
     * A table rises to 1 at grazing angles. Between two such walls samples bring several times the body's irradiance. So where beside one wall of
     * that finish n samples meet nothing, the bound is no less than those times ln(1 / 0.001) / n, what n samples all miss with the chance 0.001.
     */
    @Test
    void theBoundAllowsForSamplesAsLargeAsThoseOfAScatterThatRisesTowardGrazing() throws Exception {
        PlacedScene placed = placed("""
                title: Sheet between walls
                finishes: {paint: {reflectance_table: {as: diffuse, rows: [[0, 0.02], [60, 0.03], [80, 0.1]]}, source: "invented"}}
                beam: {pupil: {shape: disc, diameter: 30, distance: 320}}
                parts:
                  sheet: {kind: rectangle, width: 10, depth: 10}
                  left: {kind: block, width: 2, depth: 400, height: 100, at: [-11, 0, 0], finish: paint}
                  right: {kind: block, width: 2, depth: 400, height: 100, at: [11, 0, 0], finish: paint}
                requirements: {dark: {surfaces: "sheet/back", direct: none}}
                """);
        Scene lit = MOON.at(5, 0).over(placed.scene());
        ManyReflections many =
                new ManyReflections(lit, FacetTree.build(lit.corners(), lit.copyPlanes(), lit.bound()), 1);
        Receiver sheet = new Receiver.OnSurface(lit.surface("sheet/front").orElseThrow());
        double largest = 0;
        for (int i = 0; i < 20_000; i++) {
            largest =
                    Math.max(largest, many.batch(sheet, 2, i, 1).orders().get(2).mean() / DistantBody.facing(lit));
        }
        assertThat(largest).isGreaterThan(2);
        String white = "{diffuse: 0.5, source: \"invented\"}";
        String paint =
                "{reflectance_table: {as: diffuse, rows: [[0, 0.02], [60, 0.03], [80, 0.1]]}, source: \"invented\"}";
        RejectionResult result = curve(placed(WALL.replace(white, paint)), "sheet/front", List.of(30.0), 180, 2, 1);
        OrderLight twice = result.points().get(0).orders().get(2);
        assertThat(twice.evidence()).isEqualTo(Evidence.NONE_FOUND);
        assertThat(twice.atMost())
                .isGreaterThan(-Math.log(0.001) / result.settings().samples() * largest);
        assertThat(twice.atMost()).isLessThan(1);
    }

    /**
     * One wall sends nothing on to the sheet after two reflections. No sample of it could be larger than the irradiance of the body times 0.5 times
     * sqrt(0.5): 32,768 samples that find none leave ln(2 / r) / 32,768 of that, r the risk of a bound: 0.001 shared among three numbers of
     * reflections, or five, and the faces of the sheet.
     */
    @Test
    void theRiskOfADirectionIsSharedAmongAllItsBounds() throws Exception {
        PlacedScene placed = placed(WALL);
        for (int most : new int[] {2, 4}) {
            for (String onto : new String[] {"sheet/front", "sheet/*"}) {
                RejectionResult result = curve(placed, onto, List.of(30.0), 180, most, 1);
                double shares = result.receivers().size() * (most + 1.0);
                assertThat(shares).isEqualTo((onto.endsWith("*") ? 2 : 1) * (most + 1.0));
                assertThat(result.points().get(0).orders().get(2).atMost())
                        .isCloseTo(Math.log(2 * shares / 0.001) * Math.pow(0.5, 1.5) / 32_768, withinPercentage(0.01));
            }
        }
    }

    @Test
    void whatIsLeftOutOfATotalIsTheBoundOfWhatWasNotFound() {
        OrderLight found = new OrderLight(1, Evidence.SAMPLED, 3e-4, 1e-5, 5e-4);
        RejectionPoint point = new RejectionPoint(
                0, 10, List.of(OrderLight.proved(0), found, new OrderLight(2, Evidence.NONE_FOUND, 0, 0, 2e-4)));
        assertThat(point.total()).isEqualTo(3e-4);
        assertThat(point.leftOut()).isEqualTo(2e-4);
    }

    @Test
    void errorsOfOrdersThatShareTheirSamplesAddUp() {
        RejectionPoint point = new RejectionPoint(
                0,
                10,
                List.of(
                        new OrderLight(0, Evidence.SAMPLED, 1, 3, 9),
                        new OrderLight(1, Evidence.SAMPLED, 1, 4, 9),
                        new OrderLight(2, Evidence.SAMPLED, 1, 5, 9),
                        new OrderLight(3, Evidence.SAMPLED, 1, 7, 9)));
        // 9 + 16 + (5 + 7)^2 = 169.
        assertThat(point.error()).isCloseTo(13, within(1e-12));
    }

    @Test
    void theNumberOfThreadsChangesNothing() throws Exception {
        PlacedScene placed = placed(WALL);
        List<Double> angles = List.of(20.0, 50.0);
        assertThat(curve(placed, "sheet/front", angles, 180, 2, 4).points())
                .isEqualTo(curve(placed, "sheet/front", angles, 180, 2, 1).points());
    }

    @Test
    void whatMakesNoSenseIsRefused() throws Exception {
        PlacedScene placed = placed(WALL);
        assertThatThrownBy(() -> curve(placed, "sheet/front", List.of(89.9), 0, 1, 1))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("below the focal plane");
        assertThatThrownBy(() -> curve(placed, "nothing", List.of(10.0), 0, 1, 1))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("selects no surface");
    }
}
