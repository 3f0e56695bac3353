package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.reflection.AngleTable;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import java.util.List;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A pupil of radius 1 at z = 150, a wall of 1 by 1 at x = 60, z = 30 that faces the axis, a tile of 0.2 by 0.2 at the origin: all so small and far
 * that a bound can hardly differ from the inverse square with its cosines.
 */
class ReflectedFluxTest {
    private static final Beam BEAM = Beam.of(TestParts.pupilAt(150, Ring.disc(1)));

    /** From the wall's middle 120 up and 60 across to the pupil, 30 down and 60 across to the tile. */
    private static final double ON_WALL = Math.PI * 120 * 60 / (18000.0 * 18000);

    private static final double SHARE_OF_TILE = 0.04 * 30 * 60 / (4500.0 * 4500);

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static SceneBuilder parts(Reflection reflection) {
        return new SceneBuilder()
                .sheet("tile", Finish.ABSORBER, "tile/back", Finish.ABSORBER, TestParts.NOWHERE)
                .sheet("wall", new Finish("wall", reflection), "wall/back", Finish.ABSORBER, TestParts.NOWHERE)
                .quad("tile", at(-0.1, -0.1, 0), at(0.1, -0.1, 0), at(0.1, 0.1, 0), at(-0.1, 0.1, 0))
                .quad("wall", at(60, -0.5, 29.5), at(60, -0.5, 30.5), at(60, 0.5, 30.5), at(60, 0.5, 29.5));
    }

    private static double bound(Scene scene) {
        return new ReflectedBound(scene, TestParts.tree(scene), Set.of())
                        .of(scene.surface("tile").orElseThrow())
                * scene.referenceIrradiance();
    }

    private static double bound(Reflection reflection) {
        return bound(parts(reflection).build(BEAM));
    }

    /** rho E / pi of radiance, over the tile's share of the wall's sight: per area of the tile, 1 mm2 of wall. */
    @Test
    void whatScattersByTheCosineIsBoundedByTheInverseSquare() {
        double exact = 0.1 / Math.PI * ON_WALL * SHARE_OF_TILE / 0.04;
        assertThat(bound(Reflection.of(0.1, 0))).isBetween(exact, 1.3 * exact);
    }

    /** A lobe of one value everywhere, 0.02 / (1 + 1) = 0.01 per sr, scatters like a cosine of pi times as much. */
    @Test
    void aLobeWithoutAPeakIsBoundedLikeACosine() {
        Reflection lobe = new Reflection(0, List.of(), List.of(), List.of(new RollOff(0.02, 1, 0)));
        double exact = 0.01 * ON_WALL * SHARE_OF_TILE / 0.04;
        assertThat(bound(lobe)).isBetween(exact, 1.3 * exact);
        assertThat(bound(lobe)).isCloseTo(bound(Reflection.of(0.01 * Math.PI, 0)), within(1e-3 * exact));
        // Both add up.
        Reflection both = Reflection.of(0.1, 0).and(lobe);
        assertThat(bound(both)).isCloseTo(bound(lobe) + bound(Reflection.of(0.1, 0)), within(1e-9 * exact));
    }

    /** What a mirror of 1 mm2 gets, all of it on the tile; the brightest that a mirror shows is its reflectance of a full sky. */
    @Test
    void aMirrorMaySendAllThatItGets() {
        double all = 0.5 * ON_WALL / 0.04;
        assertThat(bound(Reflection.of(0, 0.5))).isBetween(all, 1.2 * all);
        // Nothing is reflected below 40 degrees; light arrives at 63.4 from the normal: a table that is 0.1 there and
        // rises.
        Reflection table = new Reflection(
                0,
                List.of(new AngleTable(List.of(0.0, 50.0, 70.0, 90.0), List.of(0.0, 0.1, 0.1, 1.0))),
                List.of(),
                List.of());
        double some = 0.1 * ON_WALL / 0.04;
        assertThat(bound(table)).isBetween(some, 1.2 * some);
    }

    private static double close(Reflection reflection) {
        return bound(new SceneBuilder()
                .sheet("tile", Finish.ABSORBER, "tile/back", Finish.ABSORBER, TestParts.NOWHERE)
                .sheet("wall", new Finish("wall", reflection), "wall/back", Finish.ABSORBER, TestParts.NOWHERE)
                .quad("tile", at(0.99, -0.01, 0), at(1, -0.01, 0), at(1, 0.01, 0), at(0.99, 0.01, 0))
                .quad("wall", at(1, -30, 0), at(1, -30, 60), at(1, 30, 60), at(1, 30, 0))
                .build(Beam.of(TestParts.pupilAt(150, Ring.disc(20)))));
    }

    /** A wall that touches the tile is as bright as it is lit; a peaked lobe never sends more than all of a full sky. */
    @Test
    void aLobeCloseByIsNoBrighterThanWhatItReflects() {
        Reflection even = new Reflection(0, List.of(), List.of(), List.of(new RollOff(0.02, 1, 0)));
        double diffuse = close(Reflection.of(0.01 * Math.PI, 0));
        assertThat(close(even)).isCloseTo(diffuse, within(1e-3 * diffuse));
        Reflection peaked = new Reflection(0, List.of(), List.of(), List.of(new RollOff(1e-4, 1e-6, 2.6)));
        assertThat(close(peaked)).isCloseTo(Math.PI * peaked.greatestLobeReflectance(), within(1e-6));
    }

    /** A mirror close by: however much of it there is, it is no brighter than its reflectance times the light of a full sky. */
    @Test
    void aMirrorIsNoBrighterThanAFullSky() {
        Scene scene = new SceneBuilder()
                .sheet("tile", Finish.ABSORBER, "tile/back", Finish.ABSORBER, TestParts.NOWHERE)
                .sheet("wall", new Finish("wall", 0, 0.5), "wall/back", Finish.ABSORBER, TestParts.NOWHERE)
                .quad("tile", at(-1e-3, -1e-3, 0), at(1e-3, -1e-3, 0), at(1e-3, 1e-3, 0), at(-1e-3, 1e-3, 0))
                .quad("wall", at(60, -900, 1), at(60, -900, 99), at(60, 900, 99), at(60, 900, 1))
                .build(BEAM);
        assertThat(bound(scene)).isCloseTo(0.5 * Math.PI, within(1e-6));
        double plain = new ReflectedBound(scene, TestParts.tree(scene), Set.of())
                .of(scene.surface("tile").orElseThrow(), 1e9);
        assertThat(plain * scene.referenceIrradiance()).isCloseTo(0.5 * Math.PI, within(1e-6));
    }

    /**
     * A screen hides the lower half of the wall from the tile: at x = 30 its upper end is at half the height. Pieces along the limit
     * are not proved, and count whole.
     */
    @Test
    void whatIsProvedUnseenSendsNothing() {
        double open = bound(Reflection.of(0.1, 0));
        double hidden = 0.5;
        double top = (29.5 + hidden) / 2;
        Scene scene = parts(Reflection.of(0.1, 0))
                .sheet("screen", Finish.ABSORBER, "screen/back", Finish.ABSORBER, TestParts.NOWHERE)
                .quad("screen", at(30, -9, 0), at(30, -9, top), at(30, 9, top), at(30, 9, 0))
                .build(BEAM);
        assertThat(bound(scene)).isBetween((1 - hidden) * open * 0.9, (1 - hidden) * open * 1.45);
        Scene all = parts(Reflection.of(0.1, 0))
                .sheet("screen", Finish.ABSORBER, "screen/back", Finish.ABSORBER, TestParts.NOWHERE)
                .quad("screen", at(30, -9, 0), at(30, -9, 16), at(30, 9, 16), at(30, 9, 0))
                .build(BEAM);
        assertThat(bound(all)).isZero();
        NoReflection none = none(all);
        assertThat(none.isUnseen(all.surface("wall").orElseThrow())).isTrue();
        assertThat(none.isUnseen(all.surface("screen").orElseThrow())).isFalse();
    }

    private static NoReflection none(Scene scene) {
        return new NoReflection(
                scene, TestParts.tree(scene), scene.surface("tile").orElseThrow(), () -> false);
    }

    private static SpaceTriangle triangle(Scene scene, int f, boolean back) {
        Vector3D normal = back ? scene.normal(f).negate() : scene.normal(f);
        return new SpaceTriangle(scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2), normal);
    }

    /** Single pieces: seen and lit, hidden from the tile, and in the dark under a block, from the front and from the back of a sheet. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aPieceIsProvedIfItIsDarkOrUnseen(boolean turned) {
        Vector3D[] base = {at(80, -1, 0), at(82, -1, 0), at(82, 1, 0), at(80, 1, 0)};
        SceneBuilder builder = parts(Reflection.of(0.1, 0))
                .sheet("base", Finish.ABSORBER, "base/back", Finish.ABSORBER, TestParts.NOWHERE);
        if (turned) {
            builder.quad("base", base[3], base[2], base[1], base[0]);
        } else {
            builder.quad("base", base[0], base[1], base[2], base[3]);
        }
        Scene plain = builder.build(BEAM);
        int wall = plain.surface("wall").orElseThrow().firstFacet();
        int f = plain.surface("base").orElseThrow().firstFacet();
        assertThat(none(plain).isProved(triangle(plain, wall, false), plain.plane(wall)))
                .isFalse();
        assertThat(none(plain).isProved(triangle(plain, wall, true), plain.plane(wall)))
                .isTrue();
        // The upper side of the base sees the pupil; it lies level with the tile and sees nothing of it.
        assertThat(none(plain).isProved(triangle(plain, f, turned), plain.plane(f)))
                .isTrue();
        DarknessProof dark = new DarknessProof(plain, TestParts.tree(plain));
        assertThat(dark.of(plain.surface(turned ? "base/back" : "base").orElseThrow()))
                .isInstanceOf(Darkness.Lit.class);
    }
}
