package darkrim.verdict;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Tally;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.List;

/**
 * One number that sampling has to decide: a mean on a surface or cell against a limit.
 *
 * @param demand number of the demand that it belongs to
 * @param surface the surface
 * @param cell the cell, or {@link Outcome#WHOLE}
 * @param condition what must hold
 */
record Target(int demand, Surface surface, int cell, Requirement.Condition condition) {
    /** The targets of a demand; none for a demand that proof alone decides. */
    static List<Target> of(int number, Demand demand, Surface surface) {
        Requirement.Condition condition = demand.requirement().condition();
        if (condition instanceof Requirement.AtMost most && most.per() == Requirement.Per.CELL) {
            List<Target> cells = new ArrayList<>();
            for (int cell = 0; cell < surface.grid().orElseThrow().count(); cell++) {
                cells.add(new Target(number, surface, cell, condition));
            }
            return cells;
        }
        return List.of(new Target(number, surface, Outcome.WHOLE, condition));
    }

    LightClass light() {
        return condition instanceof Requirement.AtMost most ? most.light() : LightClass.DIRECT;
    }

    /** What is known so far at a look, at the risk of one target. */
    Outcome outcome(Tally tally, double risk, int look) {
        ConfidenceSequence sequence = new ConfidenceSequence(risk);
        Estimate estimate = estimate(tally);
        double lower = sequence.lower(estimate, look);
        double upper = sequence.upper(estimate, look);
        Verdict verdict = Verdict.UNDECIDED;
        if (condition instanceof Requirement.AtMost most) {
            // One ray that carries light is enough where none may.
            boolean tooMuch = lower > most.limit() || (most.limit() == 0 && estimate.mean() > 0);
            verdict = upper <= most.limit() ? Verdict.PASS : tooMuch ? Verdict.FAIL : verdict;
        }
        double value = estimate.samples() == 0 ? Double.NaN : estimate.mean();
        return new Outcome(surface, cell, verdict, value, new Evidence.Sampled(estimate, lower, upper, risk, look));
    }

    /** Whether the mean, as far as it is known, lies above the limit. */
    boolean seemsToFail(Outcome known) {
        return known.value() > limit();
    }

    /** About how many samples of the surface decide it, going by what is known. */
    double samplesToDecide(Outcome known) {
        Evidence.Sampled sampled = (Evidence.Sampled) known.evidence();
        Estimate estimate = sampled.estimate();
        return estimate.samples() == 0
                ? Double.POSITIVE_INFINITY
                : new ConfidenceSequence(sampled.risk())
                        .samplesFor(estimate, Math.abs(estimate.mean() - limit()), sampled.looks());
    }

    private double limit() {
        return condition instanceof Requirement.AtMost most ? most.limit() : 0;
    }

    private Estimate estimate(Tally tally) {
        return cell == Outcome.WHOLE ? tally.irradiance() : tally.cells().get(cell);
    }
}
