package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class LeastShareTest {
    /** A face of 4 x 4 mm behind a knife edge at x = 2, 50 mm up, under a disc of radius 20 at 200 mm. */
    private static final Scene KNIFE = new TestParts()
            .sheet("knife", 2, 90, -90, 90, 50)
            .sheet("face", -3, 1, -2, 2, 0)
            .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));

    /** The worst point is at x = 1: the edge is seen at 1 + (2 - 1) * 4 = 5; beyond lies a circular segment. */
    private static double knife() {
        double q = 5 / 20.0;
        return 1 - (Math.acos(q) - q * Math.sqrt(1 - q * q)) / Math.PI;
    }

    private static LeastShare.Bracket against(Scene scene, String surface, double limit) {
        return new LeastShare(scene, TestParts.tree(scene))
                .against(scene.surface(surface).orElseThrow(), limit, () -> false);
    }

    @Test
    void aLimitAMillionthBelowOrAboveTheLeastShareIsDecided() {
        LeastShare.Bracket below = against(KNIFE, "face", knife() - 2e-6);
        assertThat(below.atLeast()).isBetween(knife() - 2e-6, knife());
        LeastShare.Bracket above = against(KNIFE, "face", knife() + 1e-6);
        assertThat(above.atMost()).isBetween(knife() - 1e-8, knife() + 1e-6);
        assertThat(above.point().getX()).isCloseTo(1, within(1e-5));
    }

    @Test
    void atTheFootOfAWallHalfThePupilIsSeenAndThatIsProved() {
        // The wall stands on the side x = 0 of the floor and hides all of the pupil beyond that, close to it.
        Scene scene = new TestParts()
                .block("wall", 0, 3, -50, 50, 0, 30)
                .sheet("floor", -4, 0, -2, 2, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        LeastShare.Bracket found = against(scene, "floor", 0.499);
        assertThat(found.atLeast()).isBetween(0.499, 0.5);
        assertThat(found.atMost()).isBetween(0.5 - 1e-7, 0.51);
    }

    /** As above, the wall shorter than the floor is long: its ends and its top touch the plane of the side as well. */
    private static Scene shortWall(double from, double gap) {
        return new TestParts()
                .block("wall", gap, 0.5 + gap, -1.5, 1.5, from, 3)
                .sheet("floor", -10, 0, -5, 5, 0)
                .build(Beam.of(TestParts.pupilAt(100, Ring.disc(20))));
    }

    @Test
    void atTheFootOfAShortWallTheShareIsProvedAsWell() {
        // Flush with the side x = 0, whether it stands on the level of the floor or reaches below it: half the pupil,
        // in the limit.
        for (double from : new double[] {-1, 0}) {
            LeastShare.Bracket found = against(shortWall(from, 0), "floor", 0.3);
            assertThat(found.atLeast()).isBetween(0.498, 0.5);
            assertThat(found.atMost()).isBetween(0.5 - 1e-7, 0.501);
        }
    }

    @Test
    void aLimitThatHoldsWithRoomToSpareStillGivesTheLeastShareToAThousandth() {
        LeastShare.Bracket found = against(shortWall(-1, 0.01), "floor", 0.1);
        assertThat(found.atMost() - found.atLeast()).isBetween(0.0, 0.001);
        LeastShare.Bracket knife = against(KNIFE, "face", 0.1);
        assertThat(knife.atLeast()).isBetween(knife() - 1e-3, knife());
        assertThat(knife.atMost()).isBetween(knife() - 1e-8, knife() + 1e-3);
    }

    @Test
    void theHoleOfARingIsNoPartOfThePupil() {
        // The knife's image covers u > 5 of a ring from 6 to 20: two segments, of the disc and of the hole.
        Scene scene = new TestParts()
                .sheet("knife", 2, 90, -90, 90, 50)
                .sheet("face", -3, 1, -2, 2, 0)
                .build(Beam.of(TestParts.pupilAt(200, new Ring(20, 6))));
        double hidden = segment(20, 5) - segment(6, 5);
        double expected = 1 - hidden / (Math.PI * (400 - 36));
        LeastShare.Bracket found = new LeastShare(scene, TestParts.tree(scene))
                .of(scene.surface("face").orElseThrow(), 1e-5);
        assertThat(found.atLeast()).isBetween(expected - 1e-5, expected);
        assertThat(found.atMost()).isCloseTo(expected, within(1e-5));
    }

    /** Area of a circle's segment beyond a chord: r^2 acos(h/r) - h sqrt(r^2 - h^2). */
    private static double segment(double r, double h) {
        return r * r * Math.acos(h / r) - h * Math.sqrt(r * r - h * h);
    }

    @Test
    void whatIsStoppedProvesNothingButStaysTrue() {
        LeastShare.Bracket found = new LeastShare(KNIFE, TestParts.tree(KNIFE))
                .against(KNIFE.surface("face").orElseThrow(), 0.5, () -> true);
        assertThat(found.atLeast()).isZero();
        assertThat(found.atMost()).isGreaterThanOrEqualTo(knife() - 1e-8);
    }

    /**
     * Points by chance never see less than is proved, and the point that is named sees what is said: exactly and, as a second opinion, by rays.
     * Each of the 200 scenes is asked about a limit by chance. Rays: 1,000 a surface, bound of Hoeffding for 1e-12 a comparison.
     */
    @Tag("chance")
    @Test
    void noPointOfARandomSceneSeesLessThanIsProved() {
        int proved = 0;
        for (long seed = 1; seed <= 200; seed++) {
            Scene scene = RandomScenes.scene(seed);
            FacetTree tree = TestParts.tree(scene);
            LeastShare least = new LeastShare(scene, tree, 400);
            VisiblePupil visible = new VisiblePupil(scene, tree);
            SplittableRandom random = new SplittableRandom(seed);
            for (Surface surface : scene.surfaces()) {
                if (!surface.name().startsWith("face") && random.nextInt(10) > 0) {
                    continue;
                }
                LeastShare.Bracket found = least.against(surface, random.nextDouble(), () -> false);
                String what = "seed " + seed + ", " + surface.name();
                assertThat(found.atLeast()).as(what).isLessThanOrEqualTo(found.atMost());
                Vector3D up = normal(scene, surface, surface.firstFacet());
                if (new FaceMerge(scene, surface, Tolerance.of(scene.bound(), 1e-6))
                                .pieces()
                                .size()
                        == 1) {
                    assertThat(visible.from(found.point(), up).areaFraction())
                            .as(what)
                            .isCloseTo(found.atMost(), within(1e-9));
                }
                if (found.atLeast() > 0) {
                    proved++;
                    for (int i = 0; i < 20; i++) {
                        int f = surface.firstFacet() + random.nextInt(surface.facetCount());
                        Vector3D point = TestParts.point(scene, f, random);
                        double seen =
                                visible.from(point, normal(scene, surface, f)).areaFraction();
                        assertThat(seen).as(what).isGreaterThanOrEqualTo(found.atLeast() - 1e-9);
                    }
                    int rays = 1000;
                    double share = RandomScenes.clearRays(scene, tree, surface, rays, random) / (double) rays;
                    double error = Math.sqrt(Math.log(1e12) / (2 * rays));
                    assertThat(share + error).as(what).isGreaterThanOrEqualTo(found.atLeast());
                }
            }
        }
        assertThat(proved).isGreaterThan(60);
    }

    private static Vector3D normal(Scene scene, Surface surface, int f) {
        return surface.back() ? scene.normal(f).negate() : scene.normal(f);
    }
}
