package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SamplingSpec;
import darkrim.light.Transport;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** What is asked of proofs and what of samples, what value stands beside a proof, and what a stop leaves. */
class SettledByProofTest {
    private static final int BATCHES = 4;
    private static final Scene SCENE = scene(Finish.ABSORBER);

    /** A floor in the full beam beside a grey wall. */
    private static Scene scene(Finish floor) {
        Frame frame = Frame.of(at(0, 0, 200), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        Finish grey = new Finish("grey", 0.2, 0);
        SceneBuilder builder = new SceneBuilder()
                .sheet("floor/front", floor, "floor/back", floor, Place.IN_CODE)
                .sheet("wall/front", grey, "wall/back", grey, Place.IN_CODE);
        builder.quad("floor/front", at(-5, -5, 0), at(5, -5, 0), at(5, 5, 0), at(-5, 5, 0));
        builder.quad("wall/front", at(5, -5, 0), at(5, -5, 10), at(5, 5, 10), at(5, 5, 0));
        return builder.build(Beam.of(new Pupil(Ring.disc(20), frame)));
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    /** Answers as it is told, and remembers of which surfaces darkness was asked. */
    private static final class Told implements Prover {
        private final Set<String> askedForDarkness = new TreeSet<>();
        private Optional<Evidence> darkness = Optional.empty();
        private Evidence.ExactShare share = Evidence.ExactShare.UNKNOWN;
        private double bound = Double.POSITIVE_INFINITY;

        @Override
        public synchronized Evidence darkness(Surface surface) {
            askedForDarkness.add(surface.name());
            return darkness.orElseGet(() -> new Evidence.OpenArea(surface.area(), 1));
        }

        @Override
        public Evidence.ExactShare pupilSeen(Surface surface, double asked) {
            return share;
        }

        @Override
        public double mostReflected(Surface surface, Set<Surface> dark, double limit) {
            return bound;
        }
    }

    private static Judgement decide(
            Told prover, Plan plan, Watch watch, Requirement.Condition condition, String... on) {
        return decide(SCENE, prover, plan, watch, condition, on);
    }

    private static Judgement decide(
            Scene scene, Told prover, Plan plan, Watch watch, Requirement.Condition condition, String... on) {
        SamplingSpec effort = new SamplingSpec(5, 0.999, 3_000_000);
        Requirement requirement = new Requirement("asked", "chosen", condition, Place.IN_CODE);
        List<Demand> demands = List.of(new Demand(
                requirement,
                List.of(on).stream()
                        .map(name -> scene.surface(name).orElseThrow())
                        .toList()));
        try (Workers workers = new Workers(1)) {
            Judge judge = new Judge(Transport.of(scene, 5), prover, workers, effort, plan);
            return judge.decide(demands, judge.prove(demands, Watch.NONE), watch);
        }
    }

    private static Judgement values(Told prover, Requirement.Condition condition) {
        return decide(prover, Plan.values(BATCHES), Watch.NONE, condition, "floor/front");
    }

    private static Requirement.Condition reflected(double limit) {
        return new Requirement.AtMost(LightClass.ONCE_REFLECTED, limit, Requirement.Per.SURFACE);
    }

    private static double value(Judgement judged) {
        return judged.requirements().get(0).worst().value();
    }

    @Test
    void darknessIsAskedOfWhatMustBeDarkAndOfWhatReflectsOnly() {
        Told reflecting = new Told();
        values(reflecting, reflected(1));
        assertThat(reflecting.askedForDarkness).containsExactly("wall/back", "wall/front");
        Told direct = new Told();
        values(direct, new Requirement.AtMost(LightClass.DIRECT, 1, Requirement.Per.SURFACE));
        assertThat(direct.askedForDarkness).containsExactly("floor/front", "wall/back", "wall/front");
    }

    @Test
    void onlyTheValueThatIsAskedForIsSampledAndNoneThatIsKnown() {
        long some = BATCHES * (long) Measurements.BATCH;
        assertThat(values(new Told(), new Requirement.PupilSeen(0.5)).samples()).isZero();

        Judgement open = values(new Told(), new Requirement.NoDirect());
        assertThat(open.samples()).isEqualTo(some);
        assertThat(open.surfaces().get(0).direct().irradiance().samples()).isEqualTo(some);

        Told bounded = new Told();
        bounded.bound = 0.9;
        Judgement below = values(bounded, reflected(1));
        assertThat(below.samples()).isEqualTo(some);
        assertThat(below.surfaces().get(0).onceReflected().irradiance().samples())
                .isEqualTo(some);
        assertThat(value(below)).isPositive();
    }

    @Test
    void whatIsKnownToBeNothingIsNotSampled() {
        // The back of the floor gets nothing, so that samples for the record cannot contradict what the prover is told
        // to say.
        Told dark = new Told();
        dark.darkness = Optional.of(new Evidence.ProvedDark(1e-6));
        dark.bound = 0;
        for (Requirement.Condition condition : List.of(new Requirement.NoDirect(), reflected(1e-9))) {
            Judgement judged = decide(dark, Plan.values(BATCHES), Watch.NONE, condition, "floor/back");
            assertThat(judged.samples()).isZero();
            assertThat(judged.verdict()).isEqualTo(Verdict.PASS);
            assertThat(value(judged)).isZero();
        }
    }

    @Test
    void aValueThatWasNotSampledIsNoNumber() {
        Told bounded = new Told();
        bounded.bound = 0.9;
        Judgement judged = decide(bounded, Plan.alike(BATCHES), Watch.NONE, reflected(1), "floor/front");
        assertThat(judged.samples()).isZero();
        assertThat(judged.verdict()).isEqualTo(Verdict.PASS);
        assertThat(value(judged)).isNaN();
    }

    @Test
    void ofASharePassedFarAboveTheProofTheProvedOneIsTold() {
        Told prover = new Told();
        Optional<Vector3D> lowest = Optional.of(Vector3D.ZERO);
        // Far apart: a point that sees less may be hidden, so what is proved is told; near, what the lowest point sees.
        prover.share = new Evidence.ExactShare(0.6, 0.9, lowest);
        assertThat(value(values(prover, new Requirement.PupilSeen(0.5)))).isEqualTo(0.6);
        prover.share = new Evidence.ExactShare(0.6, 0.6005, lowest);
        assertThat(value(values(prover, new Requirement.PupilSeen(0.5)))).isEqualTo(0.6005);
        // Failed or open: what a point was found to see.
        prover.share = new Evidence.ExactShare(0.1, 0.4, lowest);
        Judgement failed = values(prover, new Requirement.PupilSeen(0.5));
        assertThat(failed.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(value(failed)).isEqualTo(0.4);
        prover.share = new Evidence.ExactShare(0.1, 0.7, lowest);
        Judgement open = values(prover, new Requirement.PupilSeen(0.5));
        assertThat(open.verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(value(open)).isEqualTo(0.7);
        prover.share = Evidence.ExactShare.UNKNOWN;
        assertThat(value(values(prover, new Requirement.PupilSeen(0.5)))).isNaN();
        // Exactly the share that is asked for is enough; just too little seen is too little.
        prover.share = new Evidence.ExactShare(0.5, 0.5, lowest);
        assertThat(values(prover, new Requirement.PupilSeen(0.5)).verdict()).isEqualTo(Verdict.PASS);
        prover.share = new Evidence.ExactShare(0.4, 0.5, lowest);
        assertThat(values(prover, new Requirement.PupilSeen(0.5)).verdict()).isEqualTo(Verdict.UNDECIDED);
    }

    @Test
    void aStopLeavesWhatIsNotDecidedUndecidedAndSaysThatItWasStopped() {
        Judgement whole = decide(new Told(), Plan.FULL, Watch.NONE, reflected(0.5), "floor/front");
        assertThat(whole.stopped()).isFalse();
        assertThat(whole.verdict()).isEqualTo(Verdict.PASS);
        Judgement atOnce = decide(new Told(), Plan.FULL, StoppingWatch.after(0), reflected(0.5), "floor/front");
        assertThat(atOnce.stopped()).isTrue();
        assertThat(atOnce.samples()).isZero();
        assertThat(atOnce.verdict()).isEqualTo(Verdict.UNDECIDED);
        // In the middle of a slice of batches: none of it counts.
        Judgement within = decide(new Told(), Plan.FULL, StoppingWatch.after(2), reflected(0.5), "floor/front");
        assertThat(within.stopped()).isTrue();
        assertThat(within.samples()).isZero();
        assertThat(within.verdict()).isEqualTo(Verdict.UNDECIDED);
        // After the first slice: what it decides stays decided.
        Judgement later = decide(new Told(), Plan.FULL, StoppingWatch.after(3), reflected(0.5), "floor/front");
        assertThat(later.stopped()).isTrue();
        assertThat(later.samples()).isEqualTo(2 * Measurements.BATCH);
    }

    @Test
    void aDemandThatHasFailedAsksForNoMoreSamples() {
        // The wall gets from the dark floor much less than the floor from the wall: beside a limit at about its own
        // value it would stay in doubt.
        Scene scene = scene(new Finish("dark", 0.001, 0));
        Plan many = Plan.values(40);
        double doubtful = value(decide(scene, new Told(), many, Watch.NONE, reflected(1), "wall/front"));
        assertThat(value(decide(scene, new Told(), many, Watch.NONE, reflected(1), "floor/front")))
                .isGreaterThan(3 * doubtful);
        Plan plan = new Plan(2, Plan.Measured.UNDECIDED, 7);
        Judgement alone = decide(scene, new Told(), plan, Watch.NONE, reflected(doubtful), "wall/front");
        assertThat(alone.verdict()).isEqualTo(Verdict.UNDECIDED);
        Judgement judged =
                decide(scene, new Told(), plan, Watch.NONE, reflected(doubtful), "floor/front", "wall/front");
        assertThat(judged.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(judged.samples()).isLessThan(alone.samples());
    }
}
