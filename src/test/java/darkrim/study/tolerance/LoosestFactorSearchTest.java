package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.sampling.Streams;
import darkrim.study.LayoutFamily;
import darkrim.study.Point;
import darkrim.study.PointCheck;
import darkrim.study.PointResult;
import darkrim.study.PointWorkers;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** Loosest factors of one edge whose verdicts are the closed form: it holds while the edge deviates by less than 0.3. */
class LoosestFactorSearchTest {
    private static final double ROOM = 0.3;
    private static final double TOLERANCE = 0.2;
    private static final LayoutFamily FAMILY =
            EdgeLayout.of("edge: {value: -2.6, tolerance: " + TOLERANCE + "}\nheight: 10", "");

    /** Workers who know the answer. */
    private static final class Knowing implements PointWorkers {
        @Override
        public int work(PointCheck check, List<Point> points, Consumer<PointResult> results, BooleanSupplier stop) {
            points.forEach(point -> results.accept(result(point)));
            return points.size();
        }

        private static PointResult result(Point point) {
            double edge = point.chosen().getOrDefault("edge", -2.6);
            Verdict verdict = edge < -2.6 + ROOM ? Verdict.PASS : Verdict.FAIL;
            return new PointResult(point.chosen(), Optional.of(verdict), List.of(), List.of(), "", "");
        }

        @Override
        public void close() {}
    }

    private static LoosestFactors find(long seed, int count, double wanted, double confidence) throws Exception {
        return find(seed, count, wanted, confidence, Verdict.PASS);
    }

    private static LoosestFactors find(long seed, int count, double wanted, double confidence, Verdict drawn)
            throws Exception {
        DeviatingLayout layout =
                new DeviatingLayout(new PointCheck(FAMILY, Optional.empty(), 1), Contributor.of(FAMILY.written()));
        Looks looks = new Looks(layout, ToleranceStudy.table(FAMILY), new Knowing(), StudyRecord.none(), Watch.NONE);
        List<Build> builds = new Builds(layout.contributors(), new Streams(seed)).make(count, looks);
        return new LoosestFactorSearch(builds, looks, confidence).find(wanted, drawn);
    }

    /** Share of all builds that hold with a factor: of a uniform deviation within plus and minus that many tolerances. */
    private static double exact(double factor) {
        return Math.min(1, 0.5 + ROOM / (2 * factor * TOLERANCE));
    }

    @Test
    void theTrueYieldWithTheChosenFactorIsWithinTheIntervalAsOftenAsStated() throws Exception {
        int studies = 400;
        double confidence = 0.8;
        List<LoosestFactor> low = new ArrayList<>();
        List<LoosestFactor> high = new ArrayList<>();
        for (int seed = 0; seed < studies; seed++) {
            LoosestFactor found = find(seed, 40, 0.75, confidence).estimate();
            if (exact(found.factor()) < found.yield().lower()) {
                low.add(found);
            }
            if (exact(found.factor()) > found.yield().upper()) {
                high.add(found);
            }
        }
        // Each side may miss 10 % of the studies; false alarm below 1 in 10,000. That some miss shows that the test can
        // fail.
        int most = BinomialDistribution.of(studies, (1 - confidence) / 2).inverseCumulativeProbability(0.9999);
        assertThat(low).hasSizeBetween(1, most);
        assertThat(high).hasSizeBetween(1, most);
    }

    @Test
    void theProvedFactorKeepsTheYieldAndIsTighterThanTheEstimate() throws Exception {
        LoosestFactors found = find(3, 200, 0.9, 0.999);
        LoosestFactor proved = found.proved().orElseThrow();
        assertThat(proved.yield().lower()).isGreaterThanOrEqualTo(0.9);
        assertThat(proved.factor()).isLessThan(found.estimate().factor());
        // As fast as so many builds allow: 0.1 * 200 less three standard deviations.
        assertThat(proved.allowed()).isBetween(3, 12);
        assertThat(exact(proved.factor())).isGreaterThanOrEqualTo(0.9);
    }

    @Test
    void tooFewBuildsProveNothing() throws Exception {
        assertThat(find(3, 40, 0.99, 0.999).proved()).isEmpty();
    }

    @Test
    void whereNoFactorWasFoundNothingIsKnownOfTheYield() throws Exception {
        LoosestFactor found = find(3, 40, 0.9, 0.999, Verdict.FAIL).estimate();
        assertThat(found.factor()).isZero();
        assertThat(found.yield()).isEqualTo(new YieldInterval(0, 0, 0, 0, 1, 0.999));
    }
}
