package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Window;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Light through a window, against sums over directions and the image method. Comparisons of 5 standard errors fail for 6e-7 of all seeds. */
class WindowLightTest {
    private static final Pupil PUPIL = new Pupil(
            new Ring(30, 8),
            new Frame(Vector3D.of(4, 0, 60), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z));
    private static final Vector3D UP = Vector3D.Unit.PLUS_Z;

    private static Window plain(double thickness, double index) {
        return new Window("window", 20, thickness, index, OptionalDouble.empty(), OptionalDouble.empty(), 0.9);
    }

    /** A blade with its edge at x = 3, 15 above the point, beyond which nothing passes. */
    private static Scene blade(Beam beam) {
        SceneBuilder builder = new SceneBuilder();
        builder.sheet("blade", Finish.ABSORBER, "blade/back", Finish.ABSORBER, Place.IN_CODE)
                .quad(
                        "blade",
                        Vector3D.of(3, -300, 15),
                        Vector3D.of(300, -300, 15),
                        Vector3D.of(300, 300, 15),
                        Vector3D.of(3, 300, 15));
        return builder.build(beam);
    }

    private static Scene sheet(Beam beam, Reflection reflection) {
        SceneBuilder builder = new SceneBuilder();
        Finish finish = new Finish("finish", reflection);
        builder.sheet("sheet", finish, "sheet/back", Finish.ABSORBER, Place.IN_CODE)
                .quad(
                        "sheet",
                        Vector3D.of(-4e3, -4e3, 0),
                        Vector3D.of(4e3, -4e3, 0),
                        Vector3D.of(4e3, 4e3, 0),
                        Vector3D.of(-4e3, 4e3, 0));
        return builder.build(beam);
    }

    private static Estimate direct(Scene scene, Vector3D at, int samples) {
        return Transport.of(scene, 3)
                .batch(new Receiver.AtPoint("point", at, UP), LightClass.DIRECT, 0, samples)
                .irradiance();
    }

    @Test
    void aPlateOfIndexOneThatLosesNothingChangesNothing() {
        Window nothing = new Window("none", 20, 7, 1, OptionalDouble.empty(), OptionalDouble.empty(), 1);
        Beam beam = Beam.of(PUPIL);
        Vector3D at = Vector3D.of(-5, 2, 0);
        Estimate without = direct(blade(beam), at, 20_000);
        Estimate with = direct(blade(beam.through(nothing)), at, 20_000);
        assertThat(without.mean()).isPositive();
        assertThat(with.mean()).isCloseTo(without.mean(), within(1e-12 * without.mean()));
    }

    /**
     * The integral of T cos a over the directions that come from the pupil by Snell's law and pass the blade: midpoints, 2000 by 2000, of
     * which the step at the edges of the pupil and the blade leaves less than 1e-3.
     */
    @Test
    void throughAThickPlateTheIrradianceIsTheSumOverDirections() {
        Window thick = plain(25, 1.8);
        Beam beam = Beam.of(PUPIL).through(thick);
        Vector3D at = Vector3D.of(-9, 3, 1);
        int count = 2000;
        double sum = 0;
        double most = Math.toRadians(70);
        for (int i = 0; i < count; i++) {
            double a = most * (i + 0.5) / count;
            double within = Math.asin(Math.sin(a) / 1.8);
            double aside = (20 - 1 + 60 - 45) * Math.tan(a) + 25 * Math.tan(within);
            int lit = 0;
            for (int j = 0; j < count; j++) {
                double turn = 2 * Math.PI * (j + 0.5) / count;
                double x = at.getX() + aside * Math.cos(turn) - 4;
                double y = at.getY() + aside * Math.sin(turn);
                double r = Math.hypot(x, y);
                boolean passes = at.getX() + 14 * Math.tan(a) * Math.cos(turn) < 3;
                lit += passes && r > 8 && r < 30 ? 1 : 0;
            }
            sum += thick.transmittance(Math.cos(a)) * Math.cos(a) * Math.sin(a) * lit;
        }
        double expected = sum * (most / count) * (2 * Math.PI / count) / beam.referenceIrradiance();
        Estimate found = direct(blade(beam), at, 400_000);
        assertThat(found.mean()).isCloseTo(expected, within(5 * found.standardError() + 1e-3 * expected));
    }

    /** Near the plate directions are sampled instead of points of the pupil: the same sum again. */
    @Test
    void closeUnderTheWindowTheIrradianceIsTheSumOverDirectionsToo() {
        Window near = new Window("window", 5, 50, 1.5, OptionalDouble.of(0.1), OptionalDouble.of(0.2), 1);
        Beam beam = Beam.of(PUPIL).through(near);
        int count = 100_000;
        double sum = 0;
        for (int i = 0; i < count; i++) {
            double a = Math.PI / 2 * (i + 0.5) / count;
            double aside = 9 * Math.tan(a) + 50 * Math.tan(Math.asin(Math.sin(a) / 1.5));
            sum += aside > 8 && aside < 30 ? near.transmittance(Math.cos(a)) * Math.cos(a) * Math.sin(a) : 0;
        }
        double expected = 2 * Math.PI * sum * (Math.PI / 2 / count) / beam.referenceIrradiance();
        assertThat(new PupilSource(beam).fillsTheSky(59)).isTrue();
        Estimate above = Transport.of(sheet(beam, Reflection.NONE), 9)
                .batch(new Receiver.AtPoint("under", Vector3D.of(4, 0, 1), UP), LightClass.DIRECT, 0, 400_000)
                .irradiance();
        assertThat(above.mean()).isCloseTo(expected, within(5 * above.standardError()));
    }

    /** A point over a mirror that looks down gets what its image below gets, times the reflectance. */
    @Test
    void aMirrorUnderAWindowShowsTheImageOfThePoint() {
        Beam beam = Beam.of(PUPIL).through(plain(12, 2.2));
        Estimate image = direct(blade(beam), Vector3D.of(-20, 1, -6), 300_000);
        SceneBuilder builder = new SceneBuilder();
        builder.sheet("mirror", new Finish("m", Reflection.of(0, 0.7)), "back", Finish.ABSORBER, Place.IN_CODE)
                .quad(
                        "mirror",
                        Vector3D.of(-900, -900, 0),
                        Vector3D.of(900, -900, 0),
                        Vector3D.of(900, 900, 0),
                        Vector3D.of(-900, 900, 0));
        builder.sheet("blade", Finish.ABSORBER, "blade/back", Finish.ABSORBER, Place.IN_CODE)
                .quad(
                        "blade",
                        Vector3D.of(3, -300, 15),
                        Vector3D.of(300, -300, 15),
                        Vector3D.of(300, 300, 15),
                        Vector3D.of(3, 300, 15));
        Estimate found = Transport.of(builder.build(beam), 5)
                .batch(
                        new Receiver.AtPoint("down", Vector3D.of(-20, 1, 6), Vector3D.Unit.MINUS_Z),
                        LightClass.ONCE_REFLECTED,
                        0,
                        300_000)
                .irradiance();
        double error = Math.hypot(found.standardError(), 0.7 * image.standardError());
        assertThat(found.mean()).isCloseTo(0.7 * image.mean(), within(5 * error));
        assertThat(found.mean()).isGreaterThan(20 * error);
    }

    /**
     * Lobes are sampled by points of the pupil and by directions; a lobe so wide that both count is compared with the integral over the mirror
     * directions alone: here with a beam that is the same but for the way in which it is sampled, index 1 and no loss, and with one of index 2
     * of vanishing thickness.
     */
    @Test
    void lobesGetThroughAThinWindowWhatTheyGetWithoutTimesWhatPasses() {
        Reflection shiny = new Reflection(0.1, List.of(), List.of(), List.of(new RollOff(0.1, 0.2, 1.5)));
        Beam beam = Beam.of(PUPIL);
        Window thin = new Window("thin", 20, 1e-6, 2, OptionalDouble.of(0.2), OptionalDouble.of(0.1), 1);
        Receiver over = new Receiver.AtPoint("over", Vector3D.of(-20, 1, 6), Vector3D.Unit.MINUS_Z);
        Estimate without = Transport.of(sheet(beam, shiny), 7)
                .batch(over, LightClass.ONCE_REFLECTED, 0, 200_000)
                .irradiance();
        Estimate with = Transport.of(sheet(beam.through(thin), shiny), 8)
                .batch(over, LightClass.ONCE_REFLECTED, 0, 200_000)
                .irradiance();
        double passes = 0.8 * 0.9 / (1 - 0.02);
        double error = Math.hypot(with.standardError(), passes * without.standardError());
        assertThat(with.mean()).isCloseTo(passes * without.mean(), within(5 * error));
        assertThat(with.mean()).isGreaterThan(30 * error);
    }

    /**
     * A mirror on the focal plane and a coated plate of index 1: by the image method, light that is thrown back after k round trips in the plate
     * comes from the pupil as far as 2 (bottom + k t) deeper, and each gives what a disc does, R2 / (R2 + h2) on its axis.
     */
    @Test
    void aMirrorSeesItselfInTheWindowAsItsImagesDo() {
        Pupil disc = new Pupil(
                Ring.disc(30),
                new Frame(Vector3D.of(0, 0, 60), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z));
        Window coated = new Window("pane", 10, 5, 1, OptionalDouble.of(0.3), OptionalDouble.of(0.2), 1);
        Beam beam = Beam.of(disc).through(coated);
        Scene scene = sheet(beam, Reflection.of(0, 0.5));
        double passes = 0.7 * 0.8 / (1 - 0.06);
        double expected = 0;
        for (int k = 0; k < 20; k++) {
            double back = k == 0 ? 0.3 : 0.49 * Math.pow(0.2, k) * Math.pow(0.3, k - 1);
            double depth = 60 + 2 * (10 + 5 * k) - 1e-3;
            expected += back * 0.5 * passes * Math.PI * 900 / (900 + depth * depth);
        }
        expected /= beam.referenceIrradiance();
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        PathTally found = new ManyReflections(scene, tree, 2)
                .batch(new Receiver.AtPoint("on axis", Vector3D.of(0, 0, 1e-3), UP), 2, 0, 1_500_000);
        Estimate ghost = found.orders().get(2);
        assertThat(ghost.mean()).isCloseTo(expected, within(5 * ghost.standardError()));
        assertThat(ghost.mean()).isGreaterThan(40 * ghost.standardError());
        ReflectionPath path = found.by().firstKey();
        assertThat(path.reflectors().stream()
                        .map(each -> scene.reflecting().get(each.surface()).name()))
                .containsExactly("sheet", "pane");
        assertThat(found.orders().get(0).mean())
                .isCloseTo(passes * 1.0, within(5 * found.orders().get(0).standardError() + 1e-4));
    }
}
