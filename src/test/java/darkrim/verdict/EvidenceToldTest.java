package darkrim.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.ThermalShape;
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
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What goes with a verdict: margins beside its evidence, names, means of batches, and how far a number is from its limit. */
class EvidenceToldTest {
    private static final Scene SCENE = scene();
    private static final Surface FLOOR = SCENE.surface("floor").orElseThrow();
    private static final Surface UNDER = SCENE.surface("under").orElseThrow();

    private static Scene scene() {
        Frame frame = Frame.of(Vector3D.of(0, 0, 200), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        SceneBuilder builder =
                new SceneBuilder().sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE);
        builder.quad("floor", at(-5, -5), at(5, -5), at(5, 5), at(-5, 5));
        builder.grid("floor", new CellGrid(at(-5, -5), at(10, 0), at(0, 10), 2, 1));
        return builder.build(Beam.of(new Pupil(Ring.disc(20), frame)));
    }

    private static Vector3D at(double x, double y) {
        return Vector3D.of(x, y, 0);
    }

    private static Outcome outcome(Surface surface, Evidence evidence) {
        return new Outcome(surface, Outcome.WHOLE, Verdict.PASS, 0, evidence);
    }

    private static RequirementResult result(Requirement.Condition condition, Outcome... outcomes) {
        return RequirementResult.of(new Requirement("asked", "floor", condition, Place.IN_CODE), List.of(outcomes));
    }

    private static Tally tally(LightClass light, double mean, double... cells) {
        List<Estimate> each = java.util.Arrays.stream(cells)
                .mapToObj(cell -> new Estimate(10, cell, 0, 1))
                .toList();
        return new Tally(
                light,
                new Estimate(20, mean, 0, 1),
                Estimate.none(1),
                each,
                new TreeMap<>(),
                new TreeMap<>(),
                Optional.empty());
    }

    @Test
    void marginsGoBesideTheEvidenceOfTheirSurfaceAndNoOther() {
        LightMargin margin = new LightMargin(-0.5, false, "edge", Optional.of(at(1, 2)));
        Evidence.WitnessRay ray = new Evidence.WitnessRay(Vector3D.of(3, 4, 12), Vector3D.ZERO);
        RequirementResult asked =
                result(new Requirement.NoDirect(), outcome(FLOOR, ray), outcome(UNDER, new Evidence.ProvedDark(0.25)));
        Tally direct = tally(LightClass.DIRECT, 0);
        Tally reflected = tally(LightClass.ONCE_REFLECTED, 0);
        SurfaceResult floor = new SurfaceResult(FLOOR, direct, reflected, Optional.of(ray), OptionalDouble.of(0.125));
        SurfaceResult under = new SurfaceResult(
                UNDER, direct, reflected, Optional.of(new Evidence.ProvedDark(0.25)), OptionalDouble.empty());
        BatchMeans means = new BatchMeans();
        Judgement judged = new Judgement(List.of(asked), List.of(floor, under), 40, 0.001, true, means)
                .with(Map.of(FLOOR, margin));

        assertThat(judged.requirements().get(0).outcomes())
                .extracting(each -> each.evidence().margin())
                .containsExactly(Optional.of(margin), Optional.empty());
        assertThat(judged.surfaces())
                .extracting(each -> each.darkness().orElseThrow().margin())
                .containsExactly(Optional.of(margin), Optional.empty());
        // All else stays what it was.
        Evidence.WitnessRay told = (Evidence.WitnessRay)
                judged.requirements().get(0).outcomes().get(0).evidence();
        assertThat(told.length()).isEqualTo(13);
        assertThat(told).isEqualTo(new Evidence.WitnessRay(ray.onPupil(), ray.onSurface(), Optional.of(margin)));
        assertThat(judged.requirements().get(0).requirement()).isSameAs(asked.requirement());
        assertThat(judged.surfaces().get(0).mostReflected()).hasValue(0.125);
        assertThat(judged.surfaces().get(0).direct()).isSameAs(direct);
        assertThat(judged.surfaces().get(1)).isEqualTo(under);
        assertThat(judged.stopped()).isTrue();
        assertThat(judged.samples()).isEqualTo(40);
        assertThat(judged.batches()).isSameAs(means);
    }

    @Test
    void evidenceThatIsNotOfDirectLightHasNoMargin() {
        LightMargin margin = LightMargin.noLess(1);
        for (Evidence evidence :
                List.of(Evidence.ExactShare.WHOLE, new Evidence.OpenArea(1, 0.5), new Evidence.ProvedBound(0.5))) {
            assertThat(evidence.with(margin)).isSameAs(evidence);
            assertThat(evidence.margin()).isEmpty();
        }
        assertThat(new Evidence.ProvedDark(0.25).with(margin))
                .isEqualTo(new Evidence.ProvedDark(0.25, Optional.of(margin)));
    }

    @Test
    void onlyDarknessIsDoubted() {
        Outcome dark = outcome(FLOOR, new Evidence.ProvedDark(0));
        RequirementResult share = result(new Requirement.PupilSeen(0.5), outcome(FLOOR, Evidence.ExactShare.WHOLE));
        assertThat(share.doubting((surface, proof) -> true)).isSameAs(share);
        // Taken back, it tells of the facets only, and its value is not known any more.
        Outcome doubted = result(new Requirement.NoDirect(), dark)
                .doubting((surface, proof) -> true)
                .outcomes()
                .get(0);
        assertThat(doubted)
                .isEqualTo(new Outcome(
                        FLOOR,
                        Outcome.WHOLE,
                        Verdict.UNDECIDED,
                        Double.NaN,
                        new Evidence.DarkBehindFacets(0, Optional.empty())));
        // Only a pass can be taken back: a failure needs no proof of darkness.
        Outcome lit = new Outcome(FLOOR, Outcome.WHOLE, Verdict.FAIL, 1, new Evidence.WitnessRay(at(0, 0), at(1, 0)));
        assertThat(result(new Requirement.NoDirect(), lit)
                        .doubting((surface, proof) -> true)
                        .verdict())
                .isEqualTo(Verdict.FAIL);
    }

    @ParameterizedTest
    @CsvSource({
        "COLD, , 'floor to wall, cold'",
        "WARM, , 'floor to wall, as drawn'",
        "COLD, 2, 'floor to wall, on the way in, cold'",
        "WARM, 0, 'floor to wall, on the way in, as drawn'"
    })
    void aDistanceIsToldWithBothSurfacesAndTheShape(ThermalShape shape, Double raised, String said) {
        OptionalDouble way = raised == null ? OptionalDouble.empty() : OptionalDouble.of(raised);
        Evidence.Distance distance =
                new Evidence.Distance(1, shape, "floor", at(0, 0), "wall", at(1, 0), way, false, 0);
        assertThat(outcome(FLOOR, distance).where()).isEqualTo(said);
    }

    @Test
    void whatIsDecidedWithoutLightStaysAsItIs() {
        RequirementResult apart = result(
                new Requirement.Clearance("wall", 1, Optional.empty(), Requirement.Shapes.WARM),
                outcome(FLOOR, new Evidence.OpenArea(1, 1)));
        Demand demand = Demand.decided(apart);
        assertThat(demand.requirement()).isSameAs(apart.requirement());
        assertThat(demand.surfaces()).isEmpty();
        assertThat(demand.decided()).containsSame(apart);
    }

    @Test
    void meansOfBatchesAreThoseOfTheSurfaceOrOfOneCellInTheirOrder() {
        BatchMeans means = new BatchMeans();
        means.add(FLOOR, LightClass.DIRECT, tally(LightClass.DIRECT, 0.5, 0.25, 0.75));
        means.add(FLOOR, LightClass.DIRECT, tally(LightClass.DIRECT, 0.25, 0.125, 0.375));
        means.add(FLOOR, LightClass.ONCE_REFLECTED, tally(LightClass.ONCE_REFLECTED, 1));
        assertThat(means.of(FLOOR, LightClass.DIRECT, Outcome.WHOLE)).containsExactly(0.5, 0.25);
        assertThat(means.of(FLOOR, LightClass.DIRECT, 1)).containsExactly(0.75, 0.375);
        assertThat(means.of(FLOOR, LightClass.ONCE_REFLECTED, Outcome.WHOLE)).containsExactly(1.0);
        assertThat(means.of(UNDER, LightClass.DIRECT, Outcome.WHOLE)).isEmpty();

        BatchMeans same = new BatchMeans();
        same.add(FLOOR, LightClass.DIRECT, tally(LightClass.DIRECT, 0.5, 0.25, 0.75));
        assertThat(same).isNotEqualTo(means).isNotEqualTo(new Object());
        same.add(FLOOR, LightClass.DIRECT, tally(LightClass.DIRECT, 0.25, 0.125, 0.375));
        same.add(FLOOR, LightClass.ONCE_REFLECTED, tally(LightClass.ONCE_REFLECTED, 1));
        assertThat(same).isEqualTo(means).hasSameHashCodeAs(means);
        assertThat(new BatchMeans().hashCode()).isNotEqualTo(means.hashCode());
    }

    private static Target target(double limit) {
        return new Target(
                0, FLOOR, Outcome.WHOLE, new Requirement.AtMost(LightClass.DIRECT, limit, Requirement.Per.SURFACE));
    }

    private static Outcome known(double limit, Estimate estimate) {
        Tally tally = new Tally(
                LightClass.DIRECT,
                estimate,
                Estimate.none(1),
                List.of(),
                new TreeMap<>(),
                new TreeMap<>(),
                Optional.empty());
        return target(limit).outcome(tally, 0.01, 2);
    }

    @Test
    void aNumberSeemsToFailAboveItsLimitOnlyAndNotWhereNothingIsKnown() {
        assertThat(target(0.5).seemsToFail(known(0.5, new Estimate(10, 0.5, 0, 1))))
                .isFalse();
        assertThat(target(0.5).seemsToFail(known(0.5, new Estimate(10, 0.75, 0, 1))))
                .isTrue();
        assertThat(target(0.5).seemsToFail(known(0.5, new Estimate(10, 0.25, 0, 1))))
                .isFalse();
        assertThat(target(0.5).seemsToFail(known(0.5, Estimate.none(1)))).isFalse();
        assertThat(known(0.5, Estimate.none(1)).value()).isNaN();
        assertThat(known(0.5, new Estimate(10, 0.25, 0, 1)).value()).isEqualTo(0.25);
        // What proof decides alone has no number: any light is more than it may be.
        Target dark = new Target(0, FLOOR, Outcome.WHOLE, new Requirement.NoDirect());
        assertThat(dark.light()).isEqualTo(LightClass.DIRECT);
        assertThat(dark.seemsToFail(known(0.5, new Estimate(10, 0.25, 0, 1)))).isTrue();
        assertThat(dark.seemsToFail(known(0.5, new Estimate(10, 0, 0, 1)))).isFalse();
    }

    /** The gap of a mean to its limit is the same on both sides; by hand for the next look, 3, of samples that do not vary: n = 7 b L / (3 gap). */
    @Test
    void theSamplesToDecideAreThoseForTheGapToTheLimit() {
        double logarithm = StrictMath.log(3.0 * 3 * 4 / 0.01);
        double byHand = 7 * logarithm / (3 * 0.25);
        for (double mean : new double[] {0.25, 0.75}) {
            Outcome known = known(0.5, new Estimate(10, mean, 0, 1));
            assertThat(target(0.5).samplesToDecide(known)).isCloseTo(byHand, within(1e-9));
        }
        assertThat(target(0.5).samplesToDecide(known(0.5, Estimate.none(1)))).isInfinite();
        // One sample is enough to go by.
        assertThat(target(0.5).samplesToDecide(known(0.5, new Estimate(1, 0.25, 0, 1))))
                .isCloseTo(byHand, within(1e-9));
    }

    @Test
    void aPlanThatMeasuresNothingIsRefused() {
        assertThatThrownBy(() -> new Plan(0, Plan.Measured.VALUES, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Plan(1, Plan.Measured.VALUES, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThat(new Plan(1, Plan.Measured.VALUES, 1).firstBatches()).isEqualTo(1);
        assertThat(Plan.ONCE.looks()).isEqualTo(1);
        assertThat(Plan.FULL.measured()).isEqualTo(Plan.Measured.EVERYTHING);
    }
}
