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
import static darkrim.light.CornerScene.name;
import static darkrim.light.CornerScene.plate;
import static darkrim.light.CornerScene.reflector;
import static darkrim.light.CornerScene.relative;
import static darkrim.light.CornerScene.scene;
import static darkrim.light.CornerScene.steps;
import static darkrim.light.CornerScene.sums;
import static darkrim.light.CornerScene.turned;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.PlateSums.Plate;
import darkrim.light.PlateSums.Step;
import darkrim.light.Reflector.Part;
import darkrim.reflection.Reflection;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What comes by each way of light between two tilted walls and a floor, in the {@link CornerScene}, is held against {@link PlateSums}. Comparisons at 5
 * standard errors fail for 6e-7 of all seeds each; the sums themselves are right to 2 %.
 */
class CornerLightTest {
    @Test
    void aPointGetsByEachWayOfTwoReflectionsWhatTheSumsSay() {
        PathTally found =
                new ManyReflections(SCENE, TREE, 3).batch(new Receiver.AtPoint("point", POINT, FACING), 2, 0, 60_000);
        PlateSums sums = sums(8, false);
        agree("direct", found.orders().get(0), relative(sums.irradiance(POINT, FACING)), 0.01);
        double once = 0;
        double twice = 0;
        for (Step last : steps().toList()) {
            double by = relative(sums.irradiance(POINT, FACING, last));
            agree(name(last), found.of(path(last)), by, 0.1);
            once += by;
            for (Step first :
                    steps().filter(each -> !each.plate().equals(last.plate())).toList()) {
                double byBoth = relative(sums.irradiance(POINT, FACING, last, first));
                String what = name(first) + " and then " + name(last);
                agree(what, found.of(path(first, last)), byBoth, 0.5);
                twice += byBoth;
            }
        }
        agree("once", found.orders().get(1), once, 0.03);
        agree("twice", found.orders().get(2), twice, 0.1);
        agree("up to two", found.reflected(), once + twice, 0.05);
    }

    private static ReflectionPath path(Step... steps) {
        return new ReflectionPath(
                Arrays.stream(steps).map(CornerScene::reflector).toList());
    }

    @Test
    void aPointGetsOnceReflectedLightByEachPartAtTheAngleThatTheSumsSay() {
        Tally found = Transport.of(SCENE, 5)
                .batch(new Receiver.AtPoint("point", POINT, FACING), LightClass.ONCE_REFLECTED, 0, 20_000);
        double all = 0;
        for (Step step : steps().toList()) {
            double value = sums(16, false).irradiance(POINT, FACING, step);
            double byCosine = sums(16, true).irradiance(POINT, FACING, step);
            agree(name(step), found.by().get(reflector(step)), relative(value), 0.05);
            assertThat(found.incidences().get(reflector(step)))
                    .as(name(step))
                    .isCloseTo(byCosine / value, within(0.02 * byCosine / value));
            all += relative(value);
        }
        agree("all", found.irradiance(), all, 0.02);
        assertThat(found.by()).hasSize(5);
    }

    /** A small floor between the walls, which go on below it, and each third of it: by links and with points drawn evenly. */
    @Test
    void eachCellOfAFloorGetsWhatTheSumsSay() {
        Plate small = plate("floor", at(16, 14, 20), at(9, 0, 0), at(0, 6, 0), Reflection.NONE);
        Scene scene = scene(small);
        int columns = 3;
        double[] expected = new double[columns];
        for (int column = 0; column < columns; column++) {
            for (Step step : steps().toList()) {
                for (double t : new double[] {0.25, 0.75}) {
                    Vector3D point = small.at((column + 0.5) / columns, t);
                    expected[column] += relative(sums(10, false).irradiance(point, small.normal(), step)) / 2;
                }
            }
        }
        Receiver floor = new Receiver.OnSurface(scene.surface("floor").orElseThrow());
        Transport linked = Transport.of(scene, 7);
        assertThat(linked.largestSample(floor, LightClass.ONCE_REFLECTED))
                .isLessThan(linked.withoutLinks().largestSample(floor, LightClass.ONCE_REFLECTED));
        for (Transport transport : List.of(linked, linked.withoutLinks())) {
            Tally found = transport.batch(floor, LightClass.ONCE_REFLECTED, 0, 24_000);
            agree("floor", found.irradiance(), Arrays.stream(expected).sum() / columns, 0.02);
            for (int column = 0; column < columns; column++) {
                agree("column " + column, found.cells().get(column), expected[column], 0.04);
            }
        }
    }

    @Test
    void lightFollowedForwardFindsTheSameOnTheFloorAfterEachNumberOfReflections() {
        ForwardTally found = new ForwardTracer(SCENE, TREE, 9).trace(300_000, 4);
        double direct = 0;
        double once = 0;
        double twice = 0;
        PlateSums sums = new PlateSums(PlateSums.pupil(PUPIL, 3), 6, false);
        for (PlateSums.Element piece : FLOOR.elements(3)) {
            direct += relative(sums.irradiance(piece.at(), piece.normal())) / 9;
            for (Step last : steps().toList()) {
                once += relative(sums.irradiance(piece.at(), piece.normal(), last)) / 9;
                for (Step first : steps().filter(each -> !each.plate().equals(last.plate()))
                        .toList()) {
                    twice += relative(sums.irradiance(piece.at(), piece.normal(), last, first)) / 9;
                }
            }
        }
        agree("direct", found.irradiance(floor().surface(), 0), direct, 0.02);
        double onRight = 0;
        for (PlateSums.Element piece : RIGHT.elements(6)) {
            onRight += relative(sums.irradiance(piece.at(), piece.normal())) / 36;
        }
        agree("right", found.irradiance(SCENE.surface("right").orElseThrow(), 0), onRight, 0.02);
        agree("once", found.irradiance(floor().surface(), 1), once, 0.04);
        agree("twice", found.irradiance(floor().surface(), 2), twice, 0.12);
        assertThat(found.absorbed() + found.escaped() + found.travelling())
                .isCloseTo(found.emitted(), within(1e-9 * found.emitted()));
    }

    /** A wall that scatters and mirrors, but has no lobe; one that only mirrors; one that only scatters. */
    @ParameterizedTest
    @CsvSource({"0.3, 0.5", "0, 0.8", "0.8, 0"})
    void lightFollowedForwardIsSharedByMirrorAndScatter(double diffuse, double mirror) {
        Plate left = new Plate("left", LEFT.corner(), LEFT.u(), LEFT.v(), Reflection.of(diffuse, mirror));
        Scene scene = scene(FLOOR, left);
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        Estimate found = new ForwardTracer(scene, tree, 9)
                .trace(100_000, 2)
                .irradiance(scene.surface("floor").orElseThrow(), 1);
        double expected = 0;
        for (PlateSums.Element piece : FLOOR.elements(3)) {
            for (Step step : List.of(
                    new Step(left, Part.DIFFUSE),
                    new Step(left, Part.MIRROR),
                    new Step(RIGHT, Part.DIFFUSE),
                    new Step(RIGHT, Part.LOBE))) {
                expected += sums(6, false).irradiance(piece.at(), piece.normal(), step) / 9;
            }
        }
        agree("once", found, expected / scene.referenceIrradiance(), 0.08);
    }

    /**
     * A star in focus behind the left wall: from each point of the pupil one ray, which strikes the wall where a line says, and what the wall throws
     * on the floor and on the other wall is a sum over these.
     */
    @Test
    void aStarBehindATiltedWallGivesEachReceiverWhatTheSumsSayByEachPart() {
        Vector3D focus = turned(at(-3, 18, 14));
        List<Plate> receivers = List.of(FLOOR, RIGHT);
        StarTally found = new StarLight(
                        SCENE,
                        TREE,
                        receivers.stream()
                                .map(each -> SCENE.surface(each.name()).orElseThrow())
                                .toList(),
                        11)
                .batch(focus, 0, 160);
        double[] scattered = new double[2];
        double broad = 0;
        double lobes = 0;
        double mirror = 0;
        List<PlateSums.Element> pupil = PlateSums.pupil(PUPIL, 6);
        for (PlateSums.Element from : pupil) {
            Vector3D way = focus.subtract(from.at()).normalize();
            double in = -way.dot(LEFT.normal());
            Vector3D hit =
                    from.at().add(way.multiply(from.at().subtract(LEFT.corner()).dot(LEFT.normal()) / in));
            mirror += LEFT.reflection().mirror(in) / pupil.size();
            for (int i = 0; i < 2; i++) {
                for (PlateSums.Element to : receivers.get(i).elements(16)) {
                    Vector3D on = to.at().subtract(hit).normalize();
                    double out = on.dot(LEFT.normal());
                    double arriving = Math.max(0, -on.dot(to.normal()));
                    double share =
                            out * arriving * to.area() / to.at().subtract(hit).normSq() / pupil.size();
                    double diffuse = share * LEFT.reflection().broad(in, out) / Math.PI;
                    double lobe = share * LEFT.reflection().lobe(in, out, -on.dot(way));
                    scattered[i] += diffuse + lobe;
                    broad += diffuse;
                    lobes += lobe;
                }
            }
        }
        int left = SCENE.surface("left").orElseThrow().index();
        agree("broad", found.by().get(new Reflector(left, Part.DIFFUSE)), broad, 0.02);
        agree("lobes", found.by().get(new Reflector(left, Part.LOBE)), lobes, 0.02);
        // All of the mirrored rays strike the floor.
        agree("mirror", found.by().get(new Reflector(left, Part.MIRROR)), mirror, 0.01);
        agree("floor", found.once().get(0), scattered[0] + mirror, 0.02);
        agree("right", found.once().get(1), scattered[1], 0.04);
        agree("total", found.total(), broad + lobes + mirror, 0.02);
        assertThat(found.direct()).allSatisfy(each -> assertThat(each.mean()).isZero());
        assertThat(found.by()).hasSize(3);
        // For each of two receivers and once more: the broad part and the lobe; the mirror at its best.
        double most = Stream.of(LEFT, RIGHT)
                .map(Plate::reflection)
                .map(each -> 3 * (each.greatestBroad() + each.greatestLobeWeight()) + each.greatestMirror(0, 1))
                .max(Comparator.naturalOrder())
                .orElseThrow();
        assertThat(found.total().largest()).isEqualTo(most);
    }
}
