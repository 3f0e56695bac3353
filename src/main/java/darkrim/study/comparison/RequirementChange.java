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
 * @param alike whether both ask the same of the same pattern of surfaces; so too where one does not ask at all
 */
public record RequirementChange(
        String name, Optional<RequirementMargin> before, Optional<RequirementMargin> after, boolean alike) {
    /** Margins differ when they do by more than the errors of their search, mm. */
    private static final double ROUNDING = 1e-6;
    /** Sampled margins differ when they do by more standard errors (1 in 1000, two-sided). */
    private static final double ERRORS = 3.3;

    /** What can be said of a change. */
    public enum Judgement {
        /** The second layout is not worse here. */
        NOT_WORSE,
        /** It is worse: the verdict got worse, or it fails in both by more. */
        WORSE,
        /** A verdict is open, or the requirement is no longer asked, or asks something else. */
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
            return first == Verdict.FAIL ? Judgement.NOT_WORSE : Judgement.CANNOT_TELL;
        }
        if (first != Verdict.FAIL) {
            return Judgement.WORSE;
        }
        return failsByMore() ? Judgement.WORSE : Judgement.NOT_WORSE;
    }

    private boolean failsByMore() {
        RequirementMargin one = before.orElseThrow();
        RequirementMargin two = after.orElseThrow();
        double error = Math.sqrt(one.standardError() * one.standardError() + two.standardError() * two.standardError());
        double least = one.unit() == MarginUnit.MILLIMETRES ? ROUNDING : ERRORS * error;
        return one.margin() - two.margin() > least;
    }
}
