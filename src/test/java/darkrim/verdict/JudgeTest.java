package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.diagnostic.Place;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SamplingSpec;
import darkrim.light.Receiver;
import darkrim.light.Tally;
import darkrim.light.Transport;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.LeastShare;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JudgeTest {
    private static Evidence unknown(Surface surface) {
        return new Evidence.OpenArea(surface.area(), 1);
    }

    private static final SamplingSpec SMALL = new SamplingSpec(5, 0.999, 3_000_000);

    /** The floor absorbs. */
    private static Scene scene(double reflectance) {
        return FloorAndWall.scene(Finish.ABSORBER, new Finish("wall", reflectance, 0));
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static Judgement decide(
            Scene scene,
            Requirement.Condition condition,
            SamplingSpec effort,
            int threads,
            Function<Surface, Evidence> dark) {
        try (Workers workers = new Workers(threads)) {
            Judge judge =
                    new Judge(Transport.of(scene, effort.seed()), prover(scene, dark), workers, effort, Plan.FULL);
            Requirement requirement = new Requirement("asked", "floor/front", condition, Place.IN_CODE);
            List<Demand> demands =
                    List.of(new Demand(requirement, List.of(scene.surfaces().get(0))));
            return judge.decide(demands, judge.prove(demands, Watch.NONE), Watch.NONE);
        }
    }

    /** Darkness as a test wants it, the pupil as it is seen, and no bound. */
    private static Prover prover(Scene scene, Function<Surface, Evidence> dark) {
        return prover(scene, dark, Double.MAX_VALUE);
    }

    private static Prover prover(Scene scene, Function<Surface, Evidence> dark, double bound) {
        LeastShare least = new LeastShare(scene, Transport.of(scene, 1).tree());
        return new Prover() {
            @Override
            public Evidence darkness(Surface surface) {
                return dark.apply(surface);
            }

            @Override
            public Evidence.ExactShare pupilSeen(Surface surface, double share) {
                LeastShare.Bracket found = least.against(surface, share, () -> false);
                return new Evidence.ExactShare(found.atLeast(), found.atMost(), Optional.of(found.point()));
            }

            @Override
            public double mostReflected(Surface surface, Set<Surface> proved, double limit) {
                return bound;
            }
        };
    }

    private static Judgement bounded(Scene scene, Requirement.Condition condition, double bound) {
        try (Workers workers = new Workers(2)) {
            Judge judge = new Judge(
                    Transport.of(scene, SMALL.seed()),
                    prover(scene, JudgeTest::unknown, bound),
                    workers,
                    SMALL,
                    Plan.FULL);
            Requirement requirement = new Requirement("asked", "floor/front", condition, Place.IN_CODE);
            List<Demand> demands =
                    List.of(new Demand(requirement, List.of(scene.surfaces().get(0))));
            return judge.decide(demands, judge.prove(demands, Watch.NONE), Watch.NONE);
        }
    }

    @Test
    void aBoundBelowTheLimitDecidesWithoutMoreSamplesAndOneAboveItDoesNot() {
        // The floor gets about 0.005: 0.04 is a true bound, and below the limit of 0.05 but not of 0.03.
        Scene scene = scene(0.1);
        Outcome proved = bounded(scene, reflected(0.05, Requirement.Per.SURFACE), 0.04)
                .requirements()
                .get(0)
                .worst();
        assertThat(proved.verdict()).isEqualTo(Verdict.PASS);
        assertThat(proved.evidence()).isEqualTo(new Evidence.ProvedBound(0.04));
        Judgement sampled = bounded(scene, reflected(0.03, Requirement.Per.SURFACE), 0.04);
        assertThat(sampled.requirements().get(0).worst().evidence()).isInstanceOf(Evidence.Sampled.class);
        assertThat(sampled.surfaces().get(0).mostReflected()).hasValue(0.04);
    }

    @Test
    void aCellMayGetAsManyTimesTheMeanAsThereAreCells() {
        Scene scene = scene(0.1);
        List<Outcome> cells = bounded(scene, reflected(0.16, Requirement.Per.CELL), 0.04)
                .requirements()
                .get(0)
                .outcomes();
        assertThat(cells)
                .hasSize(4)
                .allMatch(cell -> cell.evidence().equals(new Evidence.ProvedBound(0.16)))
                .allMatch(cell -> cell.verdict() == Verdict.PASS);
        assertThat(bounded(scene, reflected(0.15, Requirement.Per.CELL), 0.04)
                        .requirements()
                        .get(0)
                        .worst()
                        .evidence())
                .isInstanceOf(Evidence.Sampled.class);
    }

    @Test
    void aBoundThatSamplesContradictIsRefused() {
        for (double bound : new double[] {0, 1e-5}) {
            assertThatThrownBy(() -> bounded(scene(0.1), reflected(0.05, Requirement.Per.SURFACE), bound))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("floor/front is proved to get less once-reflected light");
        }
    }

    @Test
    void whereNoReflectedLightMayComeOneRayIsEnoughToFail() {
        Judgement judged = decide(scene(0.1), reflected(0, Requirement.Per.SURFACE), SMALL, 2, JudgeTest::unknown);
        assertThat(judged.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(judged.samples()).isLessThan(200_000);
    }

    private static Requirement.Condition reflected(double limit, Requirement.Per per) {
        return new Requirement.AtMost(LightClass.ONCE_REFLECTED, limit, per);
    }

    @Test
    void aLimitWellAboveTheLightPassesAndOneBelowFails() {
        Scene scene = scene(0.1);
        assertThat(decide(scene, reflected(0.05, Requirement.Per.SURFACE), SMALL, 2, JudgeTest::unknown)
                        .verdict())
                .isEqualTo(Verdict.PASS);
        assertThat(decide(scene, reflected(1e-5, Requirement.Per.SURFACE), SMALL, 2, JudgeTest::unknown)
                        .verdict())
                .isEqualTo(Verdict.FAIL);
    }

    @Test
    void everyCellIsJudgedAndTheOneByTheWallIsWorst() {
        Judgement judged = decide(scene(0.1), reflected(1e-5, Requirement.Per.CELL), SMALL, 2, JudgeTest::unknown);
        Outcome worst = judged.requirements().get(0).worst();
        assertThat(judged.requirements().get(0).outcomes()).hasSize(4);
        assertThat(worst.where()).isIn("floor/front cell (2,1)", "floor/front cell (2,2)");
    }

    @Test
    void aLimitAtTheValueItselfStaysUndecidedWithinTheBudget() {
        // The mean of all samples that the budget allows lies inside every interval that those samples give.
        Scene scene = scene(0.1);
        Transport transport = Transport.of(scene, SMALL.seed());
        Receiver floor = new Receiver.OnSurface(scene.surfaces().get(0));
        Tally all = transport.nothing(floor, LightClass.ONCE_REFLECTED);
        for (int i = 0; i < 250; i++) {
            all = all.and(transport.batch(floor, LightClass.ONCE_REFLECTED, i, Measurements.BATCH));
        }
        double value = all.irradiance().mean();
        Judgement judged = decide(scene(0.1), reflected(value, Requirement.Per.SURFACE), SMALL, 2, JudgeTest::unknown);
        assertThat(judged.verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(judged.samples()).isBetween(SMALL.mostSamples() / 4, SMALL.mostSamples());
    }

    @Test
    void whereNothingReflectsTheUpperBoundIsNothingAndDecides() {
        Judgement judged = decide(scene(0), reflected(1e-3, Requirement.Per.SURFACE), SMALL, 2, JudgeTest::unknown);
        assertThat(judged.verdict()).isEqualTo(Verdict.PASS);
        Evidence.Sampled sampled =
                (Evidence.Sampled) judged.requirements().get(0).worst().evidence();
        assertThat(sampled.upper()).isZero();
    }

    @Test
    void anEmptyBudgetNeverPasses() {
        SamplingSpec none = new SamplingSpec(5, 0.999, 1);
        assertThat(decide(scene(0.1), reflected(0.05, Requirement.Per.SURFACE), none, 1, JudgeTest::unknown)
                        .verdict())
                .isEqualTo(Verdict.UNDECIDED);
    }

    @Test
    void directLightIsDecidedByTheEvidenceOfTheProof() {
        Scene scene = scene(0.1);
        Evidence ray = new Evidence.WitnessRay(at(0, 0, 200), at(0, 0, 0));
        assertThat(decide(scene, new Requirement.NoDirect(), SMALL, 1, JudgeTest::unknown)
                        .verdict())
                .isEqualTo(Verdict.UNDECIDED);
        assertThat(decide(scene, new Requirement.NoDirect(), SMALL, 1, surface -> ray)
                        .verdict())
                .isEqualTo(Verdict.FAIL);
    }

    @Test
    void aProofThatASampleContradictsIsRefused() {
        Scene scene = scene(0.1);
        assertThatThrownBy(() ->
                        decide(scene, new Requirement.NoDirect(), SMALL, 1, surface -> new Evidence.ProvedDark(1e-6)))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("floor/front is proved dark, yet a ray reaches it");
    }

    @Test
    void theShareOfThePupilIsJudged() {
        // The wall hides nothing from the far half of the floor. At its foot it hides all of the pupil beyond x = 5:
        // a segment of the disc of radius 20 by a chord at 5 is seen the less, and no point sees less than that.
        double q = 5 / 20.0;
        double least = 1 - (Math.acos(q) - q * Math.sqrt(1 - q * q)) / Math.PI;
        for (double step : new double[] {-0.01, 0.01}) {
            Outcome outcome = decide(scene(0.1), new Requirement.PupilSeen(least + step), SMALL, 2, JudgeTest::unknown)
                    .requirements()
                    .get(0)
                    .worst();
            assertThat(outcome.verdict()).isEqualTo(step < 0 ? Verdict.PASS : Verdict.FAIL);
            assertThat(((Evidence.ExactShare) outcome.evidence()).atLeast()).isLessThanOrEqualTo(least);
            assertThat(outcome.value()).isBetween(least - 1e-6, 1.0);
        }
        assertThat(decide(scene(0.1), new Requirement.PupilSeen(0.9999), SMALL, 2, JudgeTest::unknown)
                        .verdict())
                .isEqualTo(Verdict.FAIL);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 5})
    void anyNumberOfThreadsGivesTheSameBits(int threads) {
        Scene scene = scene(0.1);
        Judgement one = decide(scene, reflected(0.001, Requirement.Per.CELL), SMALL, 1, JudgeTest::unknown);
        Judgement many = decide(scene, reflected(0.001, Requirement.Per.CELL), SMALL, threads, JudgeTest::unknown);
        assertThat(many).isEqualTo(one);
    }
}
