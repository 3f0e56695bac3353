package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.verdict.ConfidenceSequence;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.statistics.interval.BinomialConfidenceInterval;
import org.apache.commons.statistics.interval.Interval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/**
 * The pupil behind a knife edge and through openings (family C). For the false-alarm rate see {@link Validation}: 6.3e-5 a number.
 *
 * <p>Where less than 1e-3 of the pupil is seen, or is hidden, 0.2 % would take some 1e9 samples. There the known number must lie in an interval
 * of the same false-alarm rate: Clopper-Pearson for shares of the pupil, the empirical Bernstein bound of
 * {@link ConfidenceSequence} for irradiance. The exact shadows are checked there to 1e-9. In the full shadow no sample may see the pupil.
 */
@ExtendWith(Validation.class)
class ReferencePenumbraTest {
    private static final double TINY = 1e-3;

    /** Two million samples. */
    private static final long TINY_BATCHES = 100;

    static Stream<ReferenceScalar> shadows() {
        return ReferenceScalar.family("C").filter(each -> each.from().geometry().has("emitter"));
    }

    static Stream<ReferenceScalar> discs() {
        return ReferenceScalar.family("C").filter(each -> each.from().geometry().has("from"));
    }

    @Test
    void everyCaseIsRun() {
        assertThat(Stream.concat(shadows(), discs()))
                .containsExactlyInAnyOrderElementsOf(ReferenceScalar.family("C").toList());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("shadows")
    void thePupilBehindAnEdge(ReferenceScalar scalar) {
        JsonNode geometry = scalar.from().geometry();
        ReferenceStage stage = new ReferenceStage(scalar, ReferenceMove.NONE);
        Scene scene = stage.under(ReferenceBeams.pupil(geometry.get("emitter"), ReferenceMove.NONE));
        Receiver receiver = stage.receiver(scene, "receiver", scalar, 0);
        boolean share = scalar.from().kind().equals("visArea");
        double watt = share ? 1 : geometry.get("L").asDouble() * scene.referenceIrradiance();
        double ofFull = scalar.value() / watt;
        if (ofFull < TINY || (share && 1 - ofFull < TINY)) {
            Tally tally = ReferenceSampling.light(scene, receiver, LightClass.DIRECT, TINY_BATCHES);
            checkAtTheLimit(scalar, share, share ? tally.pupilSeen() : tally.irradiance(), watt);
            return;
        }
        Tally tally = ReferenceSampling.light(
                scene,
                receiver,
                LightClass.DIRECT,
                ReferenceSampling.AIM,
                share ? Tally::pupilSeen : Tally::irradiance);
        Estimate got = (share ? tally.pupilSeen() : tally.irradiance()).times(watt);
        Validation.requireSampled(scalar, "traced back", got.mean(), got.standardError());
    }

    private static void checkAtTheLimit(ReferenceScalar scalar, boolean share, Estimate got, double watt) {
        assertThat(got.samples()).isEqualTo(TINY_BATCHES * ReferenceSampling.BATCH);
        if (scalar.value() == 0 || (share && scalar.value() == 1)) {
            Validation.requireExact(scalar, "traced back, every sample", got.mean() * watt, 0);
        } else if (share) {
            int trials = Math.toIntExact(got.samples());
            int seen = (int) Math.round(got.mean() * trials);
            Interval interval =
                    BinomialConfidenceInterval.CLOPPER_PEARSON.fromErrorRate(trials, seen, Validation.FALSE_ALARM);
            Validation.requireInside(
                    scalar,
                    "traced back, Clopper-Pearson interval",
                    got.mean(),
                    got.standardError(),
                    interval.getLowerBound(),
                    interval.getUpperBound());
        } else {
            ConfidenceSequence bounds = new ConfidenceSequence(Validation.FALSE_ALARM);
            Validation.requireInside(
                    scalar,
                    "traced back, empirical Bernstein interval",
                    got.mean() * watt,
                    got.standardError() * watt,
                    bounds.lower(got, 1) * watt,
                    bounds.upper(got, 1) * watt);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("discs")
    void discToDiscThroughARoundOpeningInAPlate(ReferenceScalar scalar) {
        Beam beam = ReferenceBeams.pupil(scalar.from().geometry().get("to"), ReferenceMove.NONE);
        ReferenceStage stage = new ReferenceStage(scalar, ReferenceMove.NONE).with("from", Finish.ABSORBER);
        requireFactor(scalar, "pupil behind a plate of 720 sides", stage.under(beam));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("discs")
    void discToDiscThroughARoundLimitOfTheField(ReferenceScalar scalar) {
        JsonNode geometry = scalar.from().geometry();
        JsonNode plate = geometry.get("blockers").get(0);
        Frame frame = Frame.about(Vector3D.of(0, 0, plate.get("z").asDouble()), Vector3D.Unit.PLUS_Z);
        FieldLimit limit = new FieldLimit(Ring.disc(plate.get("radius").asDouble()), frame);
        Beam open = ReferenceBeams.pupil(geometry.get("to"), ReferenceMove.NONE);
        Beam limited = new Beam(open.pupil(), Optional.of(limit), OptionalDouble.empty());
        SceneBuilder builder = new SceneBuilder();
        new ReferenceFacets(builder, ReferenceMove.NONE).add("from", Finish.ABSORBER, geometry.get("from"));
        requireFactor(scalar, "pupil behind a field limit", builder.build(limited));
    }

    private static void requireFactor(ReferenceScalar scalar, String way, Scene scene) {
        Receiver receiver = new Receiver.OnSurface(ReferenceStage.surface(scene, "from"));
        Estimate factor = ReferenceSampling.light(
                        scene, receiver, LightClass.DIRECT, ReferenceSampling.AIM, Tally::irradiance)
                .irradiance()
                .times(scene.referenceIrradiance() / Math.PI);
        Validation.requireSampled(scalar, way, factor.mean(), factor.standardError());
    }
}
