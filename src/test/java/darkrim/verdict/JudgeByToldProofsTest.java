package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SamplingSpec;
import darkrim.light.Receiver;
import darkrim.light.Tally;
import darkrim.light.Transport;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is made of proofs that are told and not found: few samples, so that each test is short. */
class JudgeByToldProofsTest {
    private static final int TILES = 35;
    private static final Finish GREY = new Finish("grey", 0.2, 0);
    private static final Scene SCENE = scene(2);

    /** A floor of three cells, a grey wall beside it, and a row of tiles far below that get no light by reflection. */
    private static Scene scene(int tiles) {
        SceneBuilder builder = new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE)
                .sheet("wall", GREY, "wall/back", GREY, Place.IN_CODE)
                .quad("floor", at(-5, -5, 0), at(5, -5, 0), at(5, 5, 0), at(-5, 5, 0))
                .quad("wall", at(5, -5, 0), at(5, -5, 10), at(5, 5, 10), at(5, 5, 0))
                .grid("floor", new CellGrid(at(-5, -5, 0), at(10, 0, 0), at(0, 10, 0), 3, 1));
        for (int i = 0; i < tiles; i++) {
            builder.sheet("tile " + i, Finish.ABSORBER, "tile/back " + i, Finish.ABSORBER, Place.IN_CODE)
                    .triangle("tile " + i, at(i, 0, -90), at(i, 1, -90), at(i + 0.5, 0, -90));
        }
        Frame frame = Frame.of(at(0, 0, 200), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        return builder.build(Beam.of(new Pupil(Ring.disc(20), frame)));
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static Surface surface(String name) {
        return SCENE.surface(name).orElseThrow();
    }

    /** Says of some surfaces that they are dark and of all how much they reflect at most. */
    private record Told(Set<String> dark, double bound) implements Prover {
        @Override
        public Evidence darkness(Surface surface) {
            return dark.contains(surface.name())
                    ? new Evidence.ProvedDark(1e-6)
                    : new Evidence.OpenArea(surface.area(), 1);
        }

        @Override
        public Evidence.ExactShare pupilSeen(Surface surface, double share) {
            return Evidence.ExactShare.UNKNOWN;
        }

        @Override
        public double mostReflected(Surface surface, Set<Surface> dark, double limit) {
            return bound;
        }
    }

    private static final Told NOTHING = new Told(Set.of(), Double.POSITIVE_INFINITY);

    /** Hears all that is said, and asks to stop from some question on. */
    private static final class Hearing implements Watch {
        private final List<String> heard = new ArrayList<>();
        private final int stopAt;
        private int asked;

        Hearing(int stopAt) {
            this.stopAt = stopAt;
        }

        @Override
        public void progress(String step, long done, long most) {
            heard.add(step + " " + done + "/" + most);
        }

        @Override
        public synchronized boolean stop() {
            asked++;
            return asked >= stopAt;
        }
    }

    private static Demand demand(Requirement.Condition condition, String... on) {
        return new Demand(
                new Requirement("asked", "chosen", condition, Place.IN_CODE),
                List.of(on).stream().map(JudgeByToldProofsTest::surface).toList());
    }

    private static Requirement.Condition reflected(double limit, Requirement.Per per) {
        return new Requirement.AtMost(LightClass.ONCE_REFLECTED, limit, per);
    }

    private static Judgement decide(Told told, Plan plan, long budget, List<Judgement> looks, Demand... demands) {
        try (Workers workers = new Workers(1)) {
            Judge judge = judge(told, plan, budget, workers);
            List<Demand> asked = List.of(demands);
            return judge.decide(asked, judge.prove(asked, Watch.NONE), Watch.NONE, looks::add);
        }
    }

    private static Judge judge(Told told, Plan plan, long budget, Workers workers) {
        return judge(SCENE, told, plan, budget, workers);
    }

    private static Judge judge(Scene scene, Told told, Plan plan, long budget, Workers workers) {
        return new Judge(Transport.of(scene, 3), told, workers, new SamplingSpec(3, 0.98, budget), plan);
    }

    private static Judgement decide(Told told, Plan plan, Demand... demands) {
        return decide(told, plan, 1_000_000, new ArrayList<>(), demands);
    }

    /** Of 37 surfaces: at the beginning, after 32, and at the end. */
    @Test
    void progressIsToldAfterEvery32Surfaces() {
        Scene scene = scene(TILES);
        List<Surface> tiles = scene.surfaces().stream()
                .filter(each -> each.name().startsWith("tile "))
                .toList();
        Hearing hearing = new Hearing(Integer.MAX_VALUE);
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
        Hearing hearing = new Hearing(Integer.MAX_VALUE);
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
            Proofs proofs = judge(new Told(Set.of("floor"), 0), Plan.FULL, 1, workers)
                    .prove(
                            List.of(
                                    demand(new Requirement.NoDirect(), "floor"),
                                    demand(reflected(1, Requirement.Per.SURFACE), "floor")),
                            new Hearing(1));
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
                        new Told(Set.of("floor"), Double.POSITIVE_INFINITY),
                        record,
                        any,
                        demand(new Requirement.NoDirect(), "floor")))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("floor is proved dark, yet a ray reaches it");
        // One ray is too much for a bound of 0; for another it takes as many as tell the mean.
        for (double bound : new double[] {0, 1e-9}) {
            assertThatThrownBy(() -> decide(new Told(Set.of(), bound), bound == 0 ? record : Plan.values(60), any))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("floor is proved to get less once-reflected light");
        }
        assertThat(decide(new Told(Set.of(), 0.4), record, any).verdict()).isEqualTo(Verdict.PASS);
    }

    /** A bound too low, which the first samples cannot tell: those that a cell in doubt asks for can. */
    @Test
    void aProofThatOnlyManySamplesContradictIsRefusedInTheEnd() {
        Judgement rough = decide(NOTHING, Plan.values(40), demand(reflected(1, Requirement.Per.CELL), "floor"));
        double mean = rough.surfaces().get(0).onceReflected().irradiance().mean();
        double cell = rough.surfaces().get(0).onceReflected().cells().get(2).mean();
        // Between a third of the brightest cell, above which that is not settled, and the mean.
        Told told = new Told(Set.of(), cell / 6 + mean / 2);
        Demand inDoubt = demand(reflected(cell, Requirement.Per.CELL), "floor");
        assertThat(cell / 3).isLessThan(0.8 * mean);
        Plan once = new Plan(2, Plan.Measured.UNDECIDED, 1);
        assertThat(decide(told, once, inDoubt).samples()).isEqualTo(2 * (long) Measurements.BATCH);
        Plan often = new Plan(2, Plan.Measured.UNDECIDED, 8);
        assertThatThrownBy(() -> decide(told, often, inDoubt))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("floor is proved to get less once-reflected light");
    }

    /** Where a bound was proved, samples for the record are held against it: four times as many. */
    @Test
    void samplesForTheRecordAreMoreWhereAProofIsHeldAgainstThem() {
        Judgement judged = decide(
                new Told(Set.of(), 0.4),
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
        Judgement enough = decide(new Told(Set.of(), 0.25), Plan.alike(2), perCell);
        assertThat(enough.verdict()).isEqualTo(Verdict.PASS);
        assertThat(enough.samples()).isZero();
        assertThat(enough.requirements().get(0).outcomes()).hasSize(3).allSatisfy(outcome -> {
            assertThat(outcome.evidence()).isEqualTo(new Evidence.ProvedBound(0.75));
            assertThat(outcome.verdict()).isEqualTo(Verdict.PASS);
        });
        assertThat(enough.requirements().get(0).outcomes())
                .extracting(Outcome::cell)
                .containsExactly(0, 1, 2);
        Judgement more = decide(new Told(Set.of(), Math.nextUp(0.25)), Plan.alike(2), perCell);
        assertThat(more.samples()).isEqualTo(2 * (long) Measurements.BATCH);
        assertThat(more.requirements().get(0).outcomes())
                .allSatisfy(outcome -> assertThat(outcome.evidence()).isInstanceOf(Evidence.Sampled.class));
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

    private static double valueOfTheFloor() {
        return decide(NOTHING, Plan.alike(8), demand(reflected(1, Requirement.Per.SURFACE), "floor"))
                .requirements()
                .get(0)
                .worst()
                .value();
    }

    @Test
    void aStopBetweenTwoLooksIsHeardAndTold() {
        Demand inDoubt = demand(reflected(valueOfTheFloor(), Requirement.Per.SURFACE), "floor");
        Hearing hearing = new Hearing(3);
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
