package darkrim.study.advice;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Requirement;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginScope;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Plan;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;

/**
 * Finds what to change so that a layout passes: checks it; moves each dimension by itself until each requirement changes sides; from that works out
 * the smallest change of all together; checks the layout with it in full. The same layout, settings and seed give the same advice on any
 * number of threads.
 */
public final class AdviceStudy {
    private static final int HALVINGS = 5;
    private static final int FEW_HALVINGS = 3;
    /** Rounds from a new start, where the first leads to nothing. */
    private static final int MORE_ROUNDS = 2;

    private final LayoutFamily family;
    private final AdviceSettings settings;
    private final Watch watch;
    private final List<FreeDimension> dimensions;
    private final List<String> requirements;
    private final Trials trials;

    /**
     * @param family the layout
     * @param settings what may change
     * @param watch hears how far it is
     * @throws UnusableAdvice if the settings do not fit the layout
     */
    public AdviceStudy(LayoutFamily family, AdviceSettings settings, Watch watch) throws UnusableAdvice {
        this.family = family;
        this.settings = settings;
        this.watch = watch;
        this.dimensions = FreeDimensions.of(family, settings);
        this.requirements =
                family.written().requirements().stream().map(Requirement::name).toList();
        if (requirements.isEmpty()) {
            throw new UnusableAdvice("the layout has no requirement");
        }
        this.trials = new Trials(family, settings.seed(), watch::stop);
    }

    /**
     * Does it.
     *
     * @throws UnusableInput if the layout as written cannot be checked
     */
    public Advice run() throws UnusableInput {
        CheckResult before = check(Map.of());
        List<RequirementMargin> margins = RequirementMargin.of(before);
        Set<String> wanting = new LinkedHashSet<>();
        margins.stream().filter(figure -> !figure.holds()).forEach(figure -> wanting.add(figure.requirement()));
        List<Blackness> blackness = Blackness.of(before);
        if (wanting.isEmpty() || watch.stop()) {
            return advice(before, margins, List.of(), List.of(), Optional.empty(), Optional.empty(), blackness);
        }
        try (Workers workers = new Workers(settings.threads())) {
            Map<String, Double> start = new LinkedHashMap<>();
            dimensions.forEach(each -> start.put(each.name(), each.value()));
            Trial atStart = trials.at(start, requirements);
            if (atStart.stopped()) {
                return advice(before, margins, List.of(), List.of(), Optional.empty(), Optional.empty(), blackness);
            }
            List<Flip> flips = flips(workers, start, atStart, HALVINGS);
            Search search = search(workers, start, atStart, flips);
            Optional<Proposal> proposal = Optional.empty();
            if (search.passing.isPresent() && !watch.stop()) {
                proposal = Optional.of(proposal(search.passing.get()));
            }
            // What a short look takes to hold changes sides the wrong way.
            List<String> failing =
                    wanting.stream().filter(each -> !atStart.holds(each)).toList();
            List<SmallestChange> changes = changes(workers, failing, flips);
            List<Slope> slopes = slopes(workers, before, wanting);
            return advice(before, margins, slopes, changes, proposal, search.exclusion, blackness);
        }
    }

    private Advice advice(
            CheckResult before,
            List<RequirementMargin> margins,
            List<Slope> slopes,
            List<SmallestChange> changes,
            Optional<Proposal> proposal,
            Optional<Exclusion> exclusion,
            List<Blackness> blackness) {
        boolean stopped = watch.stop() || before.judgement().stopped();
        return new Advice(before, margins, dimensions, slopes, changes, proposal, exclusion, blackness, stopped);
    }

    private CheckResult check(Map<String, Double> chosen) throws UnusableInput {
        Findings findings = new Findings();
        Effort effort =
                new Effort(settings.threads(), settings.seed(), settings.mostSamples(), MarginScope.REQUIREMENTS);
        return Check.of(family.with(chosen, findings), findings, effort, Plan.FULL, watch);
    }

    private Proposal proposal(Map<String, Double> values) throws UnusableInput {
        Map<String, Double> changed = new LinkedHashMap<>();
        double sum = 0;
        for (FreeDimension each : dimensions) {
            double value = values.get(each.name());
            if (value != each.value()) {
                changed.put(each.name(), value);
                sum += Math.abs(value - each.value()) / each.scale();
            }
        }
        return new Proposal(changed, sum, check(changed));
    }

    private List<Flip> flips(Workers workers, Map<String, Double> start, Trial atStart, int halvings) {
        List<Callable<List<Flip>>> tasks = new ArrayList<>();
        AxisSearch search = new AxisSearch(trials, start, requirements, atStart, halvings);
        for (FreeDimension each : dimensions) {
            tasks.add(() -> search.along(each, true));
            tasks.add(() -> search.along(each, false));
        }
        return done(workers, "moving one dimension at a time", tasks);
    }

    /** What a search for all requirements together came to. */
    private record Search(Optional<Map<String, Double>> passing, Optional<Exclusion> exclusion) {}

    private Search search(Workers workers, Map<String, Double> start, Trial atStart, List<Flip> flips) {
        JointSearch joint = new JointSearch(dimensions, requirements, trials);
        LinearStep step = new LinearStep(dimensions, start, holds(atStart), flips);
        watch.progress("changing all dimensions together", 0, MORE_ROUNDS + 1);
        JointSearch.Found found = joint.from(step, start);
        for (int round = 1; round <= MORE_ROUNDS && found.passing().isEmpty() && !watch.stop(); round++) {
            Map<String, Double> nearest = found.nearest();
            if (nearest.equals(start)) {
                break;
            }
            Trial there = trials.at(nearest, requirements);
            if (there.stopped() || !there.possible()) {
                break;
            }
            List<Flip> again = flips(workers, nearest, there, FEW_HALVINGS);
            watch.progress("changing all dimensions together", round, MORE_ROUNDS + 1);
            found = joint.from(new LinearStep(dimensions, nearest, holds(there), again), nearest);
        }
        return new Search(
                found.passing(),
                found.passing().isPresent() || watch.stop() ? Optional.empty() : step.exclusion(requirements));
    }

    private static Map<String, Boolean> holds(Trial trial) {
        Map<String, Boolean> holds = new LinkedHashMap<>(trial.holds());
        holds.put(Flip.GEOMETRY, true);
        return holds;
    }

    private List<SmallestChange> changes(Workers workers, List<String> failing, List<Flip> flips) {
        List<Callable<List<SmallestChange>>> tasks = new ArrayList<>();
        for (String requirement : failing) {
            for (FreeDimension dimension : dimensions) {
                flips.stream()
                        .filter(flip -> flip.requirement().equals(requirement)
                                && flip.dimension().equals(dimension.name()))
                        .forEach(flip -> tasks.add(() -> List.of(change(dimension, flip))));
            }
        }
        return done(workers, "looking at what each change does", tasks);
    }

    private SmallestChange change(FreeDimension dimension, Flip flip) {
        List<RequirementMargin> effects = trials.check(
                        Map.of(dimension.name(), flip.far()),
                        Set.copyOf(requirements),
                        MarginScope.REQUIREMENTS,
                        settings.seed(),
                        Trials.BATCHES)
                .filter(result -> !watch.stop())
                .map(RequirementMargin::of)
                .orElse(List.of());
        return new SmallestChange(flip.requirement(), dimension.name(), dimension.value(), flip.far(), effects);
    }

    private List<Slope> slopes(Workers workers, CheckResult before, Set<String> wanting) {
        SlopeSearch search = new SlopeSearch(trials, before, wanting);
        List<Callable<List<Slope>>> tasks = new ArrayList<>();
        dimensions.forEach(each -> tasks.add(() -> search.along(each)));
        return done(workers, "measuring slopes", tasks);
    }

    private <T> List<T> done(Workers workers, String step, List<Callable<List<T>>> tasks) {
        List<T> all = new ArrayList<>();
        int slice = settings.threads();
        for (int from = 0; from < tasks.size() && !watch.stop(); from += slice) {
            watch.progress(step, from, tasks.size());
            workers.all(tasks.subList(from, Math.min(tasks.size(), from + slice)).stream())
                    .forEach(all::addAll);
        }
        return all;
    }
}
