package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DarknessProofTest {
    private static final Pupil DISC = TestParts.pupilAt(200, Ring.disc(20));

    /** The edge of the shadow of a knife edge at height h and x = 0: rays over the pupil's far side land at r h / (H - h). */
    private static double shadowEdge(double h) {
        return 20 * h / (200 - h);
    }

    @ParameterizedTest
    @CsvSource({"50, 0", "3, 0", "150, 0", "50, 0.3", "50, 33.3", "3, 12.5"})
    void aFaceOneMicrometreInsideTheShadowIsDarkAndOneMicrometreOutsideIsLit(double h, double turnDegrees) {
        QuaternionRotation turn = QuaternionRotation.fromAxisAngle(Vector3D.Unit.PLUS_Z, Math.toRadians(turnDegrees));
        for (double step : new double[] {-0.001, 0.001}) {
            // A half plane at height h covers x > 0; light comes from the side -x and goes toward +x under it.
            double start = shadowEdge(h) - step;
            Scene scene = new TestParts()
                    .placed(turn::apply)
                    .sheet("knife", 0, 90, -90, 90, h)
                    .sheet("face", start, start + 5, -10, 10, 0)
                    .build(Beam.of(DISC));
            Darkness found = TestParts.prove(scene, "face");
            assertThat(found)
                    .as("step %s: %s", step, found)
                    .isInstanceOf(step < 0 ? Darkness.Dark.class : Darkness.Lit.class);
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "0, 17", "4, 0", "4, 17"})
    void theLandOfAKnifeEdgeSetsTheShadowWhereNoFacetLies(double tilt, double turn) {
        // Land from 3.05 to 3.00, bevel below to 2.2: light that goes outward passes the lower edge of the land at z =
        // 3.
        double edge = 10;
        double limit = edge + (edge + 20) * 3 / (200 - 3);
        QuaternionRotation placing = QuaternionRotation.fromAxisAngle(Vector3D.Unit.PLUS_Z, Math.toRadians(turn));
        for (double step : new double[] {-0.001, 0.001}) {
            double start = limit - step;
            Scene scene = new TestParts()
                    .placed(placing::apply)
                    .plate(
                            "lid",
                            new double[] {-60, 60, -60, 60},
                            List.of(new double[] {-10, 10, -10, 10}),
                            new double[][] {{3.05, 0}, {3.0, 0}, {2.2, 0.6 + tilt / 10}})
                    .sheet("face", start, start + 5, -9, 9, 0)
                    .build(Beam.of(DISC));
            Darkness found = TestParts.prove(scene, "face");
            assertThat(found)
                    .as("step %s: %s", step, found)
                    .isInstanceOf(step < 0 ? Darkness.Dark.class : Darkness.Lit.class);
        }
    }

    @Test
    void severalSheetsThatOnlyTogetherBlockAreProved() {
        // Three strips at different heights overlap by 0.1 mm as seen from anywhere on the pupil.
        Scene scene = new TestParts()
                .sheet("a", -90, -2, -90, 90, 20)
                .sheet("b", -5, 5, -90, 90, 10)
                .sheet("c", 2, 90, -90, 90, 30)
                .sheet("face", -1, 1, -1, 1, 0)
                .build(Beam.of(DISC));
        assertThat(TestParts.prove(scene, "face")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void twoPlatesThatTouchWithoutSharingCornersAreClosed() {
        Scene scene = new TestParts()
                .block("left", -60, 0, -50, 50, 10, 11)
                .block("right", 0, 60, -51, 49, 10, 11.5)
                .sheet("face", -5, 5, -5, 5, 0)
                .build(Beam.of(DISC));
        assertThat(TestParts.prove(scene, "face")).isInstanceOf(Darkness.Dark.class);
    }

    @ParameterizedTest
    @CsvSource({"0", "0.4", "11.7"})
    void aLidOnAWallIsClosedAlongTheJoint(double turnDegrees) {
        // The source stands to the side at the height of the joint.
        Pupil side = new Pupil(Ring.disc(4), Frame.about(Vector3D.of(80, 0, 3), Vector3D.Unit.MINUS_X));
        QuaternionRotation turn = QuaternionRotation.fromAxisAngle(Vector3D.Unit.PLUS_Z, Math.toRadians(turnDegrees));
        Scene scene = new TestParts()
                .placed(turn::apply)
                .block("lid", -40, 11, -40, 40, 3, 4)
                .block("wall", 10, 11, -41, 41, -6, 3)
                .block("post", -1, 1, -1, 1, 2, 2.9)
                .build(Beam.of(side));
        assertThat(TestParts.prove(scene, "post/+x")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void aWallBesideAFaceAndASheetStandingOnItKeepTheirFootDark() {
        Pupil low = new Pupil(Ring.disc(2), Frame.about(Vector3D.of(60, 0, 8), Vector3D.of(-1, 0, 0)));
        Scene scene = new TestParts()
                .sheet("floor", -5, 0, -5, 5, 0)
                .sheet(
                        "screen",
                        Vector3D.of(0, -50, 0),
                        Vector3D.of(0, 50, 0),
                        Vector3D.of(0, 50, 30),
                        Vector3D.of(0, -50, 30))
                .build(Beam.of(low));
        assertThat(TestParts.prove(scene, "floor")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void aSheetAcrossTheMiddleOfAFaceLeavesOneSideLitAndItsFootIsNoObstacleToTheProofOfTheOther() {
        Pupil low = new Pupil(Ring.disc(2), Frame.about(Vector3D.of(60, 0, 8), Vector3D.of(-1, 0, 0)));
        TestParts parts = new TestParts()
                .sheet("floor", -5, 5, -5, 5, 0)
                .sheet(
                        "screen",
                        Vector3D.of(0.3, -50, 0),
                        Vector3D.of(0.3, 50, 0),
                        Vector3D.of(0.3, 50, 30),
                        Vector3D.of(0.3, -50, 30));
        assertThat(TestParts.prove(parts.build(Beam.of(low)), "floor")).isInstanceOf(Darkness.Lit.class);
        parts.sheet(
                "second",
                Vector3D.of(5, -50, 0),
                Vector3D.of(5, 50, 0),
                Vector3D.of(5, 50, 30),
                Vector3D.of(5, -50, 30));
        assertThat(TestParts.prove(parts.build(Beam.of(low)), "floor")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void aFaceInContactIsDark() {
        Scene scene = new TestParts()
                .block("carrier", -20, 20, -20, 20, -3, -1)
                .block("die", -5, 7, -4, 6, -1, 0)
                .block("bonds", 7, 8, -2, 2, -1, -0.5)
                .build(Beam.of(DISC));
        assertThat(TestParts.prove(scene, "die/-z")).isInstanceOf(Darkness.Dark.class);
        assertThat(TestParts.prove(scene, "bonds/-z")).isInstanceOf(Darkness.Dark.class);
        assertThat(TestParts.prove(scene, "bonds/-x")).isInstanceOf(Darkness.Dark.class);
        assertThat(TestParts.prove(scene, "die/+x")).isInstanceOf(Darkness.Lit.class);
        assertThat(TestParts.prove(scene, "carrier/+z")).isInstanceOf(Darkness.Lit.class);
        assertThat(TestParts.prove(scene, "carrier/-z")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void aCarrierWhollyUnderContactIsDark() {
        Scene scene = new TestParts()
                .block("carrier", -5, 5, -5, 5, -3, -1)
                .block("left", -6, 1, -6, 6, -1, 0)
                .block("right", 1, 6, -7, 5, -1, 0.2)
                .build(Beam.of(DISC));
        assertThat(TestParts.prove(scene, "carrier/+z")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void aSlitWiderThanTheGapWidthIsNotClosed() {
        for (double slit : new double[] {0.4e-6, 1.2e-6, 1e-3}) {
            Scene scene = new TestParts()
                    .block("left", -60, 0, -50, 50, 10, 10.001)
                    .block("right", slit, 60, -51, 49, 10, 10.001)
                    .sheet("face", -5, 5, -5, 5, 0)
                    .build(Beam.of(DISC));
            Darkness found = TestParts.prove(scene, "face");
            if (slit < 1e-6) {
                assertThat(found).isInstanceOf(Darkness.Dark.class);
            } else {
                assertThat(found).isNotInstanceOf(Darkness.Dark.class);
            }
        }
    }

    @Test
    void aRectangularPupilAndAHoleAreHeeded() {
        Pupil square = TestParts.pupilAt(200, Polygon.rectangle(40, 10));
        double limit = 20 * 50 / 150.0;
        for (double step : new double[] {-0.001, 0.001}) {
            Scene scene = new TestParts()
                    .sheet("knife", 0, 90, -90, 90, 50)
                    .sheet("face", limit - step, limit + 5, -10, 10, 0)
                    .build(Beam.of(square));
            assertThat(TestParts.prove(scene, "face"))
                    .isInstanceOf(step < 0 ? Darkness.Dark.class : Darkness.Lit.class);
        }
        // Through an opening at h = 100 of half side 1 a point sees half side 2 of the pupil: all of it in the hole.
        Pupil ring = TestParts.pupilAt(200, new Ring(20, 3));
        Scene scene = new TestParts()
                .plate("lid", new double[] {-60, 60, -60, 60}, List.of(new double[] {-1, 1, -1, 1}), new double[][] {
                    {100, 0}, {99, 0}
                })
                .sheet("face", -0.01, 0.01, -0.01, 0.01, 0)
                .build(Beam.of(ring));
        assertThat(TestParts.prove(scene, "face")).isInstanceOf(Darkness.Dark.class);
    }

    @Test
    void theFieldLimitCutsTheLightToTheMicrometreAboveAndBelowTheFace() {
        // Without parts: lines from the pupil's rim at -20, 200 up, through the limit's edge at 8 land at 8 + 28 z /
        // (200 - z).
        for (double z : new double[] {40, -30}) {
            for (boolean round : new boolean[] {true, false}) {
                double limit = z > 0 ? 8 + 28 * z / (200 - z) : (8 * 200 + 20 * -z) / (200 - z);
                for (double step : new double[] {-0.001, 0.001}) {
                    double start = limit - step;
                    FieldLimit field = new FieldLimit(
                            round ? Ring.disc(8) : Polygon.rectangle(16, 16),
                            Frame.about(Vector3D.of(0, 0, z), Vector3D.Unit.PLUS_Z));
                    Scene scene = new TestParts()
                            .sheet("face", start, start + 3, -1, 1, 0)
                            .build(new Beam(DISC, Optional.of(field), OptionalDouble.empty()));
                    Darkness found = TestParts.prove(scene, "face");
                    assertThat(found)
                            .as("limit at %s, step %s: %s", z, step, found)
                            .isInstanceOf(step < 0 ? Darkness.Dark.class : Darkness.Lit.class);
                }
            }
        }
    }

    @Test
    void threadsGetTheSameAnswer() {
        Scene scene = RandomScenes.scene(4);
        DarknessProof proof = new DarknessProof(scene, TestParts.tree(scene));
        List<Darkness> alone = scene.surfaces().stream().map(proof::of).toList();
        List<Darkness> together =
                scene.surfaces().parallelStream().map(proof::of).toList();
        assertThat(together).isEqualTo(alone);
    }

    /**
     * Two sheets that overlap: past both a line would have to fall by 1 in 10 to one side, from 4.5 mm beyond the axis to 5.5 before it. Neither cuts all
     * lines, so that the pupil or the face must be cut.
     */
    @Test
    void whatMayBeCutNoFurtherOrNoMoreOftenIsLeftOpenInAll() {
        Scene scene = new TestParts()
                .sheet("floor", -1, 1, -2, 2, 0)
                .sheet("left", -90, 0.5, -90, 90, 50)
                .sheet("right", -0.5, 90, -90, 90, 60)
                .build(Beam.of(TestParts.pupilAt(100, Ring.disc(3))));
        Surface floor = scene.surface("floor").orElseThrow();
        assertThat(new DarknessProof(scene, TestParts.tree(scene)).of(floor)).isInstanceOf(Darkness.Dark.class);
        for (ProofSettings few : List.of(new ProofSettings(1000, 1000, 1e-6), new ProofSettings(1e-3, 1, 1e-6))) {
            DarknessProof proof = new DarknessProof(scene, TestParts.tree(scene), few);
            Darkness.Undecided open = (Darkness.Undecided) proof.of(floor);
            assertThat(open.openArea()).isCloseTo(8, within(1e-12));
            assertThat(open.openFraction()).isCloseTo(1, within(1e-12));
            assertThat(proof.moved(proof.faces(floor), "floor", 0).dark()).isFalse();
        }
        // The place where it ended is told: an edge of one of the two, and the line between the middles.
        DarknessProof coarse = new DarknessProof(scene, TestParts.tree(scene), new ProofSettings(1000, 1000, 1e-6));
        DarknessProof.Moved ended = coarse.moved(coarse.faces(floor), "floor", 0);
        assertThat(FacetEdges.of(scene).middle(ended.openEdge()).getZ()).isIn(50.0, 60.0);
        assertThat(ended.open().orElseThrow().to().norm()).isLessThan(1e-9);
        assertThat(ended.open().orElseThrow().from().distance(Vector3D.of(0, 0, 100)))
                .isLessThan(1e-9);
        assertThat(ended.line()).isEmpty();
    }

    /** One face looks past the rim of the pupil, 0.2 mm beyond it, and one lies 0.2 mm behind the pupil: dark as they stand, and moved by 0.1 mm. */
    @ParameterizedTest
    @CsvSource({"0, true", "0.1, true", "0.19, true", "0.21, false", "0.5, false"})
    void aFaceIsReachedOnceItMayMoveBehindTheRimOrBeforeThePupil(double distance, boolean dark) {
        Scene scene = new TestParts()
                .sheet("past", at(10.2, -1, 40), at(10.2, 1, 40), at(10.2, 1, 42), at(10.2, -1, 42))
                .sheet("behind", -1, 1, -1, 1, 100.2)
                .build(Beam.of(TestParts.pupilAt(100, Ring.disc(10))));
        DarknessProof proof = new DarknessProof(scene, TestParts.tree(scene));
        for (String name : List.of("past", "behind")) {
            List<Face> faces = proof.faces(scene.surface(name).orElseThrow());
            assertThat(proof.moved(faces, name, distance).dark()).as(name).isEqualTo(dark);
        }
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }
}
