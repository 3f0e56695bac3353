package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Scenes made to mislead a proof: whatever it says, no ray and no closed form may contradict it. */
class AdversarialProofTest {
    private static final Pupil SQUARE = TestParts.pupilAt(128, Polygon.rectangle(32, 32));

    /** The corner of a square pupil at x = -16, the edge at x = 0, h = 64 and the face at x = 16 lie on one line, in exact numbers. */
    @Test
    void anEdgeAlignedToTheLastBitIsNeverProvedWhenTheFaceReachesOneBitIntoTheLight() {
        for (int bits = -3; bits <= 3; bits++) {
            double start = 16 + bits * Math.ulp(16.0);
            Scene scene = new TestParts()
                    .sheet("knife", 0, 90, -90, 90, 64)
                    .sheet("face", start, start + 4, -2, 2, 0)
                    .build(Beam.of(SQUARE));
            Darkness found = new DarknessProof(scene, TestParts.tree(scene), new ProofSettings(0.002, 2000, 1e-6))
                    .of(scene.surface("face").orElseThrow());
            if (bits < 0) {
                assertThat(found).as("%d bits", bits).isNotInstanceOf(Darkness.Dark.class);
            }
            if (found instanceof Darkness.Lit lit) {
                assertThat(lit.witness().to().getX()).isLessThan(16);
            }
        }
    }

    /** Two sheets at different heights whose edges line up with a corner of the pupil leave one exact line open, or a sliver. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-13, 1e-9, 1e-7, 2e-6, 1e-3})
    void twoEdgesInLineAreProvedOnlyIfTheyOverlap(double opening) {
        // From the point (4, 0, 0) through x = 0 at 64 to x = -4 at 128.
        Scene scene = new TestParts()
                .sheet("low", -90, 2 - opening, -90, 90, 32)
                .sheet("high", opening, 90, -90, 90, 64)
                .sheet("face", 3.999, 4.001, -0.001, 0.001, 0)
                .build(Beam.of(SQUARE));
        Darkness found = new DarknessProof(scene, TestParts.tree(scene), new ProofSettings(1e-5, 3000, 1e-6))
                .of(scene.surface("face").orElseThrow());
        // Lines through x in (.., 2 - opening) at 32 are blocked, and through x > opening at 64; those that bend past
        // both exist for any opening.
        assertThat(found).isNotInstanceOf(Darkness.Dark.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.001e-6, 1.1e-6, 1.5e-6, 3e-6, 1e-5})
    void aSlitJustWiderThanTheGapWidthIsNotProved(double slit) {
        for (double turn : new double[] {0, 0.3}) {
            double c = Math.cos(turn);
            double s = Math.sin(turn);
            Scene scene = new TestParts()
                    .placed(p -> Vector3D.of(c * p.getX() - s * p.getY(), s * p.getX() + c * p.getY(), p.getZ()))
                    .sheet("left", -60, 0, -50, 50, 10)
                    .sheet("right", slit, 60, -51, 49, 10)
                    .sheet("face", -2, 2, -0.1, 0.1, 0)
                    .build(Beam.of(TestParts.pupilAt(128, Ring.disc(16))));
            Darkness found = new DarknessProof(scene, TestParts.tree(scene), new ProofSettings(1e-3, 2000, 1e-6))
                    .of(scene.surface("face").orElseThrow());
            assertThat(found).isNotInstanceOf(Darkness.Dark.class);
        }
    }

    @Test
    void coplanarOverlapsCoverAndTheirSeamsAreClosed() {
        Scene scene = new TestParts()
                .sheet("a", -60, 1, -60, 60, 10)
                .sheet("b", -1, 60, -60, 60, 10)
                .sheet("c", -5, 5, -70, 70, 10)
                .sheet("face", -4, 4, -4, 4, 0)
                .build(Beam.of(SQUARE));
        assertThat(TestParts.prove(scene, "face")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void aSheetLaidTwiceIsOneSheet() {
        Scene scene = new TestParts()
                .sheet("a", -60, 60, -60, 60, 10)
                .sheet("twin", -60, 60, -60, 60, 10)
                .sheet("face", -4, 4, -4, 4, 0)
                .build(Beam.of(SQUARE));
        assertThat(TestParts.prove(scene, "face")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void aCoplanarSheetBesideAFaceDoesNotHideIt() {
        Scene scene = new TestParts()
                .sheet("face", -4, 4, -4, 4, 0)
                .sheet("over", -3, 5, -3, 5, 0)
                .build(Beam.of(SQUARE));
        assertThat(TestParts.prove(scene, "face")).isInstanceOf(Darkness.Lit.class);
    }

    /** A box without its lid, the lid 1e-3 mm above: an open mesh must not count as a solid, nor the slit as closed. */
    @Test
    void aLidJustAboveAnOpenBoxLeavesASlit() {
        TestParts parts = new TestParts();
        for (int side = 0; side < 4; side++) {
            double a = side * Math.PI / 2;
            Vector3D x = Vector3D.of(Math.rint(Math.cos(a)), Math.rint(Math.sin(a)), 0);
            Vector3D y = Vector3D.of(-x.getY(), x.getX(), 0);
            Vector3D up = Vector3D.of(0, 0, 5);
            Vector3D from = x.multiply(10).subtract(y.multiply(10));
            Vector3D to = x.multiply(10).add(y.multiply(10));
            parts.sheet("side[" + side + "]", from, to, to.add(up), from.add(up));
        }
        parts.sheet("lid", -10, 10, -10, 10, 5.001).sheet("face", -2, 2, -2, 2, 4.9);
        Pupil low = new Pupil(Ring.disc(4), darkrim.geom.Frame.about(Vector3D.of(90, 0, 5), Vector3D.Unit.MINUS_X));
        assertThat(TestParts.prove(parts.build(Beam.of(low)), "face")).isNotInstanceOf(Darkness.Dark.class);
    }

    /** Scenes whose sizes are all whole numbers of a coarse grid: every edge lines up with many others. */
    @Test
    void noRayContradictsAProofWhereEverythingLinesUp() {
        int dark = 0;
        for (int seed = 1; seed <= 120; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            TestParts parts = new TestParts();
            for (int i = 0; i < 6; i++) {
                double x = 2 * random.nextInt(-4, 4);
                double y = 2 * random.nextInt(-4, 4);
                double z = 2 * random.nextInt(1, 6);
                double w = 2 * random.nextInt(1, 8);
                if (random.nextBoolean()) {
                    parts.block("part[" + i + "]", x, x + w, y, y + w, z, z + 2);
                } else {
                    parts.sheet("part[" + i + "]", x - w, x + w, y - w, y + w, z);
                }
            }
            parts.block("face", -2, 2, -2, 2, -2, 0);
            Scene scene = parts.build(Beam.of(TestParts.pupilAt(64, Polygon.rectangle(8, 8))));
            FacetTree tree = TestParts.tree(scene);
            DarknessProof proof = new DarknessProof(scene, tree, new ProofSettings(0.01, 1000, 1e-6));
            for (Surface surface : scene.surfaces()) {
                if (proof.of(surface) instanceof Darkness.Dark) {
                    dark++;
                    int clear = RandomScenes.clearRays(scene, tree, surface, 1500, random);
                    assertThat(clear).as("seed %d, %s", seed, surface.name()).isZero();
                }
            }
        }
        assertThat(dark).isGreaterThan(1500);
    }
}
