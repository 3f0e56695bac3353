package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.light.Estimate;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.tolerance.YieldInterval;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Figures that reports work out by themselves, where they are at their limits. */
class ReportFiguresTest {
    private static final Estimate NONE = new Estimate(1_000, 0, 0, 1);
    private static final Estimate ALL = new Estimate(1_000, 1, 0, 1);

    private static double shareApart(double exact, Estimate sampled) {
        return PointReport.apart(exact, sampled, PointReport.shareError(exact, sampled));
    }

    @Test
    void samplesThatAllSayTheOppositeOfTheExactShareAreAContradiction() {
        assertThat(shareApart(1, NONE)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(shareApart(0, ALL)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(shareApart(1, ALL)).isZero();
        assertThat(shareApart(0, NONE)).isZero();
        assertThat(shareApart(0.5, new Estimate(1, 0, 0, 1))).isNaN();
    }

    /** A strip of 1e-5 of the pupil is met by one in a hundred thousand lines: a thousand that agree contradict nothing. */
    @Test
    void irradianceMayDifferByWhatSoManySamplesOverlook() {
        double share = 1 - 1e-5;
        Estimate sampled = new Estimate(1_000, 1, 1e-16, 1);
        double error = PointReport.irradianceError(share, share, sampled);
        assertThat(sampled.standardError()).isLessThan(1e-8);
        assertThat(PointReport.apart(share, sampled, error)).isBetween(0.0, 1.0);
        // Beside the spread of the samples, where that is larger, nothing changes.
        assertThat(PointReport.irradianceError(0.5, 0.25, new Estimate(100, 0.25, 4, 2)))
                .isEqualTo(0.2);
        assertThat(PointReport.irradianceError(0, 0, NONE)).isZero();
        // Of many samples the spread counts, which may be far less than that of the share: a difference of 6 of its
        // errors is no chance.
        Estimate many = new Estimate(1_000_000, 0.25, 1e-6, 2);
        assertThat(PointReport.irradianceError(0.5, 0.25, many)).isEqualTo(many.standardError());
    }

    @Test
    void ofAStarWhoseLightNoSampleFoundTheWattsAreBoundedToo() {
        assertThat(StarScanReport.power(NONE, 2, 1e-3)).isEqualTo("< 0.00200");
        assertThat(StarScanReport.power(new Estimate(1_000, 0.25, 0.1, 1), 2, 1))
                .isEqualTo("0.500");
    }

    @Test
    void oneBuildOfManyThatFailsIsNotRoundedAway() {
        assertThat(ToleranceReport.passing(new YieldInterval(10_000, 9_999, 0, 0.99, 1, 0.999)))
                .isEqualTo("99.9 %");
        assertThat(ToleranceReport.passing(new YieldInterval(10, 10, 0, 0.5, 1, 0.999)))
                .isEqualTo("100.0 %");
        assertThat(ToleranceReport.passing(new YieldInterval(3, 1, 0, 0, 1, 0.999)))
                .isEqualTo("33.3 %");
    }

    @Test
    void whatCannotBeBuiltHasNoMarginInMillimetres() {
        assertThat(MarginWords.withUnit(impossible())).isEqualTo("cannot be built");
        assertThat(MarginWords.withUnit(margin(Double.NaN, ""))).isEqualTo("unknown");
    }

    /** As in the report of a check: never more than it is, and a clearance that no edge explains may be larger. */
    @Test
    void aMarginSaysNoMoreThanIsKnown() {
        assertThat(MarginWords.withUnit(margin(0.0129, "lid/edge"))).isEqualTo("0.012 mm");
        assertThat(MarginWords.of(margin(0.01299, "lid/edge"))).isEqualTo("0.0129");
        assertThat(MarginWords.of(margin(0.04999999999, "lid/edge"))).isEqualTo("0.0500");
        assertThat(MarginWords.withUnit(margin(0.0129, ""))).isEqualTo(">= 0.012 mm");
        assertThat(MarginWords.of(margin(0.01299, ""))).isEqualTo(">= 0.0129");
        assertThat(MarginWords.withUnit(margin(-0.0121, ""))).isEqualTo("-0.013 mm");
        assertThat(MarginWords.of(margin(-0.01211, ""))).isEqualTo("-0.0122");
    }

    private static RequirementMargin margin(double margin, String setBy) {
        return new RequirementMargin("dark", Optional.empty(), margin, 0, MarginUnit.MILLIMETRES, false, "", setBy, "");
    }

    private static RequirementMargin impossible() {
        return new RequirementMargin(
                "dark",
                Optional.empty(),
                Double.NEGATIVE_INFINITY,
                0,
                MarginUnit.MILLIMETRES,
                false,
                "",
                "",
                "the edge is gone");
    }
}
