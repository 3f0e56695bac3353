package darkrim.study.way;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.assembly.ShippedLayouts;
import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.light.Reflector;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** In nightglow-a the openings' walls stand between 3.8 and 5 mm above the detectors, whose top is at 0. */
class WaySearchTest {
    private static final Scene SCENE = ShippedLayouts.scene(Path.of("geometries/nightglow-a.yaml"));
    private static final FacetTree TREE = FacetTree.build(SCENE.copyCorners(), SCENE.copyPlanes(), SCENE.bound());
    private static final Surface WALL =
            SCENE.surface("lid/opening[1,2]/wall/-x").orElseThrow();
    private static final Surface ACTIVE =
            SCENE.surface("mosaic/die[1,2]/active").orElseThrow();

    private static List<Way> find(Surface receiver, Surface via) {
        return new WaySearch(SCENE, TREE).find(receiver, via, Reflector.Part.DIFFUSE, 12, 20_000, () -> false);
    }

    @Test
    void waysByAWallBeginOnThePupilTouchTheWallAndEndOnThePixels() {
        List<Way> ways = find(ACTIVE, WALL);
        assertThat(ways).hasSize(12);
        Vector3D onWall = SCENE.corner(WALL.firstFacet(), 0);
        for (Way way : ways) {
            double fromAxis = Math.hypot(way.onPupil().getX(), way.onPupil().getY());
            assertThat(fromAxis).isBetween(6.0, 22.5);
            assertThat(way.onPupil().getZ()).isCloseTo(320, within(1e-9));
            assertThat(SCENE.normal(WALL.firstFacet()).dot(way.reflected().subtract(onWall)))
                    .isCloseTo(0, within(1e-9));
            assertThat(way.reflected().getZ()).isBetween(3.8, 5.0);
            assertThat(way.arrives().getZ()).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void noWayLeadsByASurfaceThatTheReceiverCannotSee() {
        // It lies in the plane of the pixels, as they do.
        Surface level = SCENE.surface("mosaic/die[2,2]/active").orElseThrow();
        assertThat(find(ACTIVE, level)).isEmpty();
        assertThat(find(ACTIVE, SCENE.surface("lid/top").orElseThrow())).isEmpty();
    }

    @Test
    void aMirrorThrowsLightBackAtTheAngleAtWhichItCame() {
        Beam beam = Beam.of(new Pupil(
                Ring.disc(22.5),
                new Frame(Vector3D.of(0, 0, 320), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z)));
        Scene scene = new SceneBuilder()
                .solid("mirror", new Finish("polished", 0.5, 0.4), Place.IN_CODE)
                .quad("mirror", at(-5, -5, 0), at(5, -5, 0), at(5, 5, 0), at(-5, 5, 0))
                .solid("wall", Finish.ABSORBER, Place.IN_CODE)
                .quad("wall", at(8, -9, 1), at(8, -9, 90), at(8, 9, 90), at(8, 9, 1))
                .build(beam);
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        List<Way> ways = new WaySearch(scene, tree)
                .find(
                        scene.surface("wall").orElseThrow(),
                        scene.surface("mirror").orElseThrow(),
                        Reflector.Part.MIRROR,
                        12,
                        20_000,
                        () -> false);
        assertThat(ways).isNotEmpty();
        for (Way way : ways) {
            Vector3D in = way.onPupil().subtract(way.reflected()).normalize();
            Vector3D out = way.arrives().subtract(way.reflected()).normalize();
            assertThat(in.getZ()).isCloseTo(out.getZ(), within(1e-9));
            assertThat(in.getX()).isCloseTo(-out.getX(), within(1e-9));
            assertThat(in.getY()).isCloseTo(-out.getY(), within(1e-9));
        }
    }

    /** For even points on pupil, wall and pixels, as in Lambert's law: cosines over the square of the leg; the first leg is left out, as it hardly differs. */
    @Test
    void aWayCarriesWhatItsCosinesAndItsSecondLegSay() {
        for (Way way : find(ACTIVE, WALL)) {
            Vector3D out = way.onPupil().subtract(way.reflected()).normalize();
            Vector3D back = way.arrives().subtract(way.reflected());
            Vector3D wall = SCENE.normal(WALL.firstFacet());
            double albedo = WALL.finish().reflection().broad(1, 1);
            double expected = albedo
                    * Math.abs(wall.dot(out))
                    * Math.abs(wall.dot(back))
                    * Math.abs(back.getZ())
                    / Math.pow(back.normSq(), 2);
            assertThat(way.carried()).isCloseTo(expected, within(1e-9 * expected));
        }
    }

    @Test
    void aPartThatReflectsNothingHasNoWays() {
        assertThat(WALL.finish().reflection().hasMirror()).isFalse();
        assertThat(new WaySearch(SCENE, TREE).find(ACTIVE, WALL, Reflector.Part.MIRROR, 5, 20_000, () -> false))
                .isEmpty();
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    @Test
    void aSearchThatIsToldToStopStops() {
        assertThat(new WaySearch(SCENE, TREE).find(ACTIVE, WALL, Reflector.Part.DIFFUSE, 5, 1_000_000_000, () -> true))
                .isEmpty();
    }
}
