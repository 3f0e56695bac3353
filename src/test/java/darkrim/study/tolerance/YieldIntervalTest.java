package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.sampling.Streams;
import darkrim.study.PointCheck;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class YieldIntervalTest {
    private static final boolean LONG = Boolean.getBoolean("long");

    @Test
    void theBoundsAreThoseOfTheBinomialDistributionsTails() {
        // Clopper and Pearson: at the lower bound 8 or more of 10 have half the error, at the upper 8 or fewer.
        YieldInterval interval = YieldInterval.of(10, 8, 0, 0.95);
        assertThat(1 - BinomialDistribution.of(10, interval.lower()).cumulativeProbability(7))
                .isCloseTo(0.025, within(1e-9));
        assertThat(BinomialDistribution.of(10, interval.upper()).cumulativeProbability(8))
                .isCloseTo(0.025, within(1e-9));
    }

    @Test
    void anUndecidedBuildWidensTheIntervalOnBothSides() {
        YieldInterval interval =
                YieldInterval.of(List.of(Verdict.PASS, Verdict.PASS, Verdict.UNDECIDED, Verdict.FAIL), 0.9);
        assertThat(interval.lower()).isEqualTo(YieldInterval.of(4, 2, 0, 0.9).lower());
        assertThat(interval.upper()).isEqualTo(YieldInterval.of(4, 3, 0, 0.9).upper());
        assertThat(interval.failed()).isEqualTo(1);
    }

    @Test
    void nothingIsKnownWithoutBuilds() {
        YieldInterval none = YieldInterval.of(List.of(), 0.9);
        assertThat(none.against(0.5)).isEqualTo(Verdict.UNDECIDED);
        assertThat(none.lower()).isZero();
        assertThat(none.upper()).isEqualTo(1);
    }

    @Test
    void soManyBuildsShowAYieldAndOneFewerDoesNot() {
        int needed = Math.toIntExact(YieldInterval.buildsToShow(0.99, 0.999));
        assertThat(YieldInterval.of(needed, needed, 0, 0.999).against(0.99)).isEqualTo(Verdict.PASS);
        assertThat(YieldInterval.of(needed - 1, needed - 1, 0, 0.999).against(0.99))
                .isEqualTo(Verdict.UNDECIDED);
    }

    /** The builds are the program's own; short, their verdicts are the closed form; long, they are checked. */
    @Test
    void theTrueYieldIsWithinTheIntervalAsOftenAsStated() {
        int studies = LONG ? 1000 : 300;
        double confidence = 0.9;
        double exact = NormalDistribution.of(-2.4, 0.1).cumulativeProbability(EdgeLayout.LIMIT);
        PointCheck check = new PointCheck(
                EdgeLayout.of("edge: {value: -2.4, tolerance: 0.3, distribution: normal}\nheight: 10", ""),
                Optional.empty(),
                1);
        DeviatingLayout layout =
                new DeviatingLayout(check, Contributor.of(check.family().written()));
        long missed = IntStream.range(0, studies)
                .filter(study -> {
                    Builds builds = new Builds(layout.contributors(), new Streams(study));
                    List<Verdict> verdicts = IntStream.rangeClosed(1, 30)
                            .mapToObj(builds::deviations)
                            .map(deviations -> verdict(layout, deviations))
                            .toList();
                    YieldInterval interval = YieldInterval.of(verdicts, confidence);
                    return exact < interval.lower() || exact > interval.upper();
                })
                .count();
        // At most 10 % may miss; false alarm below 1 in 10,000.
        int most = BinomialDistribution.of(studies, 1 - confidence).inverseCumulativeProbability(0.9999);
        assertThat(missed).isBetween(1L, (long) most);
    }

    private static Verdict verdict(DeviatingLayout layout, List<Double> deviations) {
        if (LONG) {
            return layout.check()
                    .at(layout.point(Look.all(deviations)))
                    .verdict()
                    .orElseThrow();
        }
        return -2.4 + deviations.get(0) < EdgeLayout.LIMIT ? Verdict.PASS : Verdict.FAIL;
    }
}
