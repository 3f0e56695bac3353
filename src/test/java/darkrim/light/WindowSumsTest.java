package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.PlateSums.Element;
import darkrim.light.PlateSums.Plate;
import darkrim.light.Reflector.Part;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Window;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/**
 * Light through a plate of glass and by a tilted plate below it, against sums over both with Snell's law written down a second time. Comparisons at 5
 * standard errors fail for 6e-7 of all seeds each; the sums are right to 2 %.
 */
class WindowSumsTest {
    private static final double SUMS = 0.02;
    private static final double INDEX = 1.7;
    private static final double THICKNESS = 18;
    private static final double HEIGHT = 80;

    private static final Pupil PUPIL =
            new Pupil(new Ring(30, 8), Frame.of(at(6, -4, HEIGHT), at(0.8, 0.6, 0), at(0.6, -0.8, 0)));
    private static final Window WINDOW =
            new Window("window", 30, THICKNESS, INDEX, OptionalDouble.of(0.1), OptionalDouble.of(0.3), 0.7);
    private static final Beam BEAM = Beam.of(PUPIL).through(WINDOW);

    private static final Vector3D POINT = at(-9, 3, 1);
    private static final Vector3D FACING = at(0.3, -0.2, 1).normalize();

    /** Reflects in all ways toward the point, and gets light itself. */
    private static final Plate SLANT = new Plate(
            "slant",
            at(14, -16, 2),
            at(9, -2, 20),
            at(3, 30, 2),
            Reflection.of(0.1, 0.3).and(new Reflection(0, List.of(), List.of(), List.of(new RollOff(0.1, 0.2, 1.5)))));

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    /** How far aside a way goes that leaves a point at an angle to the axis, from there to the pupil. */
    private static double aside(double under, double angle) {
        return (under - THICKNESS) * Math.tan(angle) + THICKNESS * Math.tan(Math.asin(Math.sin(angle) / INDEX));
    }

    private static double angle(double under, double aside) {
        double low = 0;
        double high = Math.PI / 2;
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (aside(under, middle) < aside) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Light that is thrown to and fro in the plate, each time weakened by its way through it. */
    private static double passes(double angle) {
        double crossing = Math.pow(0.7, 1 / Math.cos(Math.asin(Math.sin(angle) / INDEX)));
        return 0.9 * 0.7 * crossing / (1 - 0.1 * 0.3 * crossing * crossing);
    }

    /** The unit direction in which a piece of the pupil is seen from a point, times the solid angle that it fills and what passes. */
    private static Vector3D toward(Vector3D from, Element pupil) {
        Vector3D way = pupil.at().subtract(from);
        double under = way.getZ();
        double aside = Math.hypot(way.getX(), way.getY());
        double angle = angle(under, aside);
        double step = 1e-5;
        double stretch = (aside(under, angle + step) - aside(under, angle - step)) / (2 * step);
        double solid = Math.sin(angle) / (aside * stretch) * pupil.area();
        double level = Math.sin(angle) / aside;
        return at(level * way.getX(), level * way.getY(), Math.cos(angle)).multiply(solid * passes(angle));
    }

    private static Scene scene(Vector3D... blade) {
        SceneBuilder builder = new SceneBuilder()
                .sheet("slant", new Finish("f", SLANT.reflection()), "slant/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("slant", SLANT.at(0, 0), SLANT.at(1, 0), SLANT.at(1, 1), SLANT.at(0, 1));
        if (blade.length > 0) {
            builder.sheet("blade", Finish.ABSORBER, "blade/back", Finish.ABSORBER, Place.IN_CODE)
                    .quad("blade", blade[0], blade[1], blade[2], blade[3]);
        }
        return builder.build(BEAM);
    }

    /** Whether a straight way from a point passes the edge of the blade that lies at x = -2, 27 up. */
    private static boolean isOpen(Vector3D from, Vector3D way) {
        return from.getX() + (27 - from.getZ()) * way.getX() / way.getZ() > -2;
    }

    private static void agree(String what, Estimate found, double expected, double most) {
        assertThat(found.mean())
                .as("%s: %s", what, found)
                .isCloseTo(expected, within(5 * found.standardError() + SUMS * expected));
        assertThat(found.standardError()).as("%s: %s", what, found).isLessThan(most * expected);
    }

    /** Some of the pupil is hidden by the slant, some by a blade 14 above the point; the way below the glass is straight. */
    @Test
    void aTiltedPointGetsTheSumOverAllOfThePupilThatIsNotHidden() {
        Scene scene = scene(at(2, -90, 15), at(60, -90, 15), at(60, 90, 15), at(2, 90, 15));
        Tally found = Transport.of(scene, 3)
                .batch(new Receiver.AtPoint("point", POINT, FACING), LightClass.DIRECT, 0, 30_000);
        double sum = 0;
        double seen = 0;
        List<Element> pupil = PlateSums.pupil(PUPIL, 70);
        for (Element piece : pupil) {
            Vector3D light = toward(POINT, piece);
            if (POINT.getX() + 14 * light.getX() / light.getZ() < 2) {
                sum += light.dot(FACING);
                seen += 1.0 / pupil.size();
            }
        }
        agree("direct", found.irradiance(), sum / scene.referenceIrradiance(), 0.02);
        agree("seen", found.pupilSeen(), seen, 0.02);
        Tally.ExampleRay ray = found.example().orElseThrow();
        assertThat(ray.onPupil().getZ()).isCloseTo(HEIGHT, within(1e-9));
        assertThat(ray.onPupil().distance(PUPIL.frame().origin())).isBetween(8 - 1e-9, 30 + 1e-9);
    }

    @Test
    void byATiltedPlateUnderTheGlassEachPartBringsWhatTheSumsSay() {
        // Beside and above the plate another one hides what would come in at a slant.
        Scene scene = scene(at(-2, -90, 27), at(-2, 90, 27), at(-90, 90, 27), at(-90, -90, 27));
        Vector3D facing = at(1, 0.1, 0.4).normalize();
        Receiver point = new Receiver.AtPoint("point", POINT, facing);
        double broad = 0;
        double lobe = 0;
        Reflection reflection = SLANT.reflection();
        for (Element piece : SLANT.elements(8)) {
            Vector3D way = piece.at().subtract(POINT);
            Vector3D back = way.normalize().negate();
            double out = back.dot(piece.normal());
            double share = -back.dot(facing) * out * piece.area() / way.normSq();
            for (Element pupil : PlateSums.pupil(PUPIL, 12)) {
                Vector3D light = toward(piece.at(), pupil);
                double in = light.normalize().dot(piece.normal());
                if (in > 0 && isOpen(piece.at(), light)) {
                    double irradiance = light.dot(piece.normal());
                    broad += share * irradiance * reflection.broad(in, out) / Math.PI;
                    lobe += share
                            * irradiance
                            * reflection.lobe(in, out, light.normalize().dot(back));
                }
            }
        }
        double mirror = 0;
        for (Element piece : SLANT.elements(120)) {
            Vector3D way = piece.at().subtract(POINT);
            Vector3D to = way.normalize();
            double out = -to.dot(piece.normal());
            Vector3D on = to.add(piece.normal().multiply(2 * out));
            double angle = Math.acos(Math.max(0, on.getZ()));
            Vector3D level = at(on.getX(), on.getY(), 0).normalize();
            Vector3D end =
                    piece.at().add(level.multiply(aside(HEIGHT - piece.at().getZ(), angle)));
            double off = Math.hypot(
                    end.getX() - PUPIL.frame().origin().getX(),
                    end.getY() - PUPIL.frame().origin().getY());
            if (on.getZ() > 0 && off < 30 && off > 8 && isOpen(piece.at(), on)) {
                mirror += 0.3 * passes(angle) * to.dot(facing) * out * piece.area() / way.normSq();
            }
        }
        double reference = scene.referenceIrradiance();
        int slant = scene.surface("slant").orElseThrow().index();
        Tally once = Transport.of(scene, 4).batch(point, LightClass.ONCE_REFLECTED, 0, 40_000);
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        PathTally paths = new ManyReflections(scene, tree, 5).batch(point, 1, 0, 40_000);
        double[] expected = {broad / reference, mirror / reference, lobe / reference};
        for (Part part : Part.values()) {
            Reflector by = new Reflector(slant, part);
            agree("once, " + part, once.by().get(by), expected[part.slot()], 0.05);
            agree("paths, " + part, paths.of(new ReflectionPath(List.of(by))), expected[part.slot()], 0.05);
        }
        agree("once", once.irradiance(), (broad + mirror + lobe) / reference, 0.03);
        agree("paths", paths.orders().get(1), (broad + mirror + lobe) / reference, 0.03);
    }

    /** The way that is told ends where its straight line below the glass meets the pupil, brought nearer by t (1 - 1 / n). */
    @Test
    void aWayByTheMirrorIsToldAlongItsStraightLine() {
        Scene scene = scene();
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        List<Vector3D> ends = new ArrayList<>();
        new ManyReflections(scene, tree, 5)
                .batch(
                        new Receiver.AtPoint("point", POINT, at(1, 0.1, 0.4).normalize()),
                        1,
                        0,
                        3000,
                        (path, node, value) -> {
                            if (path.part(1) == Part.MIRROR) {
                                Vector3D hit = at(path.at(1, 0), path.at(1, 1), path.at(1, 2));
                                Vector3D end = at(path.at(0, 0), path.at(0, 1), path.at(0, 2));
                                Vector3D came = hit.subtract(POINT).normalize();
                                Vector3D on = came.subtract(SLANT.normal().multiply(2 * came.dot(SLANT.normal())));
                                assertThat(end.subtract(hit).normalize().distance(on))
                                        .isLessThan(1e-9);
                                ends.add(end);
                            }
                        });
        assertThat(ends)
                .hasSizeGreaterThan(20)
                .allSatisfy(end ->
                        assertThat(end.getZ()).isCloseTo(HEIGHT - THICKNESS * (1 - 1 / INDEX), within(1e-9)));
    }
}
