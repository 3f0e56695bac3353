package darkrim.study.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.comparison.Failing.Amount;
import darkrim.study.comparison.RequirementChange.Judgement;
import darkrim.verdict.Verdict;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Whether a requirement that fails in two layouts is worse in the second. */
class RequirementChangeTest {
    private static final Amount UNKNOWN = new Amount(Double.NaN, 0);
    private static final Failing SOME = failing(Map.of("a", new Amount(0.1, 0.001)));

    private static Failing failing(Map<String, Amount> amounts) {
        Map<String, Verdict> verdicts = new TreeMap<>();
        verdicts.put("a", Verdict.PASS);
        verdicts.put("b", Verdict.PASS);
        amounts.keySet().forEach(name -> verdicts.put(name, Verdict.FAIL));
        return new Failing(verdicts, amounts);
    }

    private static RequirementMargin margin(double margin, boolean capped) {
        return margin(Verdict.FAIL, margin, capped);
    }

    private static RequirementMargin margin(Verdict verdict, double margin, boolean capped) {
        return new RequirementMargin(
                "dark", Optional.of(verdict), margin, 0, MarginUnit.MILLIMETRES, capped, "a", "", "");
    }

    private static Judgement judged(RequirementMargin before, RequirementMargin after, Failing one, Failing two) {
        return new RequirementChange(
                        "dark", Optional.of(before), Optional.of(after), Optional.of(one), Optional.of(two), true)
                .judgement();
    }

    private static Judgement sameMargin(Failing one, Failing two) {
        return judged(margin(-0.1, false), margin(-0.1, false), one, two);
    }

    @Test
    void moreLightIsWorseWhereTheMarginIsTheSame() {
        // The combined standard error is 0.0014, 3.3 of them 0.0047.
        assertThat(sameMargin(SOME, failing(Map.of("a", new Amount(0.1050, 0.001)))))
                .isEqualTo(Judgement.WORSE);
        assertThat(sameMargin(SOME, failing(Map.of("a", new Amount(0.1045, 0.001)))))
                .isEqualTo(Judgement.NOT_WORSE);
        assertThat(sameMargin(SOME, failing(Map.of("a", new Amount(0.05, 0.001)))))
                .isEqualTo(Judgement.NOT_WORSE);
    }

    @Test
    void moreSurfacesOrOneThatHeldBeforeAreWorse() {
        Failing two = failing(Map.of("a", new Amount(0.1, 0.001), "b", new Amount(0.01, 0.001)));
        assertThat(sameMargin(SOME, two)).isEqualTo(Judgement.WORSE);
        assertThat(sameMargin(two, SOME)).isEqualTo(Judgement.NOT_WORSE);
        assertThat(sameMargin(SOME, failing(Map.of("b", new Amount(0.01, 0.001)))))
                .isEqualTo(Judgement.WORSE);
        // A surface that only the second layout has, in the place of one that only the first has.
        assertThat(sameMargin(SOME, new Failing(Map.of("c", Verdict.FAIL), Map.of("c", new Amount(0.2, 0.001)))))
                .isEqualTo(Judgement.WORSE);
    }

    @Test
    void whereNothingIsKnownNothingIsSaid() {
        Failing unknown = failing(Map.of("a", UNKNOWN));
        RequirementMargin none = margin(Double.NaN, false);
        RequirementMargin capped = margin(-20, true);
        assertThat(judged(none, none, unknown, unknown)).isEqualTo(Judgement.CANNOT_TELL);
        assertThat(judged(capped, capped, unknown, unknown)).isEqualTo(Judgement.CANNOT_TELL);
        assertThat(judged(margin(-0.1, false), none, unknown, unknown)).isEqualTo(Judgement.CANNOT_TELL);
        // The same margin may be that of surfaces that are lit all over in both.
        assertThat(sameMargin(unknown, unknown)).isEqualTo(Judgement.CANNOT_TELL);
        assertThat(judged(none, none, SOME, SOME)).isEqualTo(Judgement.NOT_WORSE);
        assertThat(judged(margin(-1, false), capped, unknown, unknown)).isEqualTo(Judgement.WORSE);
        assertThat(judged(capped, margin(-1, false), unknown, unknown)).isEqualTo(Judgement.NOT_WORSE);
    }

    @Test
    void aSurfaceThatBecameUndecidedMightFail() {
        Failing open =
                new Failing(Map.of("a", Verdict.FAIL, "b", Verdict.UNDECIDED), Map.of("a", new Amount(0.1, 0.001)));
        assertThat(sameMargin(SOME, open)).isEqualTo(Judgement.CANNOT_TELL);
        assertThat(sameMargin(open, open)).isEqualTo(Judgement.NOT_WORSE);
    }

    @Test
    void aSurfaceThatHeldAndIsUndecidedIsNotMadeGoodByAnotherThatIsMended() {
        Map<String, Amount> amount = Map.of("a", new Amount(0.1, 0.001));
        Failing before = new Failing(
                Map.of("a", Verdict.FAIL, "b", Verdict.PASS, "c", Verdict.FAIL),
                Map.of("a", new Amount(0.1, 0.001), "c", new Amount(0.05, 0.001)));
        Failing after = new Failing(Map.of("a", Verdict.FAIL, "b", Verdict.UNDECIDED, "c", Verdict.PASS), amount);
        // As many do not hold as before, or fewer: still b may have broken.
        assertThat(sameMargin(before, after)).isEqualTo(Judgement.CANNOT_TELL);
        Failing mended = new Failing(Map.of("a", Verdict.FAIL, "b", Verdict.PASS, "c", Verdict.PASS), amount);
        assertThat(sameMargin(before, mended)).isEqualTo(Judgement.NOT_WORSE);
        // One that is new is undecided.
        Failing other = new Failing(Map.of("a", Verdict.FAIL, "d", Verdict.UNDECIDED), amount);
        assertThat(sameMargin(before, other)).isEqualTo(Judgement.CANNOT_TELL);
        // One that was undecided, and so may have held, fails.
        Failing open = new Failing(Map.of("a", Verdict.FAIL, "b", Verdict.UNDECIDED), amount);
        Failing failed =
                new Failing(Map.of("a", Verdict.PASS, "b", Verdict.FAIL), Map.of("b", new Amount(0.01, 0.001)));
        assertThat(sameMargin(open, failed)).isEqualTo(Judgement.CANNOT_TELL);
    }

    @Test
    void aRequirementThatFailedAndIsUndecidedIsNotWorseOnlyIfNoSurfaceMayHaveBroken() {
        RequirementMargin then = margin(-0.1, false);
        RequirementMargin open = margin(Verdict.UNDECIDED, Double.NaN, false);
        Failing doubt = new Failing(Map.of("a", Verdict.UNDECIDED, "b", Verdict.PASS), Map.of());
        assertThat(judged(then, open, SOME, doubt)).isEqualTo(Judgement.NOT_WORSE);
        Failing spread = new Failing(Map.of("a", Verdict.UNDECIDED, "b", Verdict.UNDECIDED), Map.of());
        assertThat(judged(then, open, SOME, spread)).isEqualTo(Judgement.CANNOT_TELL);
        Failing moved = new Failing(Map.of("a", Verdict.PASS, "b", Verdict.UNDECIDED), Map.of());
        assertThat(judged(then, open, SOME, moved)).isEqualTo(Judgement.CANNOT_TELL);
        Failing added = new Failing(Map.of("a", Verdict.PASS, "c", Verdict.UNDECIDED), Map.of());
        assertThat(judged(then, open, SOME, added)).isEqualTo(Judgement.CANNOT_TELL);
    }

    @Test
    void manyComparedNeedMoreErrorsThanOne() {
        // Two-sided points of the normal distribution at 0.001 and at 0.001 / 1000, as tables have them.
        assertThat(Failing.errors(1)).isCloseTo(3.2905, within(1e-4));
        assertThat(Failing.errors(1000)).isCloseTo(4.8916, within(1e-4));
    }
}
