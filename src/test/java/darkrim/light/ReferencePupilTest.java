package darkrim.light;

import static darkrim.reference.ReferenceCase.vector;

import darkrim.layout.Requirement.LightClass;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** Irradiance under an open pupil (family B). For the false-alarm rate see {@link Validation}: 6.3e-5 a number. */
@ExtendWith(Validation.class)
class ReferencePupilTest {
    /** The exact irradiance departs from the fourth power of the cosine by 1.5e-4 and more: this tells them apart. */
    private static final double FINE = 2e-5;

    static Stream<ReferenceScalar> pupils() {
        return ReferenceScalar.family("B");
    }

    static Stream<ReferenceScalar> dies() {
        return pupils().filter(each -> each.from().kind().equals("Emean"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("pupils")
    void tracedBackFromTheReceiver(ReferenceScalar scalar) {
        Scene scene = scene(scalar);
        Receiver receiver = stage(scalar).receiver(scene, "receiver", scalar, 0);
        boolean ratio = scalar.from().kind().equals("ratio");
        Estimate relative = ReferenceSampling.light(
                        scene, receiver, LightClass.DIRECT, ratio ? FINE : ReferenceSampling.AIM, Tally::irradiance)
                .irradiance();
        Estimate got = relative.times(ratio ? 1 / cosineToTheFourth(scalar) : watt(scalar, scene));
        Validation.requireSampled(scalar, "traced back", got.mean(), got.standardError());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("dies")
    void followedFromThePupil(ReferenceScalar scalar) {
        Scene scene = scene(scalar);
        Estimate got = ReferenceSampling.forward(scene, ReferenceStage.surface(scene, "receiver"), 0)
                .times(watt(scalar, scene));
        Validation.requireSampled(scalar, "light followed from the pupil", got.mean(), got.standardError());
    }

    private static ReferenceStage stage(ReferenceScalar scalar) {
        return new ReferenceStage(scalar, ReferenceMove.NONE).with("receiver", Finish.ABSORBER);
    }

    private static Scene scene(ReferenceScalar scalar) {
        JsonNode emitter = scalar.from().geometry().get("emitter");
        return stage(scalar).under(ReferenceBeams.pupil(emitter, ReferenceMove.NONE));
    }

    private static double watt(ReferenceScalar scalar, Scene scene) {
        return scalar.from().geometry().get("L").asDouble() * scene.referenceIrradiance();
    }

    private static double cosineToTheFourth(ReferenceScalar scalar) {
        double height =
                vector(scalar.from().geometry().get("emitter").get("center")).getZ();
        double aside = scalar.from().receiverPoints().get(scalar.index()).norm();
        return Math.pow(height / Math.hypot(height, aside), 4);
    }
}
