package darkrim.verdict;

import static darkrim.verdict.ToldProofs.NOTHING;
import static darkrim.verdict.ToldProofs.TILES;
import static darkrim.verdict.ToldProofs.at;
import static darkrim.verdict.ToldProofs.decide;
import static darkrim.verdict.ToldProofs.demand;
import static darkrim.verdict.ToldProofs.judge;
import static darkrim.verdict.ToldProofs.reflected;
import static darkrim.verdict.ToldProofs.scene;
import static darkrim.verdict.ToldProofs.surface;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.diagnostic.Place;
import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What is made of proofs that are told and not found. */
class JudgeByToldProofsTest {
    /** Of 37 surfaces: at the beginning, after 32, and at the end. */
    @Test
    void progressIsToldAfterEvery32Surfaces() {
        Scene scene = scene(TILES);
        List<Surface> tiles = scene.surfaces().stream()
                .filter(each -> each.name().startsWith("tile "))
                .toList();
        ToldProofs.Hearing hearing = new ToldProofs.Hearing(Integer.MAX_VALUE);
        try (Workers workers = new Workers(1)) {
            Requirement dark = new Requirement("asked", "tile *", new Requirement.NoDirect(), Place.IN_CODE);
            Proofs proofs =
                    judge(scene, NOTHING, Plan.FULL, 1, workers).prove(List.of(new Demand(dark, tiles)), hearing);
            assertThat(proofs.dark()).hasSize(TILES + 2);
        }
        assertThat(hearing.heard)
                .startsWith("proving darkness 0/37", "proving darkness 32/37", "proving darkness 37/37")
                .containsOnlyOnce("proving darkness 0/37");
    }

    @Test
    void ofBoundsProgressIsToldBeforeEachAndAtTheEnd() {
        ToldProofs.Hearing hearing = new ToldProofs.Hearing(Integer.MAX_VALUE);
        try (Workers workers = new Workers(1)) {
            judge(NOTHING, Plan.FULL, 1, workers)
                    .prove(List.of(demand(reflected(1, Requirement.Per.SURFACE), "floor", "wall")), hearing);
        }
        String step = "bounding reflected light ";
        assertThat(hearing.heard).containsSubsequence(step + "0/2", step + "1/2", step + "2/2");
    }

    @Test
    void whatAStopLeavesOutIsOpenInFull() {
        try (Workers workers = new Workers(1)) {
            Proofs proofs = judge(new ToldProofs.Told(Set.of("floor"), 0), Plan.FULL, 1, workers)
                    .prove(
                            List.of(
                                    demand(new Requirement.NoDirect(), "floor"),
                                    demand(reflected(1, Requirement.Per.SURFACE), "floor")),
                            new ToldProofs.Hearing(1));
            assertThat(proofs.darkness(surface("floor"))).contains(new Evidence.OpenArea(100, 1));
            assertThat(proofs.bound(surface("floor"))).isEmpty();
        }
    }

    /** A prover that calls a floor dark on which the beam shines, or free of what the wall throws on it, is not believed. */
    @Test
    void aProofThatSamplesContradictIsRefused() {
        Demand any = demand(reflected(0.5, Requirement.Per.SURFACE), "floor");
        Plan record = new Plan(2, Plan.Measured.EVERYTHING, 1);
        assertThatThrownBy(() -> decide(
                        new ToldProofs.Told(Set.of("floor"), Double.POSITIVE_INFINITY),
                        record,
                        any,
                        demand(new Requirement.NoDirect(), "floor")))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("floor is proved dark, yet a ray reaches it");
        // One ray is too much for a bound of 0; for another it takes as many as tell the mean.
        for (double bound : new double[] {0, 1e-9}) {
            assertThatThrownBy(() ->
                            decide(new ToldProofs.Told(Set.of(), bound), bound == 0 ? record : Plan.values(60), any))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("floor is proved to get less once-reflected light");
        }
        assertThat(decide(new ToldProofs.Told(Set.of(), 0.4), record, any).verdict())
                .isEqualTo(Verdict.PASS);
    }

    /** A bound too low, which the first samples cannot tell: those that a cell in doubt asks for can. */
    @Test
    void aProofThatOnlyManySamplesContradictIsRefusedInTheEnd() {
        Judgement rough = decide(NOTHING, Plan.values(40), demand(reflected(1, Requirement.Per.CELL), "floor"));
        double mean = rough.surfaces().get(0).onceReflected().irradiance().mean();
        double cell = rough.surfaces().get(0).onceReflected().cells().get(2).mean();
        // Between a third of the brightest cell, above which that is not settled, and the mean.
        ToldProofs.Told told = new ToldProofs.Told(Set.of(), cell / 6 + mean / 2);
        Demand inDoubt = demand(reflected(cell, Requirement.Per.CELL), "floor");
        assertThat(cell / 3).isLessThan(0.8 * mean);
        Plan once = new Plan(2, Plan.Measured.UNDECIDED, 1);
        assertThat(decide(told, once, inDoubt).samples()).isEqualTo(2 * (long) Measurements.BATCH);
        Plan often = new Plan(2, Plan.Measured.UNDECIDED, 8);
        assertThatThrownBy(() -> decide(told, often, inDoubt))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("floor is proved to get less once-reflected light");
    }

    /** What is decided without light passes through as it is, and nothing is sampled for it. */
    @Test
    void whatIsDecidedAlreadyStaysAsItIs() {
        Outcome apart = new Outcome(surface("floor"), Outcome.WHOLE, Verdict.FAIL, 0.5, new Evidence.OpenArea(1, 1));
        RequirementResult result = RequirementResult.of(
                new Requirement("apart", "floor", new Requirement.PupilSeen(1), Place.IN_CODE), List.of(apart));
        Judgement judged = decide(NOTHING, Plan.alike(2), Demand.decided(result));
        assertThat(judged.requirements()).containsExactly(result);
        assertThat(judged.samples()).isZero();
    }

    /** No cell of three gets more than three times the mean: so much below the limit must the bound lie, and so much is told of each. */
    @Test
    void aBoundIsHeldAgainstAThirdOfTheLimitOfACell() {
        Demand perCell = demand(reflected(0.75, Requirement.Per.CELL), "floor");
        Judgement enough = decide(new ToldProofs.Told(Set.of(), 0.25), Plan.alike(2), perCell);
        assertThat(enough.verdict()).isEqualTo(Verdict.PASS);
        assertThat(enough.samples()).isZero();
        assertThat(enough.requirements().get(0).outcomes()).hasSize(3).allSatisfy(outcome -> {
            assertThat(outcome.evidence()).isEqualTo(new Evidence.ProvedBound(0.75));
            assertThat(outcome.verdict()).isEqualTo(Verdict.PASS);
        });
        assertThat(enough.requirements().get(0).outcomes())
                .extracting(Outcome::cell)
                .containsExactly(0, 1, 2);
        Judgement more = decide(new ToldProofs.Told(Set.of(), Math.nextUp(0.25)), Plan.alike(2), perCell);
        assertThat(more.samples()).isEqualTo(2 * (long) Measurements.BATCH);
        assertThat(more.requirements().get(0).outcomes())
                .allSatisfy(outcome -> assertThat(outcome.evidence()).isInstanceOf(Evidence.Sampled.class));
    }

    @Test
    void whatIsProvedIsToldByTheKindOfProof() {
        Map<Surface, Evidence> dark = Map.of(
                surface("floor"), new Evidence.ProvedDark(1e-6),
                surface("under"), new Evidence.WitnessRay(at(0, 0, 200), at(0, 0, 0)),
                surface("wall"), new Evidence.OpenArea(1, 0.01));
        try (Workers workers = new Workers(1)) {
            Judgement judged = judge(NOTHING, Plan.alike(1), 1, workers)
                    .decide(
                            List.of(
                                    demand(new Requirement.NoDirect(), "floor"),
                                    demand(new Requirement.NoDirect(), "under"),
                                    demand(new Requirement.NoDirect(), "wall")),
                            new Proofs(dark, Map.of(), Map.of()),
                            Watch.NONE);
            assertThat(judged.requirements())
                    .extracting(RequirementResult::verdict)
                    .containsExactly(Verdict.PASS, Verdict.FAIL, Verdict.UNDECIDED);
            assertThat(judged.surfaces().get(0).darkness()).isEqualTo(Optional.of(new Evidence.ProvedDark(1e-6)));
        }
    }
}
