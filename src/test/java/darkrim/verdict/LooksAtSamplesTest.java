package darkrim.verdict;

import static darkrim.verdict.ToldProofs.NOTHING;
import static darkrim.verdict.ToldProofs.SCENE;
import static darkrim.verdict.ToldProofs.decide;
import static darkrim.verdict.ToldProofs.demand;
import static darkrim.verdict.ToldProofs.judge;
import static darkrim.verdict.ToldProofs.reflected;
import static darkrim.verdict.ToldProofs.surface;
import static darkrim.verdict.ToldProofs.valueOfTheFloor;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Receiver;
import darkrim.light.Tally;
import darkrim.light.Transport;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How often samples are looked at, how many there are, and what of them counts. */
class LooksAtSamplesTest {
    /** Where a bound was proved, samples for the record are held against it: four times as many. */
    @Test
    void samplesForTheRecordAreMoreWhereAProofIsHeldAgainstThem() {
        Judgement judged = decide(
                new ToldProofs.Told(Set.of(), 0.4),
                new Plan(3, Plan.Measured.EVERYTHING, 1),
                demand(reflected(0.5, Requirement.Per.SURFACE), "floor"));
        long once = 3 * (long) Measurements.BATCH;
        for (SurfaceResult result : judged.surfaces()) {
            boolean held = result.surface().name().equals("floor");
            assertThat(result.direct().irradiance().samples()).isEqualTo(once);
            assertThat(result.onceReflected().irradiance().samples()).isEqualTo(held ? 4 * once : once);
            assertThat(result.mostReflected().isPresent()).isEqualTo(held);
        }
        assertThat(judged.samples()).isEqualTo(once * (2 * SCENE.surfaces().size() + 3));
        assertThat(judged.stopped()).isFalse();
        assertThat(judged.risk()).isCloseTo(0.02, within(1e-15));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4})
    void itIsLookedAtAsOftenAsThePlanSaysAndEachLookButTheLastIsHandedOver(int looks) {
        // A limit at the value itself stays in doubt.
        double value = valueOfTheFloor();
        List<Judgement> heard = new ArrayList<>();
        Judgement last = decide(
                NOTHING,
                new Plan(1, Plan.Measured.UNDECIDED, looks),
                1_000_000,
                heard,
                demand(reflected(value, Requirement.Per.SURFACE), "floor"));
        assertThat(heard).hasSize(looks - 1);
        heard.add(last);
        for (int i = 0; i < looks; i++) {
            Outcome outcome = heard.get(i).requirements().get(0).worst();
            Evidence.Sampled sampled = (Evidence.Sampled) outcome.evidence();
            assertThat(sampled.looks()).isEqualTo(i + 1);
            assertThat(sampled.estimate().samples()).isEqualTo((long) Measurements.BATCH << i);
            assertThat(heard.get(i).samples()).isEqualTo((long) Measurements.BATCH << i);
            assertThat(heard.get(i).stopped()).isFalse();
        }
    }

    /** No batch is counted twice and none is left out, however often the samples are doubled: the estimate is that of batches 0 to 7, to the last bit. */
    @Test
    void doubledSamplesAreThoseOfTheNextBatches() {
        Judgement judged = decide(
                NOTHING,
                new Plan(1, Plan.Measured.UNDECIDED, 4),
                demand(reflected(valueOfTheFloor(), Requirement.Per.SURFACE), "floor"));
        Transport transport = Transport.of(SCENE, 3);
        Receiver floor = new Receiver.OnSurface(surface("floor"));
        Tally expected = transport.batch(floor, LightClass.ONCE_REFLECTED, 0, Measurements.BATCH);
        for (int batch = 1; batch < 8; batch++) {
            expected = expected.and(transport.batch(floor, LightClass.ONCE_REFLECTED, batch, Measurements.BATCH));
        }
        assertThat(judged.surfaces().get(0).onceReflected()).isEqualTo(expected);
    }

    @Test
    void aStopBetweenTwoLooksIsHeardAndTold() {
        Demand inDoubt = demand(reflected(valueOfTheFloor(), Requirement.Per.SURFACE), "floor");
        ToldProofs.Hearing hearing = new ToldProofs.Hearing(3);
        try (Workers workers = new Workers(1)) {
            Judge judge = judge(NOTHING, new Plan(1, Plan.Measured.UNDECIDED, 8), 1_000_000, workers);
            Judgement judged = judge.decide(List.of(inDoubt), judge.prove(List.of(inDoubt), Watch.NONE), hearing);
            assertThat(judged.stopped()).isTrue();
            assertThat(judged.samples()).isEqualTo(Measurements.BATCH);
            assertThat(judged.verdict()).isEqualTo(Verdict.UNDECIDED);
        }
        assertThat(hearing.heard).containsExactly("sampling light, at most " + Measurements.BATCH + "/1000000");
    }

    @Test
    void whatTheBudgetDoesNotReachForIsNotMeasuredAndNoNumber() {
        // One batch among two surfaces is none for each.
        Demand both = demand(reflected(1e-6, Requirement.Per.SURFACE), "floor", "wall");
        Judgement judged = decide(NOTHING, Plan.alike(2), Measurements.BATCH, new ArrayList<>(), both);
        assertThat(judged.samples()).isZero();
        assertThat(judged.verdict()).isEqualTo(Verdict.UNDECIDED);
        // But where no sample can be larger than 0, that decides: no light comes to the tiles.
        Demand tiles = demand(reflected(0, Requirement.Per.SURFACE), "tile 0", "tile 1");
        Judgement dark = decide(NOTHING, Plan.alike(2), Measurements.BATCH, new ArrayList<>(), tiles);
        assertThat(dark.samples()).isZero();
        assertThat(dark.verdict()).isEqualTo(Verdict.PASS);
    }
}
