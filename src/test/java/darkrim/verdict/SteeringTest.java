package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SamplingSpec;
import darkrim.light.Estimate;
import darkrim.light.Receiver;
import darkrim.light.Tally;
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
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Effort goes to what it can decide. */
class SteeringTest {
    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    /** Three floors side by side between two walls: the near and the far one get the same light. */
    private static Scene scene() {
        Finish wall = new Finish("wall", 0.1, 0);
        SceneBuilder builder = new SceneBuilder()
                .sheet("near", Finish.ABSORBER, "near/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("middle", Finish.ABSORBER, "middle/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("far", Finish.ABSORBER, "far/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("wall", wall, "wall/back", wall, Place.IN_CODE);
        floor(builder, "near", 0);
        floor(builder, "middle", -10);
        floor(builder, "far", -20);
        builder.quad("wall", at(6, -5, 0), at(6, -5, 10), at(6, 5, 10), at(6, 5, 0));
        builder.quad("wall", at(-26, 5, 0), at(-26, 5, 10), at(-26, -5, 10), at(-26, -5, 0));
        Frame frame = Frame.of(at(-10, 0, 200), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        return builder.build(Beam.of(new Pupil(Ring.disc(20), frame)));
    }

    private static void floor(SceneBuilder builder, String name, double x) {
        builder.quad(name, at(x - 5, -5, 0), at(x + 5, -5, 0), at(x + 5, 5, 0), at(x - 5, 5, 0));
    }

    private static Estimate light(Scene scene, String name, long batches) {
        Transport transport = Transport.of(scene, 5);
        Receiver on = new Receiver.OnSurface(scene.surface(name).orElseThrow());
        Tally all = transport.nothing(on, LightClass.ONCE_REFLECTED);
        for (int i = 0; i < batches; i++) {
            all = all.and(transport.batch(on, LightClass.ONCE_REFLECTED, i, Measurements.BATCH));
        }
        return all.irradiance();
    }

    private static Demand most(Scene scene, String name, double limit, String... surfaces) {
        Requirement requirement = new Requirement(
                name,
                "*",
                new Requirement.AtMost(LightClass.ONCE_REFLECTED, limit, Requirement.Per.SURFACE),
                Place.IN_CODE);
        return new Demand(
                requirement,
                List.of(surfaces).stream()
                        .map(one -> scene.surface(one).orElseThrow())
                        .toList());
    }

    private static Judgement decide(Scene scene, long budget, int threads, Demand... demands) {
        SamplingSpec effort = new SamplingSpec(5, 0.999, budget);
        Plan plan = new Plan(2, Plan.Measured.UNDECIDED, Integer.MAX_VALUE);
        try (Workers workers = new Workers(threads)) {
            Judge judge = new Judge(Transport.of(scene, effort.seed()), NOTHING_PROVED, workers, effort, plan);
            List<Demand> asked = List.of(demands);
            return judge.decide(asked, judge.prove(asked, Watch.NONE), Watch.NONE);
        }
    }

    private static final Prover NOTHING_PROVED = new Prover() {
        @Override
        public Evidence darkness(Surface surface) {
            return new Evidence.OpenArea(surface.area(), 1);
        }

        @Override
        public Evidence.ExactShare pupilSeen(Surface surface, double share) {
            return new Evidence.ExactShare(0, 1, Optional.empty());
        }

        @Override
        public double mostReflected(Surface surface, Set<Surface> proved, double limit) {
            return Double.MAX_VALUE;
        }
    };

    private static long samples(Judgement judged, int demand, int surface) {
        Outcome outcome = judged.requirements().get(demand).outcomes().get(surface);
        return ((Evidence.Sampled) outcome.evidence()).estimate().samples();
    }

    /** A limit at the value itself can not be decided. It must not eat what decides the other, here with a quarter more than that needs. */
    @Test
    void whatIsOutOfReachLeavesTheBudgetToWhatIsNot() {
        Scene scene = scene();
        double hopeless = light(scene, "near", 64).mean();
        double value = light(scene, "far", 64).mean();
        Demand decidable = most(scene, "decidable", 1.05 * value, "far");
        long needed = decide(scene, 100_000_000, 2, most(scene, "easy", 1, "near"), decidable)
                .samples();
        assertThat(needed).isGreaterThan(20 * Measurements.BATCH);
        Judgement both = decide(scene, needed + needed / 4, 2, most(scene, "hopeless", hopeless, "near"), decidable);
        assertThat(both.requirements().get(0).verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(both.requirements().get(1).verdict()).isEqualTo(Verdict.PASS);
        assertThat(both.samples()).isLessThanOrEqualTo(needed + needed / 4);
    }

    /** One surface is enough to fail: of two with the same light one is followed up, the other soon left. */
    @Test
    void ofADemandThatFailsOneSurfaceIsFollowedUp() {
        Scene scene = scene();
        double value = light(scene, "far", 64).mean();
        Judgement judged = decide(scene, 100_000_000, 2, most(scene, "fails", 0.96 * value, "far", "near"));
        assertThat(judged.verdict()).isEqualTo(Verdict.FAIL);
        long least = Math.min(samples(judged, 0, 0), samples(judged, 0, 1));
        assertThat(judged.samples()).isGreaterThan(10 * least);
    }

    /** However the budget ends, a surface is looked at only at 2, 4, 8 ... batches: a look of any other size would depend on the samples. */
    @Test
    void theSizesOfLooksAreFixedBeforehand() {
        Scene scene = scene();
        for (long budget : new long[] {50_000, 123_456, 400_000, 777_777}) {
            Judgement judged = decide(
                    scene,
                    budget,
                    2,
                    most(scene, "near", light(scene, "near", 8).mean(), "near"),
                    most(scene, "middle", light(scene, "middle", 8).mean(), "middle"),
                    most(scene, "far", light(scene, "far", 8).mean(), "far"));
            for (int i = 0; i < 3; i++) {
                long batches = samples(judged, i, 0) / Measurements.BATCH;
                Evidence.Sampled sampled = (Evidence.Sampled)
                        judged.requirements().get(i).outcomes().get(0).evidence();
                assertThat(batches).isEqualTo(1L << sampled.looks());
            }
            assertThat(judged.samples()).isLessThanOrEqualTo(budget);
        }
    }

    @Test
    void anyNumberOfThreadsTakesTheSameTurns() {
        Scene scene = scene();
        Demand one = most(scene, "near", 1.1 * light(scene, "near", 8).mean(), "near", "middle");
        Demand other = most(scene, "far", 0.9 * light(scene, "far", 8).mean(), "far", "middle");
        assertThat(decide(scene, 2_000_000, 5, one, other)).isEqualTo(decide(scene, 2_000_000, 1, one, other));
    }

    @Test
    void theSamplesNeededBringTheBoundToTheGap() {
        ConfidenceSequence sequence = new ConfidenceSequence(1e-5);
        Estimate now = new Estimate(4096, 0.01, 0.003, 0.5);
        double needed = sequence.samplesFor(now, 0.002, 3);
        Estimate then = new Estimate(Math.round(needed), 0.01, 0.003, 0.5);
        assertThat(sequence.width(then, 4)).isCloseTo(0.002, within(1e-6));
        assertThat(sequence.samplesFor(now, 0, 3)).isInfinite();
    }

    @Test
    void samplesInPairsNeedTwiceAsManyWhereNoneOfThemGotLight() {
        ConfidenceSequence sequence = new ConfidenceSequence(1e-5);
        Estimate now = new Estimate(4096, 0, 0, 0.5, 2);
        double needed = sequence.samplesFor(now, 1e-5, 3);
        Estimate then = new Estimate(2 * Math.round(needed / 2), 0, 0, 0.5, 2);
        assertThat(sequence.width(then, 4)).isCloseTo(1e-5, within(1e-10));
    }
}
