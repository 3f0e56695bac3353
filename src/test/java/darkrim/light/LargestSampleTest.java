package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.reflection.AngleTable;
import darkrim.reflection.ProductScatter;
import darkrim.reflection.Reflection;
import darkrim.reflection.Samples;
import darkrim.scene.Beam;
import darkrim.scene.DistantBody;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The bounds of sampled means rest on the largest value that one sample can take. Here single samples are drawn where they are large: small
 * sheets, many of them mirrors, close about a wide pupil, in its plane and behind it.
 */
class LargestSampleTest {
    /** Covers the rounding of a sample. */
    private static final double ROUNDING = 1 + 1e-9;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void noSampleIsLargerThanTheBoundSays(long seed) {
        Scene scene = aboutThePupil(seed);
        requireBounded(scene, seed, 300);
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22})
    void norInScenesOfBlocksAndSheets(long seed) {
        requireBounded(new RandomScenes(seed).open(8), seed, 60);
        // So many mirrors that none is sampled by its image.
        requireBounded(new RandomScenes(seed).open(150), seed, 60);
        requireBounded(new RandomScenes(seed).room(3, new Finish("grey", 0.5, 0.4)), seed, 60);
    }

    /** Coats, bare faces, lobes and tables in the place of constant finishes. */
    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33, 34})
    void norWhereFinishesChangeWithAngle(long seed) {
        List<Reflection> all = Samples.all().map(Samples.Named::reflection).toList();
        requireBounded(FinishedScenes.refinished(aboutThePupil(seed), all), seed, 100);
        requireBounded(FinishedScenes.refinished(new RandomScenes(seed).open(8), all), seed, 30);
    }

    /** Rooms of one finish that scatters to all sides: Lambertian, evenly dark; and by a table that rises thirtyfold toward grazing angles. */
    @ParameterizedTest
    @ValueSource(longs = {41, 42})
    void norAfterSeveralReflectionsFromWhatScattersBroadly(long seed) {
        Reflection rising = new Reflection(
                0.01,
                List.of(),
                List.of(ProductScatter.of(
                        new AngleTable(List.of(0.0, 60.0, 80.0, 90.0), List.of(0.02, 0.03, 0.1, 0.6)))),
                List.of());
        for (Reflection reflection : List.of(rising, Reflection.of(0.9, 0), Reflection.of(0.04, 0))) {
            Scene room = new RandomScenes(seed).room(3, new Finish("finish", reflection));
            requireOrdersBounded(room, seed);
            Scene open = FinishedScenes.refinished(new RandomScenes(seed).open(8), List.of(reflection));
            requireOrdersBounded(open, seed);
        }
    }

    private static void requireOrdersBounded(Scene scene, long seed) {
        ManyReflections many =
                new ManyReflections(scene, FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound()), seed);
        double[] most = new double[5];
        for (int order = 1; order < most.length; order++) {
            most[order] = many.largestSample(order) * ROUNDING;
            assertThat(most[order]).isFinite();
        }
        Receiver on = new Receiver.OnSurface(scene.surfaces().get(0));
        for (int i = 0; i < 3_000; i++) {
            PathTally one = many.batch(on, most.length - 1, i, 1);
            for (int order = 1; order < most.length; order++) {
                assertThat(one.orders().get(order).mean())
                        .as("order %d, seed %d, draw %d", order, seed, i)
                        .isLessThanOrEqualTo(most[order]);
            }
        }
    }

    /** By hand: a far small pupil, of irradiance 1 facing it, a wall of 0.25: 1 x 0.25 after one reflection, half of that for each further one. */
    @Test
    void ofALambertianFinishEachFurtherReflectionBringsTheRootOfItsReflectance() {
        Scene scene = new RandomScenes(5).open(3);
        Scene grey = FinishedScenes.refinished(scene, List.of(Reflection.of(0.25, 0)));
        Scene lit = new DistantBody(30, 0, 0.5, Optional.empty()).over(grey);
        ManyReflections many =
                new ManyReflections(lit, FacetTree.build(lit.corners(), lit.copyPlanes(), lit.bound()), 1);
        for (int order = 1; order <= 4; order++) {
            assertThat(many.largestSample(order) / DistantBody.facing(lit))
                    .isCloseTo(0.25 * Math.pow(0.5, order - 1), within(1e-4));
        }
        Scene shiny = FinishedScenes.refinished(scene, List.of(Reflection.of(0.25, 0), Reflection.of(0, 0.1)));
        assertThat(new ManyReflections(shiny, FacetTree.build(shiny.corners(), shiny.copyPlanes(), shiny.bound()), 1)
                        .largestSample(2))
                .isInfinite();
    }

    private static void requireBounded(Scene scene, long seed, int draws) {
        Transport transport = Transport.of(scene, seed);
        for (Surface surface : scene.surfaces()) {
            Receiver receiver = new Receiver.OnSurface(surface);
            for (LightClass light : LightClass.values()) {
                double most = transport.largestSample(receiver, light) * ROUNDING;
                for (int i = 0; i < draws; i++) {
                    double value =
                            transport.batch(receiver, light, i, 1).irradiance().mean();
                    assertThat(value)
                            .as("%s on %s, seed %d, draw %d", light, surface.name(), seed, i)
                            .isLessThanOrEqualTo(most);
                }
            }
        }
    }

    private static Scene aboutThePupil(long seed) {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
        Frame frame = Frame.of(Vector3D.of(0, 0, 10), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        SceneBuilder builder = new SceneBuilder();
        for (int i = 0; i < 30; i++) {
            double mirror = random.nextDouble() < 0.7 ? random.nextDouble() : 0;
            Finish finish = new Finish("f" + i, (1 - mirror) * random.nextDouble(), mirror);
            Vector3D centre = Vector3D.of(
                    6 * random.nextDouble() - 3, 6 * random.nextDouble() - 3, 10.3 - 4 * random.nextDouble());
            double side = 0.05 + 2 * random.nextDouble();
            Vector3D a = direction(random).multiply(side);
            Vector3D b = direction(random).cross(a).normalize().multiply(side);
            String name = "s" + i;
            builder.sheet(name, finish, name + "/back", finish, Place.IN_CODE)
                    .quad(name, centre, centre.add(a), centre.add(a).add(b), centre.add(b));
        }
        return builder.build(Beam.of(new Pupil(Ring.disc(0.5 + 2 * random.nextDouble()), frame)));
    }

    private static Vector3D direction(UniformRandomProvider random) {
        return Vector3D.of(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5)
                .normalize();
    }
}
