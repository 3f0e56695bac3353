package darkrim.study.comparison;

import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.Optional;

/**
 * A requirement before and after.
 *
 * @param name its name
 * @param before verdict and margin in the first layout; empty where it is not asked there
 * @param after verdict and margin in the second
 * @param failingBefore what fails in the first layout; empty where it is not asked there
 * @param failingAfter what fails in the second
 * @param alike whether both ask the same of the same pattern of surfaces; so too where one does not ask at all
 */
public record RequirementChange(
        String name,
        Optional<RequirementMargin> before,
        Optional<RequirementMargin> after,
        Optional<Failing> failingBefore,
        Optional<Failing> failingAfter,
        boolean alike) {
    /** Margins differ when they do by more than the errors of their search, mm. */
    private static final double ROUNDING = 1e-6;

    /** What can be said of a change. */
    public enum Judgement {
        /** The second layout is not worse here. */
        NOT_WORSE,
        /** It is worse: the verdict got worse, or it fails in both by more. */
        WORSE,
        /** A verdict is open, of the requirement or of a surface that held; how badly it fails is not known; it is no longer asked or asks something else. */
        CANNOT_TELL
    }

    /** Whether the second layout is worse in this requirement. */
    public Judgement judgement() {
        if (after.isEmpty()) {
            return Judgement.CANNOT_TELL;
        }
        Verdict then = after.get().verdict().orElseThrow();
        Verdict first = before.flatMap(RequirementMargin::verdict).orElse(Verdict.PASS);
        if (!alike) {
            return Judgement.CANNOT_TELL;
        }
        if (then == Verdict.PASS) {
            return Judgement.NOT_WORSE;
        }
        if (then == Verdict.UNDECIDED) {
            return first == Verdict.FAIL && !mightBreak() ? Judgement.NOT_WORSE : Judgement.CANNOT_TELL;
        }
        if (first != Verdict.FAIL) {
            return Judgement.WORSE;
        }
        return bothFail();
    }

    /** Each of margins and amounts can show that it is worse; that it is not takes one of them for certain. */
    private Judgement bothFail() {
        Failing one = failingBefore.orElseThrow();
        Failing two = failingAfter.orElseThrow();
        if (two.isWorseThan(one) || fellForCertain()) {
            return Judgement.WORSE;
        }
        boolean told = (one.allKnown() && two.allKnown()) || marginsTell();
        return told && !mightBreak() ? Judgement.NOT_WORSE : Judgement.CANNOT_TELL;
    }

    private boolean mightBreak() {
        return failingAfter.orElseThrow().mightBreak(failingBefore.orElseThrow());
    }

    /** A capped margin, negative here, may be any less than what it says. */
    private boolean fellForCertain() {
        RequirementMargin one = before.orElseThrow();
        RequirementMargin two = after.orElseThrow();
        double error = StrictMath.hypot(one.standardError(), two.standardError());
        double least = one.unit() == MarginUnit.MILLIMETRES ? ROUNDING : Failing.errors(1) * error;
        return !one.capped() && one.margin() - two.margin() > least;
    }

    /** A margin that is the same tells nothing: it ends where a surface is lit all over. */
    private boolean marginsTell() {
        RequirementMargin one = before.orElseThrow();
        RequirementMargin two = after.orElseThrow();
        return two.isKnown() && two.margin() - one.margin() > ROUNDING;
    }
}
