package darkrim.study.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Requirement;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.CoarseHood;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginScope;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Evidence;
import darkrim.verdict.Judgement;
import darkrim.verdict.Outcome;
import darkrim.verdict.Plan;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A dimension is dragged, and what is said follows. */
class LiveLayoutTest {
    /** A margin of a table is found within 1e-6 mm, and a share of 1e-6 of it; two of them may differ by twice that. */
    private static final double TABLE = 2e-6;

    private static Effort effort(long samples) {
        return new Effort(2, Optional.empty(), Optional.of(samples), MarginScope.REQUIREMENTS);
    }

    /** The closed form is that of one line past one edge. */
    @Test
    void verdictAndMarginFollowTheEdgeThatIsDragged() throws InterruptedException {
        Heard heard = new Heard();
        try (LiveLayout live = new LiveLayout(DraggedEdge.family(), effort(0), heard)) {
            for (double edge : new double[] {-5, -4, -3.9, -3.8, -3.7, -3, -2, -1.9, -1.8, -4, -0.5}) {
                LiveState.Placed found = heard.finished(live.move("edge", edge));
                double expected = DraggedEdge.margin(edge);
                RequirementMargin margin = found.margins().get("dark");
                assertThat(margin.margin())
                        .as("edge at %s", edge)
                        .isCloseTo(expected, within(1e-6 + 1e-6 * Math.abs(expected)));
                assertThat(margin.where()).isEqualTo("screen/front");
                assertThat(verdict(found, "dark")).isEqualTo(expected > 0 ? Verdict.PASS : Verdict.FAIL);
                assertThat(found.chosen()).isEqualTo(Map.of("edge", edge));
            }
        }
    }

    private static Verdict verdict(LiveState.Placed state, String requirement) {
        return result(state, requirement).verdict();
    }

    private static RequirementResult result(LiveState.Placed state, String requirement) {
        return state.judgement().requirements().stream()
                .filter(each -> each.requirement().name().equals(requirement))
                .findFirst()
                .orElseThrow();
    }

    /** Through changes of verdicts of both revisions; a check knows nothing of the position before. Some positions only with -Dlong=true. */
    @ParameterizedTest
    @CsvSource({
        "nightglow-b,opening,37.00 37.02 37.45,36.80 36.90 37.10 37.38 37.50 37.60",
        "nightglow-a,lid_height,3.6,3.5 3.7 3.8 3.9",
        "nightglow-a,opening,38.6,37.0 37.1 37.3 38.1"
    })
    void aDragSaysWhatAFreshCheckSaysAtEveryPosition(String layout, String dimension, String some, String more)
            throws InterruptedException, UnusableInput {
        String values = Boolean.getBoolean("long") ? some + " " + more : some;
        LayoutFamily family = LayoutFamily.of(Path.of("geometries", layout + ".yaml"));
        Effort effort = effort(500_000);
        Plan plan = new Plan(2, Plan.Measured.UNDECIDED, Integer.MAX_VALUE);
        Heard heard = new Heard();
        try (LiveLayout live = new LiveLayout(family, effort, heard)) {
            for (String value : values.split(" ", -1)) {
                Map<String, Double> chosen = Map.of(dimension, Double.valueOf(value));
                long move = live.moveTo(chosen);
                LiveState.Placed found = heard.finished(move);
                Findings findings = new Findings();
                CheckResult fresh = Check.of(family.with(chosen, findings), findings, effort, plan, Watch.NONE);
                Judgement expected = fresh.judgement();
                for (int i = 0; i < expected.requirements().size(); i++) {
                    RequirementResult asked = expected.requirements().get(i);
                    String name = value + " " + asked.requirement().name();
                    assertThat(verdict(found, asked.requirement().name()))
                            .as(name)
                            .isEqualTo(asked.verdict());
                    assertThat(verdict(
                                    heard.placed(move).get(0),
                                    asked.requirement().name()))
                            .as("%s at once", name)
                            .isIn(asked.verdict(), Verdict.UNDECIDED);
                    RequirementMargin figure = RequirementMargin.of(fresh).get(i);
                    if (figure.unit() == MarginUnit.MILLIMETRES) {
                        double margin =
                                found.margins().get(asked.requirement().name()).margin();
                        if (Double.isNaN(figure.margin())) {
                            assertThat(margin).as(name).isNaN();
                        } else {
                            assertThat(margin)
                                    .as(name)
                                    .isCloseTo(figure.margin(), within(TABLE + TABLE * Math.abs(figure.margin())));
                        }
                    }
                }
                assertThat(found.judgement().samples()).isEqualTo(expected.samples());
            }
        }
    }

    @Test
    void detailOnlyGrowsAndWhatSamplingDecidedStays() throws InterruptedException, UnusableInput {
        Heard heard = new Heard();
        try (LiveLayout live = new LiveLayout(DraggedEdge.family(), effort(4_000_000), heard)) {
            // Without a limit, the value; near it many looks are needed.
            double value = result(heard.finished(0), "clean").worst().value();
            long move = live.move("limit", 1.05 * value);
            assertThat(verdict(heard.finished(move), "clean")).isEqualTo(Verdict.PASS);
            List<LiveState.Placed> states = heard.placed(move);
            assertThat(states).map(LiveState.Placed::detail).isSorted();
            assertThat(states).map(LiveState.Placed::detail).contains(LiveDetail.values());
            List<Evidence.Sampled> looks = new ArrayList<>();
            for (LiveState.Placed state : states) {
                Outcome outcome = result(state, "clean").worst();
                if (outcome.evidence() instanceof Evidence.Sampled sampled
                        && sampled.estimate().samples() > 0) {
                    looks.add(sampled);
                    assertThat(sampled.lower())
                            .isLessThanOrEqualTo(sampled.estimate().mean());
                    assertThat(sampled.upper())
                            .isGreaterThanOrEqualTo(sampled.estimate().mean());
                }
            }
            assertThat(looks).hasSizeGreaterThan(3);
            assertThat(looks).map(look -> look.estimate().samples()).isSorted();
            assertThat(looks.get(looks.size() - 1).upper()
                            - looks.get(looks.size() - 1).lower())
                    .isLessThan(looks.get(0).upper() - looks.get(0).lower());
        }
    }

    @Test
    void laterMovesOvertakeEarlierOnesAndStatesComeInOrder() throws InterruptedException {
        CountDownLatch allMoved = new CountDownLatch(1);
        Heard heard = new Heard();
        try (LiveLayout live = new LiveLayout(DraggedEdge.family(), effort(1_000_000_000_000L), state -> {
            heard.accept(state);
            waitFor(allMoved);
        })) {
            long last = 0;
            for (int i = 0; i < 100; i++) {
                last = live.move("edge", -5 + 0.01 * i);
            }
            long end = live.move("limit", 1);
            assertThat(end).isEqualTo(last + 1);
            allMoved.countDown();
            LiveState.Placed found = heard.finished(end);
            assertThat(found.chosen()).isEqualTo(Map.of("edge", -5 + 0.01 * 99, "limit", 1.0));
            assertThat(live.chosen()).isEqualTo(found.chosen());
            assertThat(live.state()).contains(found);
            assertThat(heard.all()).map(LiveState::move).isSorted();
            // The first state was held up until all moves were made: what lies between was passed over.
            assertThat(heard.all().stream().map(LiveState::move).distinct()).hasSizeLessThanOrEqualTo(2);
        }
    }

    private static void waitFor(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void aMoveStopsSamplingThatIsFarFromDone() throws InterruptedException {
        Heard heard = new Heard();
        try (LiveLayout live = new LiveLayout(DraggedEdge.family(), effort(Long.MAX_VALUE), heard)) {
            double value = result(heard.finished(0), "clean").worst().value();
            long better = live.move("limit", 1.02 * value);
            // At a limit as near to the value as this a decision takes some 10^8 samples.
            long first = live.move(
                    "limit", result(heard.finished(better), "clean").worst().value());
            LiveState.Placed look = (LiveState.Placed) heard.until(
                    state -> state.move() == first && ((LiveState.Placed) state).detail() == LiveDetail.REFLECTED);
            assertThat(look.judgement().samples()).isPositive();
            long next = live.move("limit", 1);
            assertThat(verdict(heard.finished(next), "clean")).isEqualTo(Verdict.PASS);
            assertThat(heard.placed(first)).map(LiveState.Placed::detail).doesNotContain(LiveDetail.FINISHED);
        }
        int heardByThen = heard.all().size();
        Thread.sleep(50);
        assertThat(heard.all()).as("nothing comes after the end").hasSize(heardByThen);
    }

    @Test
    void aPositionThatCannotBeSaysWhyAndKeepsTheLastGoodOne() throws InterruptedException {
        Heard heard = new Heard();
        try (LiveLayout live = new LiveLayout(DraggedEdge.family(), effort(0), heard)) {
            LiveState.Placed good = heard.finished(live.move("edge", -3));
            long bad = live.move("far", -1);
            LiveState.Impossible found = (LiveState.Impossible) heard.until(state -> state.move() == bad);
            assertThat(found.findings())
                    .anySatisfy(finding -> assertThat(finding.toString()).contains("'far' gives -1 mm"));
            assertThat(found.last()).contains(good);
            assertThat(heard.finished(live.move("far", 60))
                            .margins()
                            .get("dark")
                            .margin())
                    .isCloseTo(good.margins().get("dark").margin(), within(TABLE));
        }
    }

    @Test
    void aNameThatIsNotThereAndAValueThatIsNoneAreRefused() {
        try (LiveLayout live = new LiveLayout(DraggedEdge.family(), effort(0), state -> {})) {
            assertThatThrownBy(() -> live.move("egde", 1)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> live.move("edge", Double.NaN)).isInstanceOf(IllegalArgumentException.class);
            assertThat(live.chosen()).isEmpty();
        }
    }

    @Test
    void aLimitThatNothingWasSampledForStaysUndecided() throws InterruptedException {
        Heard heard = new Heard();
        try (LiveLayout live = new LiveLayout(DraggedEdge.family(), effort(0), heard)) {
            LiveState.Placed found = heard.finished(live.move("limit", 1e-6));
            assertThat(verdict(found, "clean")).isEqualTo(Verdict.UNDECIDED);
            assertThat(found.margins()).doesNotContainKey("clean");
            assertThat(found.judgement().requirements())
                    .map(RequirementResult::requirement)
                    .map(Requirement::name)
                    .containsExactly("dark", "clean");
        }
    }

    /** What is told beside a verdict while a dimension is dragged must not say that it holds, as a check does not. */
    @ParameterizedTest
    @CsvSource({"none", "{at_most: 1.0e-3}"})
    void ofADarknessInDoubtNoMarginSaysThatItHolds(String direct) throws Exception {
        byte[] text = CoarseHood.text("chord: 30", "shelf/outside", direct).getBytes(StandardCharsets.UTF_8);
        Heard heard = new Heard();
        try (LiveLayout live = new LiveLayout(LayoutFamily.of(CoarseHood.NAME, text), effort(0), heard)) {
            LiveState.Placed found = heard.finished(live.move("top", 1.01));
            assertThat(verdict(found, "dark")).isEqualTo(Verdict.UNDECIDED);
            RequirementMargin margin = found.margins().get("dark");
            assertThat(margin.verdict()).hasValue(Verdict.UNDECIDED);
            if (margin.unit() == MarginUnit.RELATIVE_IRRADIANCE) {
                assertThat(margin.margin()).isNaN();
            } else {
                // The clearance behind the facets, which says by how much they would have to be finer.
                assertThat(margin.margin()).isPositive();
            }
        }
    }
}
