package darkrim.study;

import darkrim.layout.Requirement;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.io.Serializable;

/**
 * One requirement of one layout in numbers that can be drawn and compared: those of its worst surface.
 *
 * @param requirement name of the requirement
 * @param verdict what can be said of all its surfaces together
 * @param value relative irradiance, or share of the pupil; NaN where no value is known
 * @param standardError standard error of the value; 0 where it is exact
 * @param lower what the value is at least, at the stated confidence
 * @param upper what the value is at most
 * @param limit what it must not exceed or, for a share of the pupil, not fall below
 * @param worst the surface, or cell of its map, that matters most
 */
public record RequirementFigure(
        String requirement,
        Verdict verdict,
        double value,
        double standardError,
        double lower,
        double upper,
        double limit,
        String worst)
        implements Serializable {

    /** The figures of a result. */
    static RequirementFigure of(RequirementResult result) {
        Outcome worst = result.worst();
        double value = worst.value();
        double error = 0;
        double lower = value;
        double upper = value;
        if (worst.evidence() instanceof Evidence.Sampled sampled) {
            error = sampled.estimate().standardError();
            lower = sampled.lower();
            upper = sampled.upper();
        }
        return new RequirementFigure(
                result.requirement().name(),
                result.verdict(),
                value,
                error,
                lower,
                upper,
                limit(result.requirement().condition()),
                worst.where());
    }

    private static double limit(Requirement.Condition condition) {
        if (condition instanceof Requirement.AtMost most) {
            return most.limit();
        }
        return condition instanceof Requirement.PupilSeen seen ? seen.share() : 0;
    }
}
