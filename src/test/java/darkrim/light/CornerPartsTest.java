package darkrim.light;

import static darkrim.light.CornerScene.FACING;
import static darkrim.light.CornerScene.FLOOR;
import static darkrim.light.CornerScene.LEFT;
import static darkrim.light.CornerScene.POINT;
import static darkrim.light.CornerScene.PUPIL;
import static darkrim.light.CornerScene.RIGHT;
import static darkrim.light.CornerScene.SCENE;
import static darkrim.light.CornerScene.TREE;
import static darkrim.light.CornerScene.agree;
import static darkrim.light.CornerScene.at;
import static darkrim.light.CornerScene.floor;
import static darkrim.light.CornerScene.relative;
import static darkrim.light.CornerScene.steps;
import static darkrim.light.CornerScene.sums;
import static darkrim.light.CornerScene.turned;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.PlateSums.Element;
import darkrim.light.PlateSums.Step;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shaded lines, parts of surfaces and single rays among the tilted walls of the {@link CornerScene}, against plain sums. */
class CornerPartsTest {
    private static int number(String name) {
        return SCENE.surface(name).orElseThrow().index();
    }

    /** Shares of 10,000 rays, one in each of as many cells: off by less than twice what 10,000 even draws have for a standard error, 0.005. */
    @Test
    void allThatIsSeenOfTheWallsIsLitAndNothingOfTheirBacks() {
        HemisphereTally tally =
                new HemisphereView(SCENE, TREE, Optional.empty(), 4).batch("point", POINT, FACING, 0, 100);
        double[] shares = new double[2];
        for (PlateSums.Plate plate : List.of(LEFT, RIGHT)) {
            double expected = 0;
            for (Element piece : plate.elements(30)) {
                Vector3D way = piece.at().subtract(POINT);
                expected += way.normalize().dot(FACING)
                        * -way.normalize().dot(piece.normal())
                        * piece.area()
                        / way.normSq()
                        / Math.PI;
            }
            int number = number(plate.name());
            assertThat(tally.seen(number) / 1e4).isCloseTo(expected, within(0.01));
            assertThat(tally.lit(number)).isEqualTo(tally.seen(number));
            shares[plate.equals(LEFT) ? 0 : 1] = expected;
            Estimate factor = new ViewFactors(SCENE, TREE, 6)
                    .between(
                            new Receiver.AtPoint("point", POINT, FACING),
                            SCENE.surface(plate.name()).orElseThrow(),
                            10_000);
            assertThat(factor.mean()).isCloseTo(expected, within(5 * 0.5 / Math.sqrt(10_000)));
        }
        double pupil = sums(1, false).irradiance(POINT, FACING) / Math.PI;
        assertThat(tally.seen(tally.pupil()) / 1e4).isCloseTo(pupil, within(0.005));
        assertThat(tally.seen(tally.open()) / 1e4).isCloseTo(1 - shares[0] - shares[1] - pupil, within(0.015));
        assertThat(tally.seen(tally.inside())).isZero();
        int surfaces = SCENE.surfaces().size();
        assertThat(List.of(tally.pupil(), tally.open(), tally.inside()))
                .containsExactly(surfaces, surfaces + 1, surfaces + 2);
    }

    @Test
    void linesToThePupilAreStoppedByTheFirstThingThatTheyMeet() {
        Vector3D under = turned(at(18, 16, -5));
        ObstructionSampler sampler = new ObstructionSampler(SCENE, TREE, 5);
        Obstruction found = sampler.batch(new Receiver.AtPoint("under", under, FACING), 0, 500);
        // From 5 mm under the floor the whole pupil lies behind it.
        assertThat(found.by())
                .containsOnly(java.util.Map.entry(new Obstruction.Blocker(number("floor/back"), false), 500L));
        Obstruction open = sampler.batch(new Receiver.AtPoint("point", POINT, FACING), 0, 500);
        assertThat(open.seen()).isEqualTo(500);
        Obstruction away = sampler.batch(new Receiver.AtPoint("away", POINT, FACING.negate()), 0, 500);
        assertThat(away.behind()).isEqualTo(500);
        Vector3D over = PUPIL.frame().at(1, 2).subtract(PUPIL.frame().normal());
        assertThat(sampler.batch(new Receiver.AtPoint("over", over, FACING), 0, 500)
                        .behind())
                .isEqualTo(500);
        // A point that faces along the pupil's plane through its middle sees half of it.
        Vector3D toward = PUPIL.frame().origin().subtract(POINT);
        Vector3D square = toward.cross(PUPIL.frame().normal()).normalize();
        Obstruction half = sampler.batch(new Receiver.AtPoint("half", POINT, square), 0, 2000);
        assertThat(half.seen() / 2000.0).isCloseTo(0.5, within(5 * 0.5 / Math.sqrt(2000)));
        assertThat(half.seen() + half.behind()).isEqualTo(2000);
    }

    /** A triangle and a square of the floor's first facet. */
    @Test
    void aPartOfAFloorGetsTheLightOfThatPart() {
        Surface floor = floor().surface();
        int facet = floor.firstFacet();
        Patch patch = new Patch(
                "part",
                SCENE,
                floor,
                List.of(
                        new Patch.Piece(facet, 0.1, 0.12, 0.3, 0.05, 0.15, 0.4),
                        new Patch.Piece(facet, 0.5, 0.1, 0.7, 0.1, 0.7, 0.2, 0.5, 0.2)));
        // Determinants of the edges, in weights: 0.2 * 0.28 + 0.05 * 0.07 and 2 * 0.2 * 0.1, of the facet's area.
        double[] areas = {0.0595 * SCENE.facetArea(facet), 0.04 * SCENE.facetArea(facet)};
        assertThat(patch.area()).isCloseTo(areas[0] + areas[1], within(1e-9));
        Transport transport = Transport.of(SCENE, 7);
        double direct = 0;
        double once = 0;
        double[][] middles = {{0.55 / 3, 0.19}, {0.6, 0.15}};
        for (int i = 0; i < 2; i++) {
            Vector3D point = SCENE.corner(facet, 0)
                    .multiply(middles[i][0])
                    .add(SCENE.corner(facet, 1).multiply(middles[i][1]))
                    .add(SCENE.corner(facet, 2).multiply(1 - middles[i][0] - middles[i][1]));
            double share = areas[i] / (areas[0] + areas[1]);
            direct += share * relative(sums(12, false).irradiance(point, FLOOR.normal()));
            for (Step step : steps().toList()) {
                once += share * relative(sums(12, false).irradiance(point, FLOOR.normal(), step));
            }
        }
        agree("direct", transport.batch(patch, LightClass.DIRECT, 0, 10_000), direct, 0.01);
        agree("once", transport.batch(patch, LightClass.ONCE_REFLECTED, 0, 20_000), once, 0.03);
    }

    @Test
    void aSurfaceThatIsKnownToBeDarkSendsNothing() {
        Surface left = SCENE.surface("left").orElseThrow();
        Transport transport = Transport.of(SCENE, 7);
        Receiver point = new Receiver.AtPoint("point", POINT, FACING);
        Tally found = transport.knowingDark(List.of(left)).batch(point, LightClass.ONCE_REFLECTED, 0, 20_000);
        assertThat(found.by().keySet()).extracting(Reflector::surface).containsOnly(number("right"));
        double expected = 0;
        for (Step step : steps().filter(each -> each.plate().equals(RIGHT)).toList()) {
            expected += relative(sums(12, false).irradiance(POINT, FACING, step));
        }
        agree("right", found.irradiance(), expected, 0.03);
        // What it is not known of stays lit.
        assertThat(transport
                        .batch(point, LightClass.ONCE_REFLECTED, 0, 200)
                        .by()
                        .keySet())
                .extracting(Reflector::surface)
                .contains(left.index());
        assertThat(transport.unmeasured(floor(), LightClass.DIRECT))
                .isEqualTo(Tally.none(LightClass.DIRECT, Double.POSITIVE_INFINITY, 3, Double.POSITIVE_INFINITY));
        double largest = transport.largestSample(floor(), LightClass.ONCE_REFLECTED);
        assertThat(transport.nothing(floor(), LightClass.ONCE_REFLECTED))
                .isEqualTo(Tally.none(LightClass.ONCE_REFLECTED, largest, 3, largest));
    }

    /**
     * One ray on a small wall, at a slant and straight down its normal. Straight down there is no way on along the wall: the lobe is then thrown evenly all
     * around. What a strip aslant gets is a sum; it holds a part of the lobe.
     */
    @ParameterizedTest
    @CsvSource({"0, 1", "0, -1", "0.5, 1", "0.5, -1"})
    void oneRayThrowsItsLobeOnAStrip(double slant, double up) {
        Reflection reflection = new Reflection(0, List.of(), List.of(), List.of(new RollOff(0.1, 0.2, 1.5)));
        Vector3D normal = at(0.5, -0.3, 0.9 * up).normalize();
        Vector3D across = normal.orthogonal();
        Vector3D third = normal.cross(across);
        Vector3D from = normal.multiply(Math.cos(slant)).subtract(across.multiply(Math.sin(slant)));
        PlateSums.Plate strip = new PlateSums.Plate(
                "strip",
                normal.multiply(20).add(across.multiply(8)).subtract(third.multiply(10)),
                third.multiply(26),
                across.multiply(12).subtract(normal.multiply(9)),
                Reflection.NONE);
        Scene scene = new SceneBuilder()
                .sheet("wall", new Finish("wall", reflection), "wall/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("strip", Finish.ABSORBER, "strip/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("wall", across, third, across.negate(), third.negate())
                .quad("strip", strip.at(0, 0), strip.at(1, 0), strip.at(1, 1), strip.at(0, 1))
                .build(Beam.of(new Pupil(Ring.disc(1e-9), Frame.about(from.multiply(50), from.negate()))));
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        double expected = 0;
        double sees = 0;
        for (Element piece : strip.elements(30)) {
            Vector3D on = piece.at().normalize();
            double out = on.dot(normal);
            double facing = -on.dot(piece.normal());
            sees += facing;
            expected += reflection.lobe(Math.cos(slant), out, on.dot(from))
                    * out
                    * Math.abs(facing)
                    * piece.area()
                    / piece.at().normSq();
        }
        Surface receiver = scene.surface(sees > 0 ? "strip" : "strip/back").orElseThrow();
        Estimate found = new StarLight(scene, tree, List.of(receiver), 3)
                .batch(Vector3D.ZERO, 0, 160)
                .total();
        assertThat(found.mean()).isCloseTo(expected, within(5 * found.standardError() + 0.003 * expected));
        assertThat(found.standardError()).isLessThan(0.01 * expected);
    }
}
