package darkrim.study.advice;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.FinishSpec;
import darkrim.layout.Layout;
import darkrim.layout.Requirement;
import darkrim.light.Estimate;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginScope;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.Plan;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;

/**
 * Looks at layouts with other values of their dimensions: with the same random numbers and the same number of samples each. A look is by one
 * thread; many threads may look at once.
 */
final class Trials {
    /** Batches of samples for each number that sampling must decide. */
    static final int BATCHES = 32;
    /** A sampled value counts as good when it is below the limit by as many standard errors, and by a reserve. */
    private static final double ERRORS = 3;

    private static final double KEPT = 0.9;

    /** Share of a limit that is kept free. */
    static final double RESERVE = 1 - KEPT;

    private final LayoutFamily family;
    private final Optional<Long> seed;
    private final BooleanSupplier stop;

    Trials(LayoutFamily family, Optional<Long> seed, BooleanSupplier stop) {
        this.family = family;
        this.seed = seed;
        this.stop = stop;
    }

    LayoutFamily family() {
        return family;
    }

    Optional<Long> seed() {
        return seed;
    }

    boolean stopped() {
        return stop.getAsBoolean();
    }

    /** A short look at some requirements. */
    Trial at(Map<String, Double> chosen, Collection<String> requirements) {
        Map<String, Boolean> holds = new LinkedHashMap<>();
        Optional<CheckResult> found = check(chosen, Set.copyOf(requirements), MarginScope.NONE, seed, BATCHES);
        found.ifPresent(result -> result.judgement()
                .requirements()
                .forEach(each -> holds.put(each.requirement().name(), holds(each))));
        boolean cut =
                stopped() || found.map(result -> result.judgement().stopped()).orElse(false);
        return new Trial(holds, found.isPresent(), cut);
    }

    /**
     * A short check; empty if there is no such layout.
     *
     * @param chosen values by name
     * @param requirements the requirements that are asked
     * @param margins which margins are looked for
     * @param otherSeed seed instead of the layout's
     * @param batches batches of samples
     */
    Optional<CheckResult> check(
            Map<String, Double> chosen,
            Set<String> requirements,
            MarginScope margins,
            Optional<Long> otherSeed,
            int batches) {
        Findings findings = new Findings();
        try {
            Layout layout = asking(family.with(chosen, findings), requirements);
            Effort effort = new Effort(1, otherSeed, Optional.of(Long.MAX_VALUE), margins);
            return Optional.of(Check.of(layout, findings, effort, Plan.alike(batches), Watch.stopping(stop)));
        } catch (UnusableInput impossible) {
            return Optional.empty();
        }
    }

    /** The layout with some of its requirements. Where none of them is about reflected light nothing reflects, so that nothing is proved in vain. */
    private static Layout asking(Layout layout, Set<String> requirements) {
        List<Requirement> asked = layout.requirements().stream()
                .filter(each -> requirements.contains(each.name()))
                .toList();
        Map<String, FinishSpec> finishes = new LinkedHashMap<>(layout.finishes());
        if (asked.stream().noneMatch(each -> each.limits(Requirement.LightClass.ONCE_REFLECTED))) {
            finishes.replaceAll((name, finish) -> new FinishSpec(name, 0, 0, finish.source(), finish.place()));
        }
        return new Layout(
                layout.title(),
                layout.revision(),
                layout.source(),
                layout.dimensions(),
                finishes,
                layout.finishRules(),
                layout.beam(),
                layout.sources(),
                layout.parts(),
                asked,
                layout.placementError(),
                layout.sampling(),
                layout.maps(),
                layout.cooldown(),
                layout.warmth());
    }

    private static boolean holds(RequirementResult result) {
        if (result.verdict() != Verdict.UNDECIDED) {
            return result.verdict() == Verdict.PASS
                    && result.outcomes().stream().allMatch(each -> inReserve(result, each));
        }
        return result.requirement().condition() instanceof Requirement.AtMost
                && !result.outcomes().isEmpty()
                && result.outcomes().stream().allMatch(each -> inReserve(result, each));
    }

    private static boolean inReserve(RequirementResult result, Outcome outcome) {
        if (outcome.evidence() instanceof Evidence.Sampled sampled
                && result.requirement().condition() instanceof Requirement.AtMost most) {
            return reserve(sampled.estimate(), most.limit()) >= 0;
        }
        return outcome.verdict() == Verdict.PASS;
    }

    /** How far a sampled value is below a limit for certain and with a reserve, as a share of the limit. */
    static double reserve(Estimate estimate, double limit) {
        return KEPT - (estimate.mean() + ERRORS * estimate.standardError()) / limit;
    }
}
