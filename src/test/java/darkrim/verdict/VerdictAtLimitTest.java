package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Tally;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** What is said where a bound just meets its limit, and which of many outcomes is told first. */
class VerdictAtLimitTest {
    private static final double RISK = 0.01;

    private static final Surface FLOOR = floor();

    private static final Requirement.Condition NO_DIRECT = new Requirement.NoDirect();

    /** A floor of three columns and two rows. */
    private static Surface floor() {
        Frame frame = Frame.of(Vector3D.of(0, 0, 200), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        SceneBuilder builder =
                new SceneBuilder().sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE);
        builder.quad("floor", at(-5, -5), at(5, -5), at(5, 5), at(-5, 5));
        builder.grid("floor", new CellGrid(at(-5, -5), Vector3D.of(10, 0, 0), Vector3D.of(0, 10, 0), 3, 2));
        Scene scene = builder.build(Beam.of(new Pupil(Ring.disc(20), frame)));
        return scene.surface("floor").orElseThrow();
    }

    private static Vector3D at(double x, double y) {
        return Vector3D.of(x, y, 0);
    }

    private static Requirement.Condition atMost(double limit) {
        return new Requirement.AtMost(LightClass.ONCE_REFLECTED, limit, Requirement.Per.SURFACE);
    }

    private static Verdict said(Estimate estimate, double limit) {
        Tally tally = new Tally(
                LightClass.ONCE_REFLECTED,
                estimate,
                Estimate.none(1),
                List.of(),
                new TreeMap<>(),
                new TreeMap<>(),
                Optional.empty());
        return new Target(0, FLOOR, Outcome.WHOLE, atMost(limit))
                .outcome(tally, RISK, 1)
                .verdict();
    }

    @Test
    void aBoundThatJustMeetsTheLimitPassesAndTheNextNumberDoesNot() {
        Estimate estimate = new Estimate(100_000, 0.25, 0.01, 1);
        double upper = new ConfidenceSequence(RISK).upper(estimate, 1);
        double lower = new ConfidenceSequence(RISK).lower(estimate, 1);
        assertThat(said(estimate, upper)).isEqualTo(Verdict.PASS);
        assertThat(said(estimate, Math.nextDown(upper))).isEqualTo(Verdict.UNDECIDED);
        assertThat(said(estimate, lower)).isEqualTo(Verdict.UNDECIDED);
        assertThat(said(estimate, Math.nextDown(lower))).isEqualTo(Verdict.FAIL);
    }

    @Test
    void whereNoLightMayArriveOneRayFailsAndNoneProvesNothing() {
        // 10 samples: the lower bound is 0, so that only what arrived can fail it.
        assertThat(said(new Estimate(10, 1e-6, 1e-12, 1), 0)).isEqualTo(Verdict.FAIL);
        assertThat(said(new Estimate(10, 0, 0, 1), 0)).isEqualTo(Verdict.UNDECIDED);
        assertThat(said(new Estimate(10, 1e-6, 1e-12, 1), 1e-9)).isEqualTo(Verdict.UNDECIDED);
        assertThat(said(Estimate.none(1), 0.5)).isEqualTo(Verdict.UNDECIDED);
    }

    @Test
    void theWidthAtALaterLookCountsPairsAndTheLargestSample() {
        // By hand, for 1,000 samples in pairs at look 3 with the risk 0.01: ln(3 * 3 * 4 / 0.01) = 8.188689.
        Estimate pairs = new Estimate(1000, 0.3, 0.04, 2, 2);
        double byHand = StrictMath.sqrt(2 * 0.04 * 8.188689124444203 / 1000) + 7 * 2 * 8.188689124444203 / (3 * 499);
        ConfidenceSequence sequence = new ConfidenceSequence(RISK);
        assertThat(sequence.width(pairs, 3)).isCloseTo(byHand, within(1e-14));
        // One pair is one sample, which has no variance; two pairs have one.
        assertThat(sequence.width(new Estimate(3, 0.3, 0, 1, 2), 1)).isInfinite();
        assertThat(sequence.width(new Estimate(4, 0.3, 0, 1, 2), 1)).isFinite();
        assertThat(sequence.upper(new Estimate(3, 0.3, 0, 2, 2), 1)).isEqualTo(2);
    }

    @Test
    void theSamplesForAGapBringTheNextWidthToIt() {
        // The width by samples instead of one less: of a million they differ by no more than a part in 1e5.
        ConfidenceSequence sequence = new ConfidenceSequence(RISK);
        Estimate known = new Estimate(1000, 0.3, 0.04, 2);
        double samples = sequence.samplesFor(known, 1e-3, 2);
        Estimate then = new Estimate(Math.round(samples), 0.3, 0.04, 2);
        assertThat(sequence.width(then, 3)).isCloseTo(1e-3, within(1e-8));
        assertThat(sequence.samplesFor(known, 0, 2)).isInfinite();
    }

    private static Outcome outcome(Verdict verdict, double value, Evidence evidence) {
        return new Outcome(FLOOR, Outcome.WHOLE, verdict, value, evidence);
    }

    private static Outcome outcome(Verdict verdict, double value) {
        return outcome(verdict, value, new Evidence.OpenArea(1, 1));
    }

    private static RequirementResult result(Requirement.Condition condition, Outcome... outcomes) {
        return RequirementResult.of(new Requirement("asked", "floor", condition, Place.IN_CODE), List.of(outcomes));
    }

    @Test
    void theWorstIsAFailureThenADoubtThenTheValueFarthestToTheWrongSide() {
        Outcome fails = outcome(Verdict.FAIL, 0.1);
        Outcome failsMore = outcome(Verdict.FAIL, 0.2);
        Outcome unknown = outcome(Verdict.UNDECIDED, Double.NaN);
        Outcome passes = outcome(Verdict.PASS, 0.9);
        Outcome negative = outcome(Verdict.UNDECIDED, -1);
        assertThat(result(atMost(1), passes, unknown, fails, negative, failsMore)
                        .worstFirst())
                .containsExactly(failsMore, fails, unknown, negative, passes);
        // Much of a pupil or of a distance is good: less of it is worse.
        assertThat(result(new Requirement.PupilSeen(1), passes, unknown, failsMore, fails)
                        .worstFirst())
                .containsExactly(fails, failsMore, unknown, passes);
        Requirement.Condition apart = new Requirement.Clearance("other", 1, Optional.empty(), Requirement.Shapes.WARM);
        assertThat(result(apart, failsMore, fails).worst()).isSameAs(fails);
        assertThat(result(atMost(1)).verdict()).isEqualTo(Verdict.UNDECIDED);
    }

    @Test
    void onlyPassesByProofOfDarknessAreTakenBackInDoubt() {
        Outcome dark = outcome(Verdict.PASS, 0, new Evidence.ProvedDark(0));
        Outcome lit = outcome(Verdict.FAIL, 1);
        assertThat(result(NO_DIRECT, dark).doubting((surface, proof) -> true).verdict())
                .isEqualTo(Verdict.UNDECIDED);
        assertThat(result(NO_DIRECT, dark).doubting((surface, proof) -> false).verdict())
                .isEqualTo(Verdict.PASS);
        assertThat(result(NO_DIRECT, dark, lit)
                        .doubting((surface, proof) -> true)
                        .verdict())
                .isEqualTo(Verdict.FAIL);
        // A limit that darkness meets is in the same doubt; one that samples or a bound meet is judged as they say.
        assertThat(result(atMost(1), dark).doubting((surface, proof) -> true).verdict())
                .isEqualTo(Verdict.UNDECIDED);
        Outcome bounded = outcome(Verdict.PASS, 0, new Evidence.ProvedBound(0.5));
        assertThat(result(atMost(1), bounded).doubting((surface, proof) -> true).verdict())
                .isEqualTo(Verdict.PASS);
        RequirementResult result = result(NO_DIRECT, dark);
        Judgement judged = new Judgement(List.of(result), List.of(), 0, 0, false, new BatchMeans());
        assertThat(judged.doubting((surface, proof) -> true).verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(judged.verdict()).isEqualTo(Verdict.PASS);
    }

    @Test
    void theLeastMarginIsToldAndOfTwoAlikeTheExactOne() {
        LightMargin exact = new LightMargin(2, false, "edge", Optional.empty());
        Outcome none = outcome(Verdict.PASS, 0, new Evidence.ProvedDark(0));
        Outcome two = outcome(Verdict.PASS, 0, new Evidence.ProvedDark(0, Optional.of(exact)));
        Outcome atLeastTwo = outcome(Verdict.PASS, 0, new Evidence.ProvedDark(0, Optional.of(LightMargin.noLess(2))));
        Outcome three = outcome(Verdict.PASS, 0, new Evidence.ProvedDark(0, Optional.of(LightMargin.noLess(3))));
        assertThat(result(NO_DIRECT, none, three, atLeastTwo, two).leastMargin())
                .containsSame(two);
        assertThat(result(NO_DIRECT, none, three).leastMargin()).containsSame(three);
        LightMargin farther = new LightMargin(4, false, "edge", Optional.empty());
        Outcome four = outcome(Verdict.PASS, 0, new Evidence.ProvedDark(0, Optional.of(farther)));
        assertThat(result(NO_DIRECT, four, three).leastMargin()).containsSame(three);
        assertThat(result(NO_DIRECT, none).leastMargin()).isEmpty();
        assertThat(outcome(Verdict.FAIL, 1).evidence().margin()).isEmpty();
        Evidence known =
                result(NO_DIRECT, none).with(Map.of(FLOOR, exact)).worst().evidence();
        assertThat(known.margin()).contains(exact);
        assertThat(none.with(Map.of())).isSameAs(none);
    }

    @Test
    void anExactMarginSaysMoreThanABoundAndTheGreaterBoundMoreThanTheOther() {
        LightMargin exact = new LightMargin(1, false, "edge", Optional.empty());
        LightMargin two = LightMargin.noLess(2);
        LightMargin three = LightMargin.noLess(3);
        assertThat(two.or(exact)).isSameAs(exact);
        assertThat(exact.or(two)).isSameAs(exact);
        assertThat(two.or(three)).isSameAs(three);
        assertThat(three.or(two)).isSameAs(three);
        assertThat(two.or(LightMargin.noLess(2))).isSameAs(two);
    }

    @Test
    void aShareIsKnownWhereItsBoundsAreNoFartherApartThanAThousandth() {
        assertThat(new Evidence.ExactShare(0, 0.001, Optional.empty()).isNear()).isTrue();
        assertThat(new Evidence.ExactShare(0, Math.nextUp(0.001), Optional.empty()).isNear())
                .isFalse();
        assertThat(Evidence.ExactShare.WHOLE.isWhole()).isTrue();
        assertThat(new Evidence.ExactShare(Math.nextDown(1.0), 1, Optional.empty()).isWhole())
                .isFalse();
    }

    @Test
    void onlyWhatIsProvedDarkCountsAsDark() {
        assertThat(Proofs.provedDark(Map.of(FLOOR, new Evidence.OpenArea(1e-9, 1e-9))))
                .isEmpty();
        assertThat(Proofs.provedDark(Map.of(FLOOR, new Evidence.ProvedDark(0)))).containsExactly(FLOOR);
        Proofs proofs = new Proofs(Map.of(FLOOR, new Evidence.ProvedDark(0)), Map.of(), Map.of(FLOOR, 0.25));
        assertThat(proofs.provedDark()).containsExactly(FLOOR);
        assertThat(proofs.bound(FLOOR)).hasValue(0.25);
        assertThat(proofs.share(FLOOR, 0.5)).isSameAs(Evidence.ExactShare.UNKNOWN);
    }

    @Test
    void aCellIsToldByColumnAndRowFromOne() {
        assertThat(new Outcome(FLOOR, 5, Verdict.FAIL, 1, new Evidence.OpenArea(1, 1)).where())
                .isEqualTo("floor cell (3,2)");
        assertThat(new Outcome(FLOOR, 0, Verdict.FAIL, 1, new Evidence.OpenArea(1, 1)).where())
                .isEqualTo("floor cell (1,1)");
        assertThat(outcome(Verdict.FAIL, 1).where()).isEqualTo("floor");
    }

    @Test
    void samplesFillWholeBatches() {
        assertThat(Plan.batchesOf(0)).isEqualTo(1);
        assertThat(Plan.batchesOf(Measurements.BATCH)).isEqualTo(1);
        assertThat(Plan.batchesOf(Measurements.BATCH + 1L)).isEqualTo(2);
        assertThat(Plan.batchesOf(Long.MAX_VALUE / 2)).isEqualTo(Integer.MAX_VALUE);
        assertThat(Plan.samplesOf(3)).isEqualTo(3L * Measurements.BATCH);
    }

    @Test
    void everyCellIsANumberOfItsOwnWhereTheLimitIsForCells() {
        Requirement.Condition perCell = new Requirement.AtMost(LightClass.ONCE_REFLECTED, 0.1, Requirement.Per.CELL);
        assertThat(targets(perCell)).extracting(Target::cell).containsExactly(0, 1, 2, 3, 4, 5);
        assertThat(targets(atMost(0.1))).extracting(Target::cell).containsExactly(Outcome.WHOLE);
        assertThat(targets(NO_DIRECT)).extracting(Target::cell).containsExactly(Outcome.WHOLE);
    }

    private static List<Target> targets(Requirement.Condition condition) {
        Requirement requirement = new Requirement("asked", "floor", condition, Place.IN_CODE);
        return Target.of(0, new Demand(requirement, List.of(FLOOR)), FLOOR);
    }
}
