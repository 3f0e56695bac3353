package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.PlateSums.Plate;
import darkrim.light.PlateSums.Step;
import darkrim.light.Reflector.Part;
import darkrim.reflection.AngleTable;
import darkrim.reflection.Fresnel;
import darkrim.reflection.ProductScatter;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.trace.FacetTree;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;

/**
 * Two walls of all kinds of finish meet over a floor, all turned so that nothing lies along an axis: what comes by each way is held against
 * {@link PlateSums}. Comparisons at 5 standard errors fail for 6e-7 of all seeds each; the sums themselves are right to 1 %.
 */
class CornerLightTest {
    private static final double SUMS = 0.01;

    private static final QuaternionRotation TURN = QuaternionRotation.fromAxisAngle(Vector3D.of(0.3, -0.5, 0.8), 0.6);

    private static final Plate FLOOR = plate("floor", at(6, 6, 0), at(24, 0, 0), at(0, 20, 0), Reflection.NONE);

    /** Mirrors, scatters and has a lobe. */
    private static final Plate LEFT = plate(
            "left",
            at(0, 8, 6),
            at(0, 32, 0),
            at(0, 0, 64),
            Reflection.of(0.25, 0.2)
                    .and(new Reflection(
                            0, List.of(new Fresnel(3, 0, 0.3)), List.of(), List.of(new RollOff(0.05, 0.3, 1.5)))));

    /** Scatters more at a slant, and has a lobe, but no mirror: so no way has two mirrors one after the other. */
    private static final Plate RIGHT = plate(
            "right",
            at(8, 0, 6),
            at(0, 0, 64),
            at(32, 0, 0),
            new Reflection(
                    0.1,
                    List.of(),
                    List.of(ProductScatter.of(new AngleTable(List.of(0.0, 90.0), List.of(0.1, 0.4)))),
                    List.of(new RollOff(0.1, 0.2, 1.5))));

    private static final Pupil PUPIL =
            new Pupil(new Ring(15, 4), Frame.about(turned(at(30, 20, 100)), turned(at(-0.1, 0.05, -1))));

    private static final Scene SCENE = scene(FLOOR);
    private static final FacetTree TREE = FacetTree.build(SCENE.corners(), SCENE.copyPlanes(), SCENE.bound());

    private static final Vector3D POINT = turned(at(20, 16, 0));
    private static final Vector3D FACING = turned(at(-0.2, -0.1, 1)).normalize();

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static Vector3D turned(Vector3D vector) {
        return TURN.apply(vector);
    }

    private static Plate plate(String name, Vector3D corner, Vector3D u, Vector3D v, Reflection reflection) {
        return new Plate(name, turned(corner), turned(u), turned(v), reflection);
    }

    private static Scene scene(Plate floor) {
        SceneBuilder builder = new SceneBuilder();
        for (Plate plate : List.of(floor, LEFT, RIGHT)) {
            builder.sheet(
                            plate.name(),
                            new Finish(plate.name(), plate.reflection()),
                            plate.name() + "/back",
                            Finish.ABSORBER,
                            Place.IN_CODE)
                    .quad(plate.name(), plate.at(0, 0), plate.at(1, 0), plate.at(1, 1), plate.at(0, 1));
        }
        builder.grid("floor", new CellGrid(floor.corner(), floor.u(), floor.v(), 3, 1));
        return builder.build(Beam.of(PUPIL));
    }

    private static PlateSums sums(int cells, boolean byCosine) {
        return new PlateSums(PlateSums.pupil(PUPIL, 6), cells, byCosine);
    }

    private static Receiver.OnSurface floor() {
        return new Receiver.OnSurface(SCENE.surface("floor").orElseThrow());
    }

    private static String name(Step step) {
        return step.part() + " of " + step.plate().name();
    }

    private static Reflector reflector(Step step) {
        return new Reflector(SCENE.surface(step.plate().name()).orElseThrow().index(), step.part());
    }

    private static void agree(String what, Estimate found, double expected, double most) {
        assertThat(found.mean())
                .as("%s: %s", what, found)
                .isCloseTo(expected, within(5 * found.standardError() + SUMS * expected));
        assertThat(found.standardError()).as("%s: %s", what, found).isLessThan(most * expected);
    }

    /** The parts of both walls. */
    private static Stream<Step> steps() {
        return Stream.concat(
                Arrays.stream(Part.values()).map(part -> new Step(LEFT, part)),
                Stream.of(new Step(RIGHT, Part.DIFFUSE), new Step(RIGHT, Part.LOBE)));
    }

    private static double relative(double irradiance) {
        return irradiance / SCENE.referenceIrradiance();
    }

    @Test
    void aPointGetsByEachWayOfTwoReflectionsWhatTheSumsSay() {
        PathTally found =
                new ManyReflections(SCENE, TREE, 3).batch(new Receiver.AtPoint("point", POINT, FACING), 2, 0, 60_000);
        PlateSums sums = sums(12, false);
        agree("direct", found.orders().get(0), relative(sums.irradiance(POINT, FACING)), 0.01);
        double once = 0;
        double twice = 0;
        for (Step last : steps().toList()) {
            double by = relative(sums.irradiance(POINT, FACING, last));
            agree(name(last), found.of(path(last)), by, 0.1);
            once += by;
            for (Step first :
                    steps().filter(each -> each.plate() != last.plate()).toList()) {
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
                Arrays.stream(steps).map(CornerLightTest::reflector).toList());
    }

    @Test
    void aPointGetsOnceReflectedLightByEachPartAtTheAngleThatTheSumsSay() {
        Tally found = Transport.of(SCENE, 5)
                .batch(new Receiver.AtPoint("point", POINT, FACING), LightClass.ONCE_REFLECTED, 0, 20_000);
        double all = 0;
        for (Step step : steps().toList()) {
            double value = sums(24, false).irradiance(POINT, FACING, step);
            double byCosine = sums(24, true).irradiance(POINT, FACING, step);
            agree(name(step), found.by().get(reflector(step)), relative(value), 0.05);
            assertThat(found.incidences().get(reflector(step)))
                    .as(name(step))
                    .isCloseTo(byCosine / value, within(0.02 * byCosine / value));
            all += relative(value);
        }
        agree("all", found.irradiance(), all, 0.02);
        assertThat(found.by()).hasSize(5);
    }

    /** A small floor and each third of it, by links and with points drawn evenly. */
    @Test
    void eachCellOfAFloorGetsWhatTheSumsSay() {
        Plate small = plate("floor", at(16, 14, 0), at(9, 0, 0), at(0, 6, 0), Reflection.NONE);
        Scene scene = scene(small);
        int columns = 3;
        double[] expected = new double[columns];
        for (int column = 0; column < columns; column++) {
            for (Step step : steps().toList()) {
                for (double t : new double[] {0.25, 0.75}) {
                    Vector3D point = small.at((column + 0.5) / columns, t);
                    expected[column] += relative(sums(12, false).irradiance(point, small.normal(), step)) / 2;
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
        PlateSums sums = new PlateSums(PlateSums.pupil(PUPIL, 4), 8, false);
        for (PlateSums.Element piece : FLOOR.elements(4)) {
            direct += relative(sums.irradiance(piece.at(), piece.normal())) / 16;
            for (Step last : steps().toList()) {
                once += relative(sums.irradiance(piece.at(), piece.normal(), last)) / 16;
                for (Step first :
                        steps().filter(each -> each.plate() != last.plate()).toList()) {
                    twice += relative(sums.irradiance(piece.at(), piece.normal(), last, first)) / 16;
                }
            }
        }
        agree("direct", found.irradiance(floor().surface(), 0), direct, 0.02);
        agree("once", found.irradiance(floor().surface(), 1), once, 0.04);
        agree("twice", found.irradiance(floor().surface(), 2), twice, 0.12);
        assertThat(found.absorbed() + found.escaped() + found.travelling())
                .isCloseTo(found.emitted(), within(1e-9 * found.emitted()));
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
                .batch(focus, 0, 120);
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
                for (PlateSums.Element to : receivers.get(i).elements(24)) {
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
        assertThat(found.largest()).isBetween(found.total().mean(), most);
    }
}
