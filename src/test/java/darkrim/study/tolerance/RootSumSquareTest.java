package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.study.LayoutFamily;
import darkrim.study.MarginUnit;
import darkrim.study.PointResult;
import darkrim.study.RequirementMargin;
import darkrim.study.journal.StudyRecord;
import darkrim.study.tolerance.RequirementTolerance.LesserBuild;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is said of many builds where a margin is not known, or only a bound of it. */
class RootSumSquareTest {
    private static final List<Contributor> ONE = Contributor.of(
            EdgeLayout.of("edge: {value: -2.6, tolerance: 0.2}\nheight: 10", "").written());

    private static RequirementMargin margin(double value, boolean capped, String setBy) {
        return new RequirementMargin(
                "dark",
                Optional.of(value >= 0 ? Verdict.PASS : Verdict.FAIL),
                value,
                0,
                MarginUnit.MILLIMETRES,
                capped,
                "screen/front",
                setBy,
                "");
    }

    private static RequirementMargin known(double value) {
        return margin(value, false, "edge");
    }

    private static Optional<RootSumSquare> of(
            RequirementMargin drawn, RequirementMargin atMinus, RequirementMargin atPlus) {
        return RootSumSquare.of(ONE, drawn, List.of(Slope.of(ONE.get(0), drawn, atMinus, atPlus)));
    }

    @Test
    void theGoodEndAloneSaysNothing() {
        RequirementMargin allLit = margin(-0.1, true, "");
        RequirementMargin notFlat = margin(Double.NaN, false, "");
        RequirementMargin notBuilt = margin(Double.NEGATIVE_INFINITY, false, "");
        for (RequirementMargin bad : List.of(allLit, notFlat, notBuilt)) {
            assertThat(of(known(0.05), bad, known(0.06))).isEmpty();
            assertThat(of(known(0.05), known(0.06), bad)).isEmpty();
            assertThat(Slope.of(ONE.get(0), known(0.05), bad, known(0.06)).perUnit())
                    .isNaN();
        }
    }

    @Test
    void aMarginOfWhichABoundIsKnownHasNoSpread() {
        RequirementMargin bound = margin(0, false, "");
        RequirementMargin far = margin(20, true, "");
        assertThat(of(bound, bound, bound)).isEmpty();
        assertThat(of(known(0.1), bound, known(0.2))).isEmpty();
        assertThat(of(known(19), known(18), far)).isEmpty();
        assertThat(Slope.of(ONE.get(0), known(19), known(18), far).perUnit()).isCloseTo(5, within(1e-9));
        assertThat(of(known(0.1), known(0.1), known(0.1)))
                .as("the same at both ends")
                .isEmpty();
        assertThat(of(known(0.1), known(0.2), known(0.05))).isPresent();
    }

    @Test
    void anUnknownEndLeavesTheRootSumSquareOut() throws Exception {
        // The screen is narrow: lit all over at the upper end, and the same at the lower end as drawn.
        ToleranceResult result = Tolerances.run(
                narrow(),
                new ToleranceSettings(1, Optional.empty(), false, Optional.of(1L), 1),
                StudyRecord.none(),
                Watch.NONE,
                2);
        RequirementTolerance dark = result.requirements().get(0);
        assertThat(dark.worstVerdict()).isEqualTo(Verdict.FAIL);
        assertThat(dark.slopes().get(0).atPlus().capped()).isTrue();
        assertThat(dark.rootSumSquare()).isEmpty();
    }

    private static LayoutFamily narrow() throws Exception {
        String text = new String(
                        EdgeLayout.of(
                                        "bend: {value: 0, tolerance: 1}\nedge: -2.35 + 0.5 * max(bend, 0)\nheight: 10",
                                        "")
                                .content(),
                        StandardCharsets.UTF_8)
                .replace("width: 4, depth: 4", "width: 0.1, depth: 4, at: [-1.95, 0, 0]");
        return LayoutFamily.of("narrow.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void theBuildWithLessMarginThanTheWorstCaseIsNamed() {
        List<Build> builds = List.of(build(1, known(0.3)), build(2, known(0.05)), build(3, known(0.07)));
        assertThat(LesserBuild.of(builds, 0, known(0.1)))
                .hasValue(new LesserBuild(2, builds.get(1).margins().get(0)));
        assertThat(LesserBuild.of(builds, 0, known(0.05))).isEmpty();
        assertThat(LesserBuild.of(List.of(build(1, margin(0, false, "")), build(2, margin(20, true, ""))), 0, far()))
                .as("a bound is no margin to compare")
                .isEmpty();
    }

    private static RequirementMargin far() {
        return margin(20, true, "");
    }

    private static Build build(int number, RequirementMargin margin) {
        return new Build(
                number,
                List.of(),
                new PointResult(Map.of(), Optional.of(Verdict.PASS), List.of(), List.of(margin), "", ""),
                List.of(margin));
    }
}
