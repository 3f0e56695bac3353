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
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** The largest value that one sample can take, on which all bounds rest, by hand: a pupil of area A at a height h gives at most A / h^2, or 2 pi near by. */
class LargestByHandTest {
    private static final double HEIGHT = 100;
    private static final double AREA = Math.PI * (20 * 20 - 5 * 5);
    private static final Beam BEAM = Beam.of(
            new Pupil(new Ring(20, 5), Frame.of(at(3, -2, HEIGHT), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y)));
    private static final Vector3D UP = Vector3D.Unit.PLUS_Z;

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    /** A floor from z = 0 to 2, and walls of some finishes that face it, each 3 mm higher than the one before: the first from z = 10 to 25. */
    private static Scene scene(Beam beam, Reflection... walls) {
        SceneBuilder builder = new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE)
                .quad("floor", at(-8, -6, 0), at(9, -6, 2), at(9, 7, 2), at(-8, 7, 0));
        for (int i = 0; i < walls.length; i++) {
            String name = "wall " + i;
            double x = 20 + i;
            double z = 10 + 3 * i;
            builder.sheet(name, new Finish(name, walls[i]), name + "/back", Finish.ABSORBER, Place.IN_CODE)
                    .quad(name, at(x, -6, z), at(x, -6, z + 15), at(x, 7, z + 15), at(x, 7, z));
        }
        return builder.build(beam);
    }

    private static double largest(Scene scene, LightClass light) {
        Receiver floor = new Receiver.OnSurface(scene.surface("floor").orElseThrow());
        return Transport.of(scene, 1).withoutLinks().largestSample(floor, light) * scene.referenceIrradiance();
    }

    private static void reflected(double expected, Reflection... walls) {
        assertThat(largest(scene(BEAM, walls), LightClass.ONCE_REFLECTED)).isCloseTo(expected, within(1e-9 * expected));
    }

    /** The most direct light that the highest edge of a wall can get, sr. */
    private static double most(int wall) {
        double height = HEIGHT - (25 + 3 * wall);
        return AREA / (height * height);
    }

    @Test
    void directLightIsLargestAtTheHighestCorner() {
        Scene scene = scene(BEAM, Reflection.NONE);
        double reference = scene.referenceIrradiance();
        assertThat(largest(scene, LightClass.DIRECT)).isCloseTo(AREA / (98 * 98), within(1e-12));
        Transport transport = Transport.of(scene, 1);
        for (double height : new double[] {90, 20, 14, 13, 1}) {
            Receiver point = new Receiver.AtPoint("point", at(1, 2, HEIGHT - height), UP);
            // From a height of sqrt(A / 2 pi) = 13.7 mm down directions are drawn instead.
            double expected = height > 13.7 ? AREA / (height * height) : 2 * Math.PI;
            assertThat(transport.largestSample(point, LightClass.DIRECT) * reference)
                    .isCloseTo(expected, within(1e-9));
            assertThat(transport
                            .batch(point, LightClass.DIRECT, 0, 4)
                            .pupilSeen()
                            .samples())
                    .isEqualTo(height > 13.7 ? 4 : 0);
        }
    }

    /** A window brings the pupil nearer by less than its thickness. */
    @Test
    void underAWindowItIsThatOfAPupilNearerByItsThickness() {
        Window window = new Window("window", 40, 10, 1.5, OptionalDouble.empty(), OptionalDouble.empty(), 1);
        assertThat(largest(scene(BEAM.through(window), Reflection.NONE), LightClass.DIRECT))
                .isCloseTo(AREA / (88 * 88), within(1e-12));
        // Mirrors are followed there: they throw pi times what they reflect, of a sky that is all pupil.
        assertThat(largest(scene(BEAM.through(window), Reflection.of(0.2, 0.4)), LightClass.ONCE_REFLECTED))
                .isCloseTo(0.2 * AREA / (65 * 65) + Math.PI * 0.4, within(1e-9));
    }

    @Test
    void scatterIsTheLargestOfAllWallsAndMirrorsAreAddedUp() {
        reflected(0.3 * most(0), Reflection.of(0.3, 0));
        reflected(0.3 * most(1), Reflection.of(0.3, 0), Reflection.of(0.3, 0));
        reflected(0.5 * most(0), Reflection.of(0.5, 0), Reflection.of(0.1, 0));
        reflected(0.4 * most(0), Reflection.of(0, 0.4));
        reflected(0.2 * most(0) + 0.4 * most(0), Reflection.of(0.2, 0.4));
        reflected(0.2 * most(1) + 0.4 * most(0) + 0.7 * most(1), Reflection.of(0.2, 0.4), Reflection.of(0.2, 0.7));
        assertThat(largest(scene(BEAM, Reflection.NONE), LightClass.ONCE_REFLECTED))
                .isZero();
    }

    @Test
    void aLobeIsBoundedByItsGreatestValueOrByItsGreatestWeight() {
        // So wide that its value times the light is less than its weight; and so narrow that it is more.
        Reflection wide = new Reflection(0.1, List.of(), List.of(), List.of(new RollOff(0.02, 1, 0)));
        Reflection narrow = new Reflection(0.1, List.of(), List.of(), List.of(new RollOff(0.02, 1e-3, 2)));
        assertThat(wide.greatestLobe() * most(0)).isLessThan(wide.greatestLobeWeight());
        assertThat(narrow.greatestLobe() * most(0)).isGreaterThan(narrow.greatestLobeWeight());
        reflected(0.1 * most(0) + 2 * Math.PI * wide.greatestLobe() * most(0), wide);
        reflected(0.1 * most(0) + 2 * Math.PI * narrow.greatestLobeWeight(), narrow);
    }

    /** More than 64 planes of mirrors: rays are followed, and the best of them throws on what it reflects. */
    @Test
    void ofManyMirrorsTheBestCounts() {
        SceneBuilder builder = new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE)
                .quad("floor", at(-8, -6, 0), at(9, -6, 2), at(9, 7, 2), at(-8, 7, 0));
        for (int i = 0; i < 64; i++) {
            tile(builder, i, 0.2 + 0.001 * i);
        }
        double images = 0;
        for (int i = 0; i < 64; i++) {
            images += (0.2 + 0.001 * i) * AREA / (80 * 80);
        }
        assertThat(largest(builder.build(BEAM), LightClass.ONCE_REFLECTED)).isCloseTo(images, within(1e-9 * images));
        tile(builder, 64, 0.25);
        assertThat(largest(builder.build(BEAM), LightClass.ONCE_REFLECTED)).isCloseTo(Math.PI * 0.263, within(1e-9));
    }

    private static void tile(SceneBuilder builder, int i, double mirror) {
        String name = "tile " + i;
        builder.sheet(name, new Finish(name, 0, mirror), name + "/back", Finish.ABSORBER, Place.IN_CODE)
                .triangle(name, at(20 + 0.1 * i, -1, 10), at(20 + 0.1 * i, -1, 20), at(20 + 0.1 * i, 1, 20));
    }

    /** A mirror so near the pupil that rays are followed to it, beside one that is far. */
    @Test
    void aMirrorNearThePupilIsFollowed() {
        SceneBuilder builder = new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE)
                .quad("floor", at(-8, -6, 0), at(9, -6, 2), at(9, 7, 2), at(-8, 7, 0));
        tile(builder, 0, 0.5);
        builder.sheet("near", new Finish("near", 0, 0.3), "near/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("near", at(40, -6, 80), at(40, -6, 90), at(40, 7, 90), at(40, 7, 80));
        double images = 0.5 * AREA / (80 * 80) + 0.3 * 2 * Math.PI;
        assertThat(largest(builder.build(BEAM), LightClass.ONCE_REFLECTED))
                .isCloseTo(images + Math.PI * 0.3, within(1e-9));
    }
}
