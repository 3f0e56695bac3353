package darkrim.study.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Advice against closed forms. */
class AdviceStudyTest {
    private static AdviceSettings settings(Set<String> keep, Map<String, AdviceSettings.Bounds> ranges) {
        return new AdviceSettings(keep, ranges, 2, Optional.empty(), Optional.empty());
    }

    private static Advice advice(String... keep) throws Exception {
        return new AdviceStudy(OpeningLayout.family(), settings(Set.of(keep), Map.of()), Watch.NONE).run();
    }

    @Test
    void slopesAreTheDerivativesOfTheLineWhereThePenumbraEnds() throws Exception {
        Advice advice = advice();
        // x = (a H + r h) / (H - h) = (20 * 200 + 20 * 50) / 150; the strip begins at 30.
        assertThat(advice.margins().get(0).margin()).isCloseTo(30 - 5000.0 / 150, within(2e-3));
        // -dx/d(2 a) = -H / (2 (H - h)); -dx/dh = -H (a + r) / (H - h)^2
        assertThat(slope(advice, "side")).isCloseTo(-200 / (2 * 150.0), within(1e-4));
        assertThat(slope(advice, "height")).isCloseTo(-200 * 40 / (150.0 * 150), within(1e-4));
    }

    private static double slope(Advice advice, String dimension) {
        return advice.slopes().stream()
                .filter(each -> each.requirement().equals("strip-dark")
                        && each.dimension().equals(dimension))
                .findFirst()
                .orElseThrow()
                .perUnit();
    }

    @Test
    void theSmallestChangeOfEachDimensionIsWhereTheLineMeetsTheStrip() throws Exception {
        Advice advice = advice();
        // (a 200 + 20 * 50) / 150 = 30 at a = 17.5; (20 * 200 + 20 h) / (200 - h) = 30 at h = 40. The ranges go down by
        // half,
        // 20 and 25 mm; the brackets, from one 16th to one 4th of the way to the end and from there to the end, are
        // halved
        // six times.
        assertThat(change(advice, "side").to()).isBetween(35 - 20 * 3 / 16.0 / 64 - 0.01, 35.0);
        assertThat(change(advice, "height").to()).isBetween(40 - 25 * 3 / 4.0 / 64 - 0.01, 40.01);
        // The whole pupil is seen out to (a H - r h) / (H - h): 16.7 mm at a = 17.5, less than 18; 20 mm at h = 40.
        assertThat(change(advice, "side").effects().get(1).verdict()).contains(Verdict.FAIL);
        assertThat(change(advice, "height").effects().get(1).verdict()).contains(Verdict.PASS);
        double height = change(advice, "height").to();
        assertThat(change(advice, "height").effects().get(1).margin())
                .isCloseTo((20 * 200 - 20 * height) / (200 - height) - 18, within(2e-3));
    }

    private static SmallestChange change(Advice advice, String dimension) {
        return advice.changes().stream()
                .filter(each -> each.dimension().equals(dimension))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theProposalIsTheLeastSumOfChangesAndPassesAFullCheck() throws Exception {
        Advice advice = advice();
        Proposal proposal = advice.proposal().orElseThrow();
        assertThat(proposal.check().judgement().verdict()).isEqualTo(Verdict.PASS);
        // With w = 2 a: 100 w + 50 h <= 6000 and 100 w - 2 h >= 3600; from (40, 50) the least |dw| + |dh| is where both
        // meet: dh = -200 / 52, dw = -(300 - 2 dh) / 100.
        double height = 200 / 52.0;
        double least = height + (300 + 2 * height) / 100;
        // Neither states a tolerance: 0.3 mm counts as 1 for both sizes. A little is lost to rounding and for 0.005 mm
        // of room.
        assertThat(proposal.scaledChange()).isBetween(least / 0.3 - 0.05, 1.03 * least / 0.3);
        Findings findings = new Findings();
        assertThat(Check.of(
                                OpeningLayout.family().with(proposal.values(), findings),
                                findings,
                                Effort.asAsked(),
                                Watch.NONE)
                        .judgement()
                        .verdict())
                .isEqualTo(Verdict.PASS);
    }

    @Test
    void requirementsThatExcludeEachOtherAreNamed() throws Exception {
        // With the height kept both need (30 - 18) (H - h) >= 2 r h, yet 12 * 150 < 2000.
        Advice advice = advice("height");
        assertThat(advice.proposal()).isEmpty();
        assertThat(advice.exclusion()).contains(new Exclusion("strip-dark", "screen-full"));
    }

    @Test
    void aRangeIsNotLeft() throws Exception {
        Advice advice = new AdviceStudy(
                        OpeningLayout.family(),
                        settings(Set.of(), Map.of("height", new AdviceSettings.Bounds(48, 60))),
                        Watch.NONE)
                .run();
        // 12 (200 - h) >= 40 h only below h = 46.2.
        assertThat(advice.proposal()).isEmpty();
        assertThat(advice.dimensions().get(1).least()).isEqualTo(48);
    }

    @Test
    void whatPassesNeedsNoAdvice() throws Exception {
        String text =
                OpeningLayout.text().replace("height: 50 mm", "height: 40 mm").replace("side: 40", "side: 39");
        Advice advice = new AdviceStudy(family(text), settings(Set.of(), Map.of()), Watch.NONE).run();
        assertThat(advice.wanting()).isEmpty();
        assertThat(advice.changes()).isEmpty();
    }

    private static LayoutFamily family(String text) throws Exception {
        return LayoutFamily.of("test.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void theNumberOfThreadsChangesNothing() throws Exception {
        Advice one = new AdviceStudy(
                        OpeningLayout.family(),
                        new AdviceSettings(Set.of(), Map.of(), 1, Optional.empty(), Optional.empty()),
                        Watch.NONE)
                .run();
        Advice two = advice();
        assertThat(one.slopes()).isEqualTo(two.slopes());
        assertThat(one.changes()).isEqualTo(two.changes());
        assertThat(one.proposal().orElseThrow().values())
                .isEqualTo(two.proposal().orElseThrow().values());
    }

    @Test
    void settingsThatDoNotFitAreRefused() {
        assertThatThrownBy(
                        () -> new AdviceStudy(OpeningLayout.family(), settings(Set.of("hight"), Map.of()), Watch.NONE))
                .isInstanceOf(UnusableAdvice.class)
                .hasMessageContaining("there is no dimension 'hight'")
                .hasMessageContaining("height");
        assertThatThrownBy(() -> new AdviceStudy(
                        OpeningLayout.family(),
                        settings(Set.of(), Map.of("side", new AdviceSettings.Bounds(50, 30))),
                        Watch.NONE))
                .hasMessageContaining("empty or reversed");
        assertThatThrownBy(() -> new AdviceStudy(
                        OpeningLayout.family(),
                        settings(Set.of(), Map.of("side", new AdviceSettings.Bounds(30, 35))),
                        Watch.NONE))
                .hasMessageContaining("does not hold its value");
        assertThatThrownBy(() -> new AdviceStudy(
                        OpeningLayout.family(), settings(Set.of("side", "height"), Map.of()), Watch.NONE))
                .hasMessageContaining("every dimension that could change is kept");
    }
}
