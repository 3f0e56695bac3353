package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SamplingSpec;
import darkrim.light.Transport;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How the risk is shared among numbers and looks, and a budget among surfaces: what a sampled verdict's confidence rests on. */
class JudgeRiskTest {
    private static final double CONFIDENCE = 0.98;

    private static final Finish GREY = new Finish("grey", 0.2, 0);
    private static final Scene SCENE = FloorAndWall.scene(GREY, GREY);

    /** Knows nothing, so that all is left to samples. */
    private static final Prover NOTHING = new Prover() {
        @Override
        public Evidence darkness(Surface surface) {
            return new Evidence.OpenArea(surface.area(), 1);
        }

        @Override
        public Evidence.ExactShare pupilSeen(Surface surface, double share) {
            return Evidence.ExactShare.UNKNOWN;
        }

        @Override
        public double mostReflected(Surface surface, Set<Surface> dark, double limit) {
            return Double.POSITIVE_INFINITY;
        }
    };

    private static Demand demand(double limit, Requirement.Per per, String... surfaces) {
        Requirement requirement = new Requirement(
                "asked", "chosen", new Requirement.AtMost(LightClass.ONCE_REFLECTED, limit, per), Place.IN_CODE);
        return new Demand(
                requirement,
                List.of(surfaces).stream()
                        .map(name -> SCENE.surface(name).orElseThrow())
                        .toList());
    }

    private static Judgement decide(long mostSamples, Plan plan, List<Judgement> looks, Demand... demands) {
        SamplingSpec effort = new SamplingSpec(5, CONFIDENCE, mostSamples);
        try (Workers workers = new Workers(1)) {
            Judge judge = new Judge(Transport.of(SCENE, 5), NOTHING, workers, effort, plan);
            List<Demand> asked = List.of(demands);
            return judge.decide(asked, judge.prove(asked, Watch.NONE), Watch.NONE, looks::add);
        }
    }

    private static List<Evidence.Sampled> sampled(Judgement judgement) {
        return judgement.requirements().stream()
                .flatMap(result -> result.outcomes().stream())
                .map(outcome -> (Evidence.Sampled) outcome.evidence())
                .toList();
    }

    @Test
    void theRisksOfAllNumbersTogetherAreTheWholeRisk() {
        // Four cells and one surface: five numbers that chance may get wrong.
        Judgement judged = decide(
                40_000,
                Plan.FULL,
                new ArrayList<>(),
                demand(1e-3, Requirement.Per.CELL, "floor/front"),
                demand(1e-3, Requirement.Per.SURFACE, "wall/front"));
        List<Evidence.Sampled> all = sampled(judged);
        assertThat(all).hasSize(5);
        assertThat(judged.risk()).isCloseTo(1 - CONFIDENCE, within(1e-15));
        assertThat(all).allSatisfy(one -> {
            assertThat(one.risk()).isCloseTo((1 - CONFIDENCE) / 5, within(1e-15));
            ConfidenceSequence sequence = new ConfidenceSequence((1 - CONFIDENCE) / 5);
            assertThat(one.lower()).isEqualTo(sequence.lower(one.estimate(), one.looks()));
            assertThat(one.upper()).isEqualTo(sequence.upper(one.estimate(), one.looks()));
        });
    }

    @Test
    void everyLookHasItsOwnShareOfTheRisk() {
        // A limit at about the value itself is looked at until the budget ends, each time with twice the samples.
        Judgement few = decide(60_000, Plan.FULL, new ArrayList<>(), demand(1, Requirement.Per.SURFACE, "floor/front"));
        double value = few.requirements().get(0).worst().value();
        List<Judgement> looks = new ArrayList<>();
        Judgement judged = decide(300_000, Plan.FULL, looks, demand(value, Requirement.Per.SURFACE, "floor/front"));
        looks.add(judged);
        assertThat(looks).hasSizeGreaterThan(3);
        for (int i = 0; i < looks.size(); i++) {
            Evidence.Sampled one = sampled(looks.get(i)).get(0);
            assertThat(one.looks()).isEqualTo(i + 1);
            assertThat(one.upper()).isEqualTo(new ConfidenceSequence(one.risk()).upper(one.estimate(), i + 1));
        }
        // The risks of looks 1, 2, 3... are 1/2, 1/6, 1/12... of the whole: together never more than it.
        double logarithm = StrictMath.log(3.0 * 6 / 0.02);
        Evidence.Sampled second = sampled(looks.get(1)).get(0);
        double width = Math.sqrt(2
                        * second.estimate().variance()
                        * logarithm
                        / second.estimate().samples())
                + 7
                        * second.estimate().largest()
                        * logarithm
                        / (3.0 * (second.estimate().independent() - 1));
        assertThat(second.upper() - second.estimate().mean()).isCloseTo(width, within(1e-12));
    }

    @Test
    void aBudgetThatDoesNotReachForAllIsSharedAlikeAndNotOverdrawn() {
        String[] names = {"floor/front", "wall/front", "wall/back"};
        Judgement judged = decide(
                3 * Measurements.BATCH, Plan.alike(8), new ArrayList<>(), demand(1e-3, Requirement.Per.SURFACE, names));
        assertThat(judged.samples()).isEqualTo(3 * Measurements.BATCH);
        assertThat(judged.surfaces().stream()
                        .filter(one -> List.of(names).contains(one.surface().name())))
                .allSatisfy(one ->
                        assertThat(one.onceReflected().irradiance().samples()).isEqualTo(Measurements.BATCH));
    }

    @Test
    void aBudgetThatJustReachesIsSpentAndOneBatchLessIsNot() {
        Plan plan = Plan.alike(4);
        Demand demand = demand(1e-3, Requirement.Per.SURFACE, "floor/front");
        assertThat(decide(4 * Measurements.BATCH, plan, new ArrayList<>(), demand)
                        .samples())
                .isEqualTo(4 * Measurements.BATCH);
        assertThat(decide(4 * Measurements.BATCH - 1, plan, new ArrayList<>(), demand)
                        .samples())
                .isEqualTo(3 * Measurements.BATCH);
    }

    @Test
    void whatDecidesComesBeforeWhatIsMeasuredForTheRecord() {
        Judgement judged = decide(
                2 * Measurements.BATCH,
                Plan.FULL,
                new ArrayList<>(),
                demand(1e-3, Requirement.Per.SURFACE, "wall/back"));
        assertThat(judged.surfaces())
                .allSatisfy(one -> assertThat(one.onceReflected().irradiance().samples() > 0)
                        .isEqualTo(one.surface().name().equals("wall/back")));
    }

    @Test
    void onlyThePlanOfValuesKeepsTheMeansOfBatches() {
        Demand demand = demand(1, Requirement.Per.SURFACE, "floor/front");
        Surface floor = SCENE.surface("floor/front").orElseThrow();
        assertThat(decide(40_000, Plan.values(4), new ArrayList<>(), demand)
                        .batches()
                        .of(floor, LightClass.ONCE_REFLECTED, Outcome.WHOLE))
                .hasSize(4);
        assertThat(decide(40_000, Plan.alike(4), new ArrayList<>(), demand)
                        .batches()
                        .of(floor, LightClass.ONCE_REFLECTED, Outcome.WHOLE))
                .isEmpty();
    }

    @Test
    void whatIsJudgedHasIndependentPairsOfSamplesAndWhatIsOnlyRecordedNeedNot() {
        // The bounds hold for independent samples: evenly spread ones tell a mean better, and nothing of how sure it
        // is.
        Judgement judged =
                decide(200_000, Plan.FULL, new ArrayList<>(), demand(1e-3, Requirement.Per.SURFACE, "wall/front"));
        assertThat(together(judged, "wall/front")).isLessThanOrEqualTo(2);
        assertThat(together(judged, "wall/back")).isGreaterThan(2);
    }

    private static int together(Judgement judged, String name) {
        return judged.surfaces().stream()
                .filter(one -> one.surface().name().equals(name))
                .mapToInt(one -> one.onceReflected().irradiance().together())
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -0.1, 1.1, Double.NaN})
    void aRiskThatIsNoneIsRefused(double risk) {
        assertThatThrownBy(() -> new ConfidenceSequence(risk)).isInstanceOf(IllegalArgumentException.class);
    }
}
