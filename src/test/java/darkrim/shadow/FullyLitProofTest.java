package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class FullyLitProofTest {
    private static FullyLitProof.Finding find(Scene scene, String surface) {
        return new FullyLitProof(scene, TestParts.tree(scene), new ProofSettings(1e-3, 3000, 1e-6))
                .of(scene.surface(surface).orElseThrow());
    }

    @Test
    void aFaceOneMicrometreInsideTheFullyLitZoneIsProvedAndOneMicrometreOutsideIsNot() {
        // Opening edge at x = 10, h = 50: the zone ends at (a H - r h) / (H - h), reference family I.
        double limit = (10 * 200 - 20 * 50) / 150.0;
        for (double step : new double[] {-0.001, 0.001}) {
            Scene scene = new TestParts()
                    .sheet("plate", 10, 90, -90, 90, 50)
                    .sheet("face", limit + step - 3, limit + step, -2, 2, 0)
                    .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
            FullyLitProof.Finding found = find(scene, "face");
            assertThat(found.proved()).isEqualTo(step < 0);
            if (step > 0) {
                assertThat(found.blocked()).isPresent();
                assertThat(found.blocked().orElseThrow().to().getX()).isGreaterThan(limit);
            }
        }
    }

    @Test
    void theFieldLimitMustAdmitEveryLine() {
        for (double half : new double[] {4.999, 5.001}) {
            // The face reaches to 3 and the pupil to 20 on the other side: at -20 below the face lines cross at 3 + 23
            // / 10 = 5.3.
            FieldLimit limit = new FieldLimit(
                    Polygon.rectangle(2 * (half + 0.3), 60), Frame.about(Vector3D.of(0, 0, -20), Vector3D.Unit.PLUS_Z));
            Scene scene = new TestParts()
                    .sheet("face", -3, 3, -2, 2, 0)
                    .build(new Beam(
                            TestParts.pupilAt(200, Polygon.rectangle(40, 40)),
                            Optional.of(limit),
                            OptionalDouble.empty()));
            assertThat(find(scene, "face").proved()).isEqualTo(half > 5);
        }
    }

    @Test
    void aFaceThatIsTurnedSoThatItHidesPartOfThePupilIsNotFullyLit() {
        Scene scene =
                new TestParts().block("die", -3, 3, -3, 3, -1, 0).build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        assertThat(find(scene, "die/+z").proved()).isTrue();
        assertThat(find(scene, "die/+x").proved()).isFalse();
        assertThat(find(scene, "die/-z").proved()).isFalse();
    }

    @Tag("chance")
    @Test
    void noBlockedRayContradictsAProofOfFullLight() {
        int proved = 0;
        for (long seed = 1; seed <= 150; seed++) {
            Scene scene = RandomScenes.scene(seed);
            FacetTree tree = TestParts.tree(scene);
            FullyLitProof proof = new FullyLitProof(scene, tree, new ProofSettings(0.02, 500, 1e-6));
            for (Surface surface : scene.surfaces()) {
                if (proof.of(surface).proved()) {
                    proved++;
                    int rays = 2000;
                    assertThat(RandomScenes.clearRays(scene, tree, surface, rays, new SplittableRandom(seed)))
                            .as("seed %d, %s", seed, surface.name())
                            .isEqualTo(rays);
                }
            }
        }
        assertThat(proved).isGreaterThan(50);
    }

    @Test
    void theLeastShareBehindAKnifeEdgeIsThatOfTheWorstPoint() {
        Scene scene = new TestParts()
                .sheet("knife", 2, 90, -90, 90, 50)
                .sheet("face", -3, 1, -2, 2, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        LeastShare.Bracket bracket = new LeastShare(scene, TestParts.tree(scene))
                .of(scene.surface("face").orElseThrow(), 2e-3);
        // Worst at x = 1: the edge is seen at 1 + (2 - 1) * 4 = 5; the pupil beyond it is hidden. Circular segment.
        double q = 5 / 20.0;
        double expected = 1 - (Math.acos(q) - q * Math.sqrt(1 - q * q)) / Math.PI;
        assertThat(bracket.atLeast()).isLessThanOrEqualTo(expected);
        assertThat(bracket.atMost()).isGreaterThanOrEqualTo(expected - 1e-8);
        assertThat(bracket.atMost() - bracket.atLeast()).isLessThanOrEqualTo(2e-3);
        assertThat(bracket.point().getX()).isCloseTo(1, within(1e-6));
    }

    @Test
    void theLeastShareInAnOpeningIsAtItsWorstCorner() {
        Scene scene = new TestParts()
                .plate(
                        "lid",
                        new double[] {-90, 90, -90, 90},
                        List.of(new double[] {-10, 10, -10, 10}),
                        new double[][] {{21, 0}, {20, 0}})
                .sheet("face", -9, 8.8, -8, 9.2, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(15))));
        LeastShare.Bracket bracket = new LeastShare(scene, TestParts.tree(scene))
                .of(scene.surface("face").orElseThrow(), 0.02);
        double exact = new VisiblePupil(scene, TestParts.tree(scene))
                .from(Vector3D.of(-9, 9.2, 0), Vector3D.Unit.PLUS_Z)
                .areaFraction();
        assertThat(bracket.atLeast()).isLessThanOrEqualTo(exact);
        assertThat(bracket.atMost()).isCloseTo(exact, within(1e-6));
        assertThat(bracket.atMost() - bracket.atLeast()).isLessThanOrEqualTo(0.02);
    }
}
