package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.assembly.ShippedLayouts;
import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.FinishedScenes;
import darkrim.light.RandomScenes;
import darkrim.light.Receiver;
import darkrim.light.Transport;
import darkrim.reflection.Reflection;
import darkrim.reflection.Samples;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import darkrim.verdict.ConfidenceSequence;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ReflectedBoundTest {
    private static final Frame DOWN = Frame.of(Vector3D.of(0, 0, 150), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
    private static final Beam BEAM = Beam.of(new Pupil(Ring.disc(20), DOWN));

    /** A floor tile about the origin and a wall of 60 x 55 mm at x = 40 that faces it, as in reference case D08a. */
    private static Scene wallAndTile(Finish finish, double facing) {
        SceneBuilder builder = new SceneBuilder()
                .sheet("tile/front", Finish.ABSORBER, "tile/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("wall/front", finish, "wall/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("tile/front", at(-1, -1, 0), at(1, -1, 0), at(1, 1, 0), at(-1, 1, 0));
        Vector3D[] wall = {at(40, -30, 5), at(40, -30, 60), at(40, 30, 60), at(40, 30, 5)};
        return facing > 0
                ? builder.quad("wall/front", wall[0], wall[1], wall[2], wall[3]).build(BEAM)
                : builder.quad("wall/front", wall[3], wall[2], wall[1], wall[0]).build(BEAM);
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    @Test
    void aWallThatScattersOntoATileIsBoundedWithinAFactorOfThree() {
        // Reference case D08a: 0.00031755802088650597 for L = 1 at the origin, reflectance 0.1; derived there by
        // quadrature.
        Scene scene = wallAndTile(new Finish("wall", 0.1, 0), 1);
        double bound = new ReflectedBound(scene, TestParts.tree(scene), Set.of())
                        .of(scene.surfaces().get(0))
                * scene.referenceIrradiance();
        assertThat(bound).isBetween(0.00031755802088650597, 3 * 0.00031755802088650597);
    }

    @Test
    void aWallThatTurnsItsBackIsProvedToSendNothing() {
        Scene scene = wallAndTile(new Finish("wall", 0.1, 0), -1);
        assertThat(new ReflectedBound(scene, TestParts.tree(scene), Set.of())
                        .of(scene.surfaces().get(0)))
                .isZero();
    }

    @Test
    void aDarkWallSendsNothing() {
        Scene scene = wallAndTile(new Finish("wall", 0.1, 0), 1);
        Surface wall = scene.surface("wall/front").orElseThrow();
        assertThat(new ReflectedBound(scene, TestParts.tree(scene), Set.of(wall))
                        .of(scene.surfaces().get(0)))
                .isZero();
    }

    @Test
    void theBoundGrowsWithTheReflectance() {
        Scene dim = wallAndTile(new Finish("wall", 0.1, 0), 1);
        Scene bright = wallAndTile(new Finish("wall", 0.2, 0), 1);
        double ratio = new ReflectedBound(bright, TestParts.tree(bright), Set.of())
                        .of(bright.surfaces().get(0))
                / new ReflectedBound(dim, TestParts.tree(dim), Set.of())
                        .of(dim.surfaces().get(0));
        assertThat(ratio).isCloseTo(2, org.assertj.core.data.Offset.offset(1e-12));
    }

    @Test
    void aScreenBetweenThemProvesThatNothingArrives() {
        // A sheet across all lines from the wall to the tile, clear of the beam on its way down to the wall.
        SceneBuilder builder = new SceneBuilder()
                .sheet("tile/front", Finish.ABSORBER, "tile/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("wall/front", new Finish("wall", 0.1, 0.5), "wall/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("screen/front", Finish.ABSORBER, "screen/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("tile/front", at(-1, -1, 0), at(1, -1, 0), at(1, 1, 0), at(-1, 1, 0))
                .quad("wall/front", at(40, -30, 5), at(40, -30, 60), at(40, 30, 60), at(40, 30, 5))
                .quad("screen/front", at(5, -30, -1), at(5, -30, 30), at(5, 30, 30), at(5, 30, -1));
        Scene scene = builder.build(BEAM);
        ReflectedBound bound = new ReflectedBound(scene, TestParts.tree(scene), Set.of());
        assertThat(bound.of(scene.surface("tile/front").orElseThrow())).isZero();
        // Enough is enough: a limit that the plain bound meets asks for no proof.
        assertThat(bound.of(scene.surface("tile/front").orElseThrow(), 100)).isPositive();
    }

    @Test
    void noBoundIsAboveTheBrightestReflectionAllAround() {
        // A wall that touches the tile: area times view factor grows beyond all measure, radiance does not.
        SceneBuilder builder = new SceneBuilder()
                .sheet("tile/front", Finish.ABSORBER, "tile/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("wall/front", new Finish("wall", 0.5, 0), "wall/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("tile/front", at(0.99, -0.01, 0), at(1, -0.01, 0), at(1, 0.01, 0), at(0.99, 0.01, 0))
                .quad("wall/front", at(1, -30, 0), at(1, -30, 60), at(1, 30, 60), at(1, 30, 0));
        Scene scene = builder.build(BEAM);
        // The disc seen from the wall is nearer than 90 mm nowhere: E/L < pi 400 / 90^2.
        double brightest = 0.5 * Math.PI * 400 / 8100 / scene.referenceIrradiance();
        assertThat(new ReflectedBound(scene, TestParts.tree(scene), Set.of())
                        .of(scene.surface("tile/front").orElseThrow()))
                .isBetween(0.01 * brightest, brightest);
    }

    /** Empirical Bernstein bounds at a risk of 1e-9 each: over less than 10,000 comparisons a false alarm in 1e5 runs. */
    @Tag("chance")
    @Test
    void noSampledIntervalOfARandomSceneIsAboveItsBound() {
        int lit = 0;
        for (long seed = 1; seed <= 200; seed++) {
            lit += check(new RandomScenes(seed).open(6), 2_000, 20);
        }
        assertThat(lit).isGreaterThan(150);
    }

    /** Coats, bare faces, lobes and tables in the place of constant finishes; same risk. */
    @Tag("chance")
    @Test
    void noSampledIntervalIsAboveItsBoundWhereFinishesChangeWithAngle() {
        List<Reflection> all = Samples.all().map(Samples.Named::reflection).toList();
        int lit = 0;
        for (long seed = 1; seed <= 16; seed++) {
            lit += check(FinishedScenes.refinished(new RandomScenes(seed).open(6), all), 2_000, 10);
        }
        assertThat(lit).isGreaterThan(15);
    }

    @Tag("chance")
    @ParameterizedTest
    @MethodSource("darkrim.assembly.ShippedLayouts#files")
    void noSampledIntervalOfAShippedLayoutIsAboveItsBound(Path file) {
        check(ShippedLayouts.scene(file), 3_000, 8);
    }

    /** Number of surfaces that were found lit. */
    private static int check(Scene scene, int samples, int every) {
        ReflectedBound bound = new ReflectedBound(scene, TestParts.tree(scene), Set.of());
        Transport transport = Transport.of(scene, 1);
        int lit = 0;
        List<Surface> some = scene.surfaces().stream()
                .filter(surface -> surface.index() % every == 0)
                .toList();
        for (Surface surface : some) {
            Estimate got = transport
                    .batch(new Receiver.OnSurface(surface), LightClass.ONCE_REFLECTED, 0, samples)
                    .irradiance();
            double upper = bound.of(surface);
            String what = surface.name() + ": bound " + upper + ", sampled " + got;
            assertThat(new ConfidenceSequence(1e-9).lower(got, 1)).as(what).isLessThanOrEqualTo(upper);
            assertThat(upper > 0 || got.mean() == 0).as(what).isTrue();
            lit += got.mean() > 0 ? 1 : 0;
        }
        return lit;
    }
}
