package darkrim.study;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.verdict.Evidence;
import darkrim.verdict.Judgement;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** Reads the figures of requirements out of what was found. */
final class FigureReading {
    private final Judgement judgement;
    private final List<RequirementMargin> margins;

    /**
     * @param result what was found
     * @param scope which margins were looked for
     */
    FigureReading(CheckResult result, MarginScope scope) {
        this.judgement = result.judgement();
        this.margins = scope == MarginScope.NONE
                ? judgement.requirements().stream()
                        .map(RequirementMargin::unmeasured)
                        .toList()
                : RequirementMargin.of(result);
    }

    /** The margins that were looked for, in the order of the layout; not known where none was. */
    List<RequirementMargin> margins() {
        return margins;
    }

    List<RequirementFigure> all() {
        List<RequirementFigure> figures = new ArrayList<>();
        for (int i = 0; i < margins.size(); i++) {
            figures.add(of(judgement.requirements().get(i), margins.get(i)));
        }
        return figures;
    }

    /** A value with its error and what is known of it for certain. */
    private record Known(double value, double error, double lower, double upper) {
        private static final Known NOTHING = new Known(Double.NaN, Double.NaN, Double.NaN, Double.NaN);

        private static Known exact(double value) {
            return new Known(value, 0, value, value);
        }

        private static Known sampled(Estimate estimate, double lower, double upper) {
            boolean none = estimate.samples() == 0;
            return new Known(
                    none ? Double.NaN : estimate.mean(), none ? Double.NaN : estimate.standardError(), lower, upper);
        }
    }

    private RequirementFigure of(RequirementResult result, RequirementMargin found) {
        Requirement.Condition condition = result.requirement().condition();
        String name = result.requirement().name();
        double limit = RequirementFigure.limit(condition);
        if (result.outcomes().isEmpty()) {
            Known none = Known.NOTHING;
            return new RequirementFigure(
                    name,
                    result.verdict(),
                    none.value,
                    none.error,
                    none.lower,
                    none.upper,
                    limit,
                    Double.NaN,
                    false,
                    "",
                    new TreeMap<>());
        }
        Outcome worst = result.worst();
        Known known = known(condition, worst);
        // The margin of a limit is that of the value beside it, even where a bound alone decides.
        boolean ofValue = found.unit() == MarginUnit.RELATIVE_IRRADIANCE;
        double margin = !ofValue ? found.margin() : result.isDarknessInDoubt() ? Double.NaN : limit - known.value;
        boolean atLeast = !ofValue && found.isBound() && margin >= 0;
        return new RequirementFigure(
                name,
                result.verdict(),
                known.value,
                known.error,
                known.lower,
                known.upper,
                limit,
                margin,
                atLeast,
                worst.where(),
                values(condition, result.outcomes()));
    }

    private SortedMap<String, SurfaceValue> values(Requirement.Condition condition, List<Outcome> outcomes) {
        SortedMap<String, SurfaceValue> values = new TreeMap<>();
        for (Outcome outcome : outcomes) {
            Known known = known(condition, outcome);
            if (!Double.isNaN(known.value)) {
                List<Double> means = known.error == 0 && known.lower == known.upper
                        ? List.of()
                        : judgement.batches().of(outcome.surface(), light(condition), outcome.cell());
                values.put(outcome.where(), new SurfaceValue(known.value, means));
            }
        }
        return values;
    }

    private Known known(Requirement.Condition condition, Outcome outcome) {
        Evidence evidence = outcome.evidence();
        if (evidence instanceof Evidence.ProvedDark) {
            return Known.exact(0);
        }
        if (evidence instanceof Evidence.DarkBehindFacets) {
            return Known.NOTHING;
        }
        if (evidence instanceof Evidence.Distance distance) {
            return Known.exact(distance.millimetres());
        }
        if (evidence instanceof Evidence.ExactShare share) {
            return Double.isNaN(outcome.value())
                    ? Known.NOTHING
                    : new Known(share.atMost(), 0, share.atLeast(), share.atMost());
        }
        if (evidence instanceof Evidence.Sampled sampled) {
            return Known.sampled(sampled.estimate(), sampled.lower(), sampled.upper());
        }
        if (evidence instanceof Evidence.ProvedBound bound) {
            return bound.atMost() == 0
                    ? Known.exact(0)
                    : Known.sampled(judgement.sampled(condition, outcome), 0, bound.atMost());
        }
        return Known.sampled(judgement.sampled(condition, outcome), 0, Double.NaN);
    }

    private static LightClass light(Requirement.Condition condition) {
        return condition instanceof Requirement.AtMost most ? most.light() : LightClass.DIRECT;
    }
}
