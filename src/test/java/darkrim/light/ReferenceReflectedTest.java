package darkrim.light;

import static darkrim.reference.ReferenceCase.vector;
import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Place;
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

/** Light after one reflection (family D). For the false-alarm rate see {@link Validation}: 6.3e-5 a number. */
@ExtendWith(Validation.class)
class ReferenceReflectedTest {
    /** Points on a plate or wall are moved off it by this, mm; over the 2 mm and more to what they see it changes less than 1e-4. */
    private static final double OFF_THE_WALL = 1e-4;

    /** Points on the sphere, mm: the smallest cap is 0.76 mm deep, twice the share of that is the change, 3e-6. */
    private static final double OFF_THE_SPHERE = 1e-6;

    static Stream<ReferenceScalar> lambertian() {
        return ReferenceScalar.family("D")
                .filter(each -> each.from().geometry().has("reflector")
                        && !each.from().geometry().has("fluxOnReflector"));
    }

    static Stream<ReferenceScalar> plates() {
        return lambertian().filter(each -> each.from().kind().equals("E1mean"));
    }

    static Stream<ReferenceScalar> spheres() {
        return ReferenceScalar.family("D").filter(each -> each.from().geometry().has("fluxOnReflector"));
    }

    static Stream<ReferenceScalar> mirrors() {
        return ReferenceScalar.family("D").filter(each -> each.from().geometry().has("mirror"));
    }

    @Test
    void everyCaseIsRun() {
        assertThat(Stream.of(lambertian(), spheres(), mirrors()).flatMap(each -> each))
                .containsExactlyInAnyOrderElementsOf(ReferenceScalar.family("D").toList());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("lambertian")
    void offALambertianSurface(ReferenceScalar scalar) {
        JsonNode geometry = scalar.from().geometry();
        ReferenceStage stage = stage(scalar);
        Scene scene = stage.under(beam(geometry));
        Estimate got = reflected(scene, stage.receiver(scene, "receiver", scalar, OFF_THE_WALL))
                .times(watt(geometry, scene));
        Validation.requireSampled(scalar, "traced back", got.mean(), got.standardError());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("plates")
    void followedOverALambertianPlate(ReferenceScalar scalar) {
        JsonNode geometry = scalar.from().geometry();
        Scene scene = stage(scalar).under(beam(geometry));
        Estimate got = ReferenceSampling.forward(scene, ReferenceStage.surface(scene, "receiver"), 1)
                .times(watt(geometry, scene));
        Validation.requireSampled(scalar, "light followed from the pupil", got.mean(), got.standardError());
    }

    /**
     * A small pupil in the middle of the sphere lights the cap. The case is moved so that the cap lies about the origin and faces +z. The flux
     * on the cap is its area times its sampled direct irradiance.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("spheres")
    void insideASphere(ReferenceScalar scalar) {
        JsonNode geometry = scalar.from().geometry();
        JsonNode cap = geometry.get("reflector");
        Vector3D axis = vector(cap.get("axis"));
        Vector3D pole =
                vector(cap.get("center")).add(axis.multiply(cap.get("radius").asDouble()));
        ReferenceMove move = new ReferenceMove(Frame.about(pole, axis.negate()));
        ReferenceStage stage = new ReferenceStage(scalar, move)
                .with("reflector", new Finish("grey", geometry.get("rho").asDouble(), 0));
        Frame middle = Frame.about(Vector3D.of(0, 0, cap.get("radius").asDouble()), Vector3D.Unit.MINUS_Z);
        Scene scene = stage.under(Beam.of(new Pupil(Ring.disc(1), middle)));
        Receiver onCap = new Receiver.OnSurface(ReferenceStage.surface(scene, "reflector"));
        Estimate direct = ReferenceSampling.light(scene, onCap, LightClass.DIRECT, 1e-4, Tally::irradiance)
                .irradiance();
        double flux = direct.mean() * ReferenceStage.surface(scene, "reflector").area();
        Estimate got = reflected(scene, stage.receiver(scene, "receiver", scalar, OFF_THE_SPHERE))
                .times(geometry.get("fluxOnReflector").asDouble() / flux);
        double error = Math.hypot(got.standardError(), got.mean() * direct.standardError() / direct.mean());
        Validation.requireSampled(scalar, "traced back", got.mean(), error);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mirrors")
    void offAPlaneMirror(ReferenceScalar scalar) {
        JsonNode geometry = scalar.from().geometry();
        JsonNode mirror = geometry.get("mirror");
        assertThat(mirror.get("plane").asString()).isEqualTo("x");
        ReferenceStage stage = new ReferenceStage(scalar, ReferenceMove.NONE);
        double x = mirror.get("at").asDouble();
        double y0 = mirror.get("y").get(0).asDouble();
        double y1 = mirror.get("y").get(1).asDouble();
        double z0 = mirror.get("z").get(0).asDouble();
        double z1 = mirror.get("z").get(1).asDouble();
        Finish silver = new Finish("silver", 0, mirror.get("rho").asDouble());
        stage.builder()
                .sheet("mirror", silver, "mirror/back", Finish.ABSORBER, Place.IN_CODE)
                .quad(
                        "mirror",
                        Vector3D.of(x, y0, z0),
                        Vector3D.of(x, y0, z1),
                        Vector3D.of(x, y1, z1),
                        Vector3D.of(x, y1, z0));
        Scene scene = stage.under(beam(geometry));
        Estimate got =
                reflected(scene, stage.receiver(scene, "receiver", scalar, 0)).times(watt(geometry, scene));
        Validation.requireSampled(scalar, "image in the mirror", got.mean(), got.standardError());
    }

    private static ReferenceStage stage(ReferenceScalar scalar) {
        double rho = scalar.from().geometry().get("rho").asDouble();
        return new ReferenceStage(scalar, ReferenceMove.NONE)
                .with("reflector", new Finish("grey", rho, 0))
                .with("receiver", Finish.ABSORBER);
    }

    private static Estimate reflected(Scene scene, Receiver receiver) {
        return ReferenceSampling.light(
                        scene, receiver, LightClass.ONCE_REFLECTED, ReferenceSampling.AIM, Tally::irradiance)
                .irradiance();
    }

    private static Beam beam(JsonNode geometry) {
        if (geometry.has("emitter")) {
            return ReferenceBeams.pupil(geometry.get("emitter"), ReferenceMove.NONE);
        }
        if (geometry.has("beam")) {
            return ReferenceBeams.collimated(
                    vector(geometry.get("beam").get("direction")).negate());
        }
        return ReferenceBeams.collimated(pastTheReceiver(geometry));
    }

    /** Straight down on the reflector, or so oblique that a receiver above it throws its shadow beside it. */
    private static Vector3D pastTheReceiver(JsonNode geometry) {
        JsonNode receiver = geometry.get("receiver");
        assertThat(ReferenceBeams.middle(geometry.get("reflector")).normal()).isEqualTo(Vector3D.Unit.PLUS_Z);
        if (receiver.has("positions")) {
            return Vector3D.Unit.PLUS_Z;
        }
        Frame above = ReferenceBeams.middle(receiver);
        if (above.normal().getZ() == 0) {
            return Vector3D.Unit.PLUS_Z;
        }
        double sizes = reach(geometry.get("reflector")) + reach(receiver);
        return Vector3D.of(0, 1.01 * sizes, above.origin().getZ());
    }

    private static double reach(JsonNode surface) {
        return surface.has("radius")
                ? surface.get("radius").asDouble()
                : vector(surface.get("u")).add(vector(surface.get("v"))).norm() / 2;
    }

    /** What relative irradiance 1 stands for. */
    private static double watt(JsonNode geometry, Scene scene) {
        if (geometry.has("emitter")) {
            return geometry.get("L").asDouble() * scene.referenceIrradiance();
        }
        if (geometry.has("beam")) {
            JsonNode beam = geometry.get("beam");
            return -vector(beam.get("direction")).getZ() * beam.get("E0").asDouble();
        }
        return geometry.get("uniformE").asDouble();
    }
}
