package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.UnusableInput;
import darkrim.study.LayoutFamily;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** Studies of one edge against closed forms. Margins are found to about 1e-6 mm. */
class ToleranceStudyTest {
    private static final double FOUND = 1e-5;

    private static ToleranceSettings settings(int builds, boolean margins) {
        return new ToleranceSettings(builds, Optional.empty(), margins, Optional.of(11L), 1);
    }

    private static ToleranceResult study(String dimensions, String baffle, ToleranceSettings settings)
            throws UnusableInput {
        return study(EdgeLayout.of(dimensions, baffle), settings, 2);
    }

    private static ToleranceResult study(LayoutFamily family, ToleranceSettings settings, int threads)
            throws UnusableInput {
        return Tolerances.run(family, settings, StudyRecord.none(), Watch.NONE, threads);
    }

    private static RequirementTolerance dark(ToleranceResult result) {
        return result.requirements().get(0);
    }

    @Test
    void theYieldOfOneNormalEdgeIsTheNormalDistributionsClosedForm() throws Exception {
        // Edge at -2.4 with a standard deviation of 0.1; dark up to -2.3: one standard deviation.
        ToleranceResult result = study(
                "edge: {value: -2.4, tolerance: 0.3, distribution: normal}\nheight: 10", "", settings(400, false));
        double exact = NormalDistribution.of(-2.4, 0.1).cumulativeProbability(EdgeLayout.LIMIT);
        assertThat(exact).isCloseTo(0.841345, within(1e-6));
        // False alarm: 0.1 %, the confidence of the interval.
        assertThat(result.yield().lower()).isLessThan(exact);
        assertThat(result.yield().upper()).isGreaterThan(exact);
        assertThat(result.yield().builds()).isEqualTo(400);
        assertThat(result.yield().undecided()).isZero();
        // Build by build the verdict is that of the closed form.
        assertThat(result.builds())
                .allSatisfy(build -> assertThat(build.verdict() == Verdict.PASS)
                        .isEqualTo(-2.4 + build.deviations().get(0) < EdgeLayout.LIMIT));
        RootSumSquare sum = dark(result).rootSumSquare().orElseThrow();
        // The margin bends by the cosine of 1.7 degrees, 4e-4 of it, where the screen becomes lit.
        assertThat(sum.yield()).isCloseTo(exact, within(2e-3));
        assertThat(sum.deviation()).isCloseTo(0.1 * 10 / 9, within(1e-3));
    }

    @Test
    void theWorstCaseOfAFineGridIsNotWorseThanTheOneFound() throws Exception {
        ToleranceResult result = study(
                "edge: {value: -2.6, tolerance: {minus: 0.4, plus: 0.2}}\nheight: {value: 10, tolerance: 2}",
                "",
                settings(1, false));
        WorstCase worst = dark(result).worst().orElseThrow();
        double least = Double.POSITIVE_INFINITY;
        for (double edge = -3.0; edge <= -2.4 + 1e-9; edge += 0.01) {
            for (double height = 8; height <= 12 + 1e-9; height += 0.05) {
                least = Math.min(least, EdgeLayout.margin(edge, height));
            }
        }
        assertThat(worst.margin().margin()).isCloseTo(least, within(FOUND));
        assertThat(worst.deviations()).containsExactly(0.2, 2.0);
        assertThat(worst.everyCorner()).isTrue();
    }

    @Test
    void manyContributorsAreFollowedToTheirWorstCorner() throws Exception {
        ToleranceResult result = study(
                "a: {value: -1 mm, tolerance: 0.02}\nb: {value: -1 mm, tolerance: 0.02}\nc: {value: 0.7 mm, tolerance: 0.02}\n"
                        + "edge: a + b - c\nheight: {value: 10, tolerance: 1}",
                "placement_tolerance: {shift: [0.03, 0, 0.5]}",
                settings(1, false));
        WorstCase worst = dark(result).worst().orElseThrow();
        assertThat(worst.everyCorner()).isFalse();
        assertThat(worst.margin().margin()).isCloseTo(EdgeLayout.margin(-2.7 + 0.06 + 0.03, 11.5), within(FOUND));
    }

    @Test
    void aWorstCaseInsideTheTolerancesIsFound() throws Exception {
        // The edge is farthest to the right where the bend is 0: half-way to the lower end.
        ToleranceResult result = study(
                "bend: {value: 30 deg, tolerance: 60}\nreach: 1 mm\nedge: reach * cos(bend) - 3.4\nheight: 10",
                "",
                settings(1, false));
        WorstCase worst = dark(result).worst().orElseThrow();
        assertThat(worst.deviations().get(0)).isEqualTo(-30);
        assertThat(worst.margin().margin()).isCloseTo(EdgeLayout.margin(-2.4, 10), within(FOUND));
    }

    @Test
    void theSlopeOfASampledMarginIsThatOfTheLitArea() throws Exception {
        String text = new String(
                EdgeLayout.of("edge: {value: 0 mm, tolerance: 0.2}\nheight: 10", "")
                        .content(),
                StandardCharsets.UTF_8);
        String limited = text.replace("direct: none", "direct: {at_most: 0.6}");
        LayoutFamily family = LayoutFamily.of("limited.yaml", limited.getBytes(StandardCharsets.UTF_8));
        ToleranceSettings settings = new ToleranceSettings(10, Optional.empty(), false, Optional.of(3L), 16);
        RequirementTolerance limit = dark(study(family, settings, 2));
        // The border of light moves 10 / 9 as far as the edge, over a screen of 4 mm; the cosines take 0.3 % at the
        // most.
        // Four standard errors of the difference of common random numbers: false alarm 1 in 16,000. Of the samples a
        // share of
        // 0.4 * 0.278 = 0.11 differs between the ends: sqrt(0.11 / 131072) / 0.4 = 0.0023.
        assertThat(limit.slopes().get(0).perUnit()).isCloseTo(-10.0 / 9 / 4, within(4 * 0.0023 + 0.001));
        // Half of the screen is lit as drawn; the bounds are four standard errors, 0.5 / sqrt(131072) each.
        assertThat(limit.drawn().margin()).isCloseTo(0.6 - 0.5, within(4 * 0.0014 + 0.0015));
        assertThat(limit.worst().orElseThrow().deviations()).containsExactly(0.2);
    }

    @Test
    void aMarginThatFallsBothWaysHasTheSlopeOfTheSteeperFall() throws Exception {
        ToleranceResult result = study(
                "bend: {value: 0 deg, tolerance: {minus: 40, plus: 60}}\nreach: 1 mm\nedge: -2.5 - reach * cos(bend)\nheight: 10",
                "",
                settings(1, false));
        double drawn = EdgeLayout.margin(-3.5, 10);
        double fall = (EdgeLayout.margin(-3, 10) - drawn) / 60;
        assertThat(dark(result).slopes().get(0).perUnit()).isCloseTo(fall, within(1e-6));
    }

    @Test
    void aMarginThatFallsOneWayOnlyHasTheSlopeOfThatFall() throws Exception {
        // The edge follows the bend one way only.
        ToleranceResult result = study(
                "bend: {value: 0, tolerance: 1}\nedge: -3.5 + 0.5 * max(bend, 0)\nheight: 10", "", settings(1, false));
        double fall = EdgeLayout.margin(-3, 10) - EdgeLayout.margin(-3.5, 10);
        assertThat(dark(result).slopes().get(0).perUnit()).isCloseTo(fall, within(1e-6));
    }

    @Test
    void theRootSumSquareIsTheSpreadOfTheBuilds() throws Exception {
        ToleranceResult result = study(
                "edge: {value: -3, tolerance: 0.1}\nheight: {value: 10, tolerance: 1, distribution: triangular}",
                "placement_tolerance: {shift: [0.15, 0, 0], distribution: normal}",
                settings(500, true));
        RequirementTolerance dark = dark(result);
        RootSumSquare sum = dark.rootSumSquare().orElseThrow();
        SampledMargins sampled = dark.sampled().orElseThrow();
        assertThat(sampled.count()).isEqualTo(500);
        // Four standard errors: false alarm 1 in 16,000; the standard deviation of 500 builds is known to 1 /
        // sqrt(1000) at the worst.
        assertThat(sampled.mean()).isCloseTo(sum.mean(), within(4 * sum.deviation() / Math.sqrt(500) + 1e-3));
        assertThat(sampled.deviation()).isCloseTo(sum.deviation(), within(4 * sum.deviation() / Math.sqrt(1000)));
        // Closed form: the slope is 10 / 9 for edge and shift alike; variances 0.1^2 / 3 and 0.05^2.
        assertThat(sum.shares().get(0) / sum.shares().get(2)).isCloseTo(0.01 / 3 / 0.0025, within(1e-2));
        assertThat(sum.shares().stream().mapToDouble(share -> share).sum()).isCloseTo(1, within(1e-12));
        for (int i = 0; i < 3; i++) {
            // Four standard errors of a squared correlation of 500 builds, at the worst 4 * 2 * 0.385 / sqrt(500).
            assertThat(sampled.shares().get(i)).isCloseTo(sum.shares().get(i), within(0.14));
        }
    }

    @Test
    void theLoosestFactorIsThatOfTheBuildAtTheWantedShare() throws Exception {
        ToleranceSettings wanted = new ToleranceSettings(40, Optional.of(0.9), false, Optional.of(5L), 1);
        ToleranceResult result = study("edge: {value: -2.6, tolerance: 0.2}\nheight: 10", "", wanted);
        // A build fails from the factor on that puts its edge at the limit; of 40 builds 4 may fail.
        List<Double> factors = result.builds().stream()
                .map(build -> 0.3 / build.deviations().get(0))
                .map(factor -> factor > 0 ? factor : Double.POSITIVE_INFINITY)
                .sorted()
                .toList();
        LoosestFactor loosest = result.loosest().orElseThrow().estimate();
        assertThat(loosest.allowed()).isEqualTo(4);
        assertThat(loosest.factor()).isLessThanOrEqualTo(factors.get(4)).isGreaterThan(0.97 * factors.get(4));
        assertThat(loosest.beyond()).isGreaterThanOrEqualTo(factors.get(4));
    }

    @Test
    void anUnbuildableCornerIsTheWorstCaseAndFails() throws Exception {
        // At the lower end of the tolerance the depth of the screen is 0.
        LayoutFamily family = EdgeLayout.of("edge: -3\nheight: 10\nshare: {value: 1, tolerance: 1}", "");
        String thinner = new String(family.content(), StandardCharsets.UTF_8).replace("depth: 4}", "depth: 4 * share}");
        LayoutFamily thin = LayoutFamily.of("thin.yaml", thinner.getBytes(StandardCharsets.UTF_8));
        ToleranceResult result = study(thin, settings(1, false), 2);
        assertThat(dark(result).worst().orElseThrow().margin().impossible()).contains("thin.yaml:");
        assertThat(result.verdict()).isEqualTo(Verdict.FAIL);
    }

    @Test
    void theNumberOfThreadsChangesNothing() throws Exception {
        String dimensions = "edge: {value: -2.4, tolerance: 0.3}\nheight: 10";
        LayoutFamily family = EdgeLayout.of(dimensions, "");
        ToleranceSettings settings = new ToleranceSettings(30, Optional.of(0.5), true, Optional.empty(), 1);
        ToleranceResult one = study(family, settings, 1);
        ToleranceResult three = study(family, settings, 3);
        assertThat(three.builds()).isEqualTo(one.builds());
        assertThat(three.requirements()).isEqualTo(one.requirements());
        assertThat(three.loosest()).isEqualTo(one.loosest());
    }

    @Test
    void aStopKeepsTheBuildsThatAreFinished() throws Exception {
        StopAfter watch = new StopAfter("checking builds", 8);
        ToleranceResult result = Tolerances.run(
                EdgeLayout.of("edge: {value: -3, tolerance: 0.1}\nheight: 10", ""),
                settings(1000, false),
                StudyRecord.none(),
                watch,
                2);
        assertThat(result.stopped()).isTrue();
        assertThat(result.builds()).hasSizeBetween(8, 12);
        assertThat(result.verdict()).isEqualTo(Verdict.UNDECIDED);
    }

    @Test
    void aLayoutWithoutTolerancesIsRefused() {
        assertThatThrownBy(() -> study("edge: -3\nheight: 10", "", settings(1, false)))
                .isInstanceOfSatisfying(
                        UnusableInput.class,
                        refused ->
                                assertThat(refused.findings().get(0).toString()).contains("states no tolerance"));
    }

    /** Stops once a step is so far. */
    private static final class StopAfter implements Watch {
        private final String step;
        private final long after;
        private volatile boolean stop;

        StopAfter(String step, long after) {
            this.step = step;
            this.after = after;
        }

        @Override
        public void progress(String current, long done, long most) {
            stop |= current.equals(step) && done >= after;
        }

        @Override
        public boolean stop() {
            return stop;
        }
    }
}
