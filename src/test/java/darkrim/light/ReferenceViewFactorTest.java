package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/**
 * View factors of the literature (family A), found in three ways: a flat target as a pupil, F = E / (pi L); rays over the hemisphere; and
 * light followed from the target to the receiver. For the false-alarm rate see {@link Validation}: 6.3e-5 a number.
 */
@ExtendWith(Validation.class)
class ReferenceViewFactorTest {
    /** Below this, rays over the hemisphere or out of a pupil would take long to reach 0.2 %. */
    private static final double WELL_HIT = 0.15;

    static Stream<ReferenceScalar> flatTargets() {
        return ReferenceScalar.family("A").filter(ReferenceViewFactorTest::hasFlatTarget);
    }

    static Stream<ReferenceScalar> roundAndLargeTargets() {
        return ReferenceScalar.family("A").filter(each -> !hasFlatTarget(each) || each.value() > WELL_HIT);
    }

    static Stream<ReferenceScalar> flatReceivers() {
        return flatTargets().filter(each -> each.from().kind().equals("F_fin") && each.value() > WELL_HIT);
    }

    @Test
    void everyCaseIsRun() {
        assertThat(Stream.concat(flatTargets(), roundAndLargeTargets()))
                .containsAll(ReferenceScalar.family("A").toList());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("flatTargets")
    void aFlatTargetAsThePupil(ReferenceScalar scalar) {
        ReferenceMove move = towardTheTarget(scalar);
        ReferenceStage stage = new ReferenceStage(scalar, move).with("from", Finish.ABSORBER);
        Scene scene = stage.under(ReferenceBeams.pupil(scalar.from().geometry().get("to"), move));
        Receiver receiver = stage.receiver(scene, "from", scalar, 0);
        Estimate factor = ReferenceSampling.light(
                        scene, receiver, LightClass.DIRECT, ReferenceSampling.AIM, Tally::irradiance)
                .irradiance()
                .times(scene.referenceIrradiance() / Math.PI);
        Validation.requireSampled(scalar, "pupil", factor.mean(), factor.standardError());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("roundAndLargeTargets")
    void raysOverTheHemisphere(ReferenceScalar scalar) {
        boolean toItself = scalar.from()
                .geometry()
                .get("from")
                .equals(scalar.from().geometry().get("to"));
        ReferenceStage stage = new ReferenceStage(scalar, ReferenceMove.NONE).with("from", Finish.ABSORBER);
        if (!toItself) {
            stage.with("to", Finish.ABSORBER);
        }
        Scene scene = stage.under(anyBeam());
        Receiver receiver = stage.receiver(scene, "from", scalar, 0);
        Estimate factor =
                ReferenceSampling.viewFactor(scene, receiver, ReferenceStage.surface(scene, toItself ? "from" : "to"));
        Validation.requireSampled(scalar, "rays over the hemisphere", factor.mean(), factor.standardError());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("flatReceivers")
    void lightFollowedFromTheTarget(ReferenceScalar scalar) {
        ReferenceMove move = towardTheTarget(scalar);
        Scene scene = new ReferenceStage(scalar, move)
                .with("from", Finish.ABSORBER)
                .under(ReferenceBeams.pupil(scalar.from().geometry().get("to"), move));
        Estimate factor = ReferenceSampling.forward(scene, ReferenceStage.surface(scene, "from"), 0)
                .times(scene.referenceIrradiance() / Math.PI);
        Validation.requireSampled(scalar, "light followed from the target", factor.mean(), factor.standardError());
    }

    /** The receiver at the origin and +z toward the plane of the target: so the reference irradiance is positive, and it cancels. */
    private static ReferenceMove towardTheTarget(ReferenceScalar scalar) {
        JsonNode geometry = scalar.from().geometry();
        Frame target = ReferenceBeams.middle(geometry.get("to"));
        Frame receiver = ReferenceBeams.middle(geometry.get("from"));
        return new ReferenceMove(Frame.about(receiver.origin(), target.normal().negate()));
    }

    private static boolean hasFlatTarget(ReferenceScalar scalar) {
        String type = scalar.from().geometry().get("to").get("type").asString();
        return type.equals("disk") || type.equals("rect") || type.equals("polygon");
    }

    /** View factors know no beam, a scene must have one. */
    private static Beam anyBeam() {
        return Beam.of(new Pupil(Ring.disc(1), Frame.about(Vector3D.of(0, 0, 100), Vector3D.Unit.MINUS_Z)));
    }
}
