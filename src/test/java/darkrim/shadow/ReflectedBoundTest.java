package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.RandomScenes;
import darkrim.light.Receiver;
import darkrim.light.Transport;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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
        double bound = new ReflectedBound(scene, Set.of()).of(scene.surfaces().get(0)) * scene.referenceIrradiance();
        assertThat(bound).isBetween(0.00031755802088650597, 3 * 0.00031755802088650597);
    }

    @Test
    void aWallThatTurnsItsBackIsProvedToSendNothing() {
        Scene scene = wallAndTile(new Finish("wall", 0.1, 0), -1);
        assertThat(new ReflectedBound(scene, Set.of()).of(scene.surfaces().get(0)))
                .isZero();
    }

    @Test
    void aDarkWallSendsNothing() {
        Scene scene = wallAndTile(new Finish("wall", 0.1, 0), 1);
        Surface wall = scene.surface("wall/front").orElseThrow();
        assertThat(new ReflectedBound(scene, Set.of(wall)).of(scene.surfaces().get(0)))
                .isZero();
    }

    @Test
    void theBoundGrowsWithTheReflectance() {
        Scene dim = wallAndTile(new Finish("wall", 0.1, 0), 1);
        Scene bright = wallAndTile(new Finish("wall", 0.2, 0), 1);
        double ratio = new ReflectedBound(bright, Set.of()).of(bright.surfaces().get(0))
                / new ReflectedBound(dim, Set.of()).of(dim.surfaces().get(0));
        assertThat(ratio).isCloseTo(2, org.assertj.core.data.Offset.offset(1e-12));
    }

    /** Never below what is sampled: 5 standard errors, 3e-7 a comparison for a true bound that is met exactly. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void noSampledValueOfARandomSceneIsAboveItsBound(long seed) {
        check(new RandomScenes(seed).open(6), 4_000, 3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"nightglow-a", "nightglow-b"})
    void noSampledValueOfAShippedLayoutIsAboveItsBound(String name) {
        var reading = darkrim.layout.LayoutReader.read(java.nio.file.Path.of("geometries", name + ".yaml"));
        var assembly = darkrim.assembly.Assembly.of(reading.layout().orElseThrow(), new Findings());
        check(darkrim.scene.SceneFactory.of(reading.layout().orElseThrow(), assembly), 4_000, 12);
    }

    private static void check(Scene scene, int samples, int every) {
        ReflectedBound bound = new ReflectedBound(scene, Set.of());
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
            assertThat(got.mean() - 5 * (got.mean() > 0 ? got.standardError() : 0))
                    .as("%s: bound %s, sampled %s", surface.name(), upper, got)
                    .isLessThanOrEqualTo(upper);
            lit += got.mean() > 0 ? 1 : 0;
        }
        assertThat(lit).isGreaterThan(3);
    }
}
