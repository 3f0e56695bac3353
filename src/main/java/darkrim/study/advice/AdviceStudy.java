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
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;

/**
 * Finds what to change so that a layout passes: checks it; moves each dimension by itself until each requirement changes sides; from that works out
 * the smallest change of all together; checks the layout with it in full. The same layout, settings and seed give the same advice on any
 * number of threads.
 */
public final class AdviceStudy {
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
            return unchanged(before, margins, List.of(), List.of(), blackness);
        }
        try (Workers workers = new Workers(settings.threads())) {
            Map<String, Double> start = new LinkedHashMap<>();
            dimensions.forEach(each -> start.put(each.name(), each.value()));
            Trial atStart = trials.at(start, requirements);
            if (atStart.stopped()) {
                return unchanged(before, margins, List.of(), List.of(), blackness);
            }
            // What a short look takes to hold changes sides the wrong way.
            List<String> failing =
                    wanting.stream().filter(each -> !atStart.holds(each)).toList();
            List<String> open = undecided(margins).filter(atStart::holds).toList();
            if (open.size() == wanting.size() && atStart.holdsAll(requirements)) {
                List<Slope> slopes = slopes(workers, before, wanting);
                return unchanged(before, margins, slopes, open, blackness);
            }
            List<FreeDimension> reachable = reachable(workers, start);
            List<Flip> flips = flips(workers, reachable, start, failing);
            JointSearch.Found found = search(workers, reachable, start, atStart, flips);
            Optional<Map<String, Double>> passing =
                    passing(found).filter(values -> !changed(values).isEmpty());
            Optional<Proposal> proposal = Optional.empty();
            if (passing.isPresent() && !watch.stop()) {
                proposal = Optional.of(proposal(passing.get()));
            }
            List<SmallestChange> changes = changes(workers, failing, flips);
            List<Slope> slopes = slopes(workers, before, wanting);
            return new Advice(
                    before,
                    margins,
                    dimensions,
                    slopes,
                    changes,
                    open,
                    proposal,
                    proposal.isPresent() || watch.stop() ? Optional.empty() : Optional.of(nearest(found)),
                    found.exclusion(),
                    blackness,
                    watch.stop());
        }
    }

    private static Stream<String> undecided(List<RequirementMargin> margins) {
        return margins.stream()
                .filter(figure -> figure.verdict()
                        .filter(found -> found == Verdict.UNDECIDED)
                        .isPresent())
                .map(RequirementMargin::requirement);
    }

    private Advice unchanged(
            CheckResult before,
            List<RequirementMargin> margins,
            List<Slope> slopes,
            List<String> open,
            List<Blackness> blackness) {
        return new Advice(
                before,
                margins,
                dimensions,
                slopes,
                List.of(),
                open,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                blackness,
                watch.stop() || before.judgement().stopped());
    }

    private Nearest nearest(JointSearch.Found found) {
        Map<String, Double> values = found.nearest().values();
        Trial there = trials.at(values, requirements);
        return new Nearest(
                changed(values),
                requirements.stream().filter(each -> !there.holds(each)).toList());
    }

    private Map<String, Double> changed(Map<String, Double> values) {
        Map<String, Double> changed = new LinkedHashMap<>();
        dimensions.stream()
                .filter(each -> values.get(each.name()) != each.value())
                .forEach(each -> changed.put(each.name(), values.get(each.name())));
        return changed;
    }

    private CheckResult check(Map<String, Double> chosen) throws UnusableInput {
        Findings findings = new Findings();
        Effort effort =
                new Effort(settings.threads(), settings.seed(), settings.mostSamples(), MarginScope.REQUIREMENTS);
        return Check.of(family.with(chosen, findings), findings, effort, Plan.FULL, watch);
    }

    private Proposal proposal(Map<String, Double> values) throws UnusableInput {
        Map<String, Double> changed = changed(values);
        CheckResult then = check(changed);
        return new Proposal(changed, new PenaltyStep(dimensions).change(values), then, RequirementMargin.of(then));
    }

    /** The dimensions, each no farther than a layout is possible. */
    private List<FreeDimension> reachable(Workers workers, Map<String, Double> start) {
        List<Callable<List<FreeDimension>>> tasks = new ArrayList<>();
        for (FreeDimension each : dimensions) {
            tasks.add(() -> List.of(new AxisSearch(trials, start, List.of()).possible(each)));
        }
        return done(workers, "looking for what can be built", tasks);
    }

    /** Where requirements that fail begin to hold along the axes through some values. */
    private List<Flip> flips(
            Workers workers, List<FreeDimension> reachable, Map<String, Double> from, Collection<String> failing) {
        List<Callable<List<Flip>>> tasks = new ArrayList<>();
        AxisSearch search = new AxisSearch(trials, from, failing);
        for (FreeDimension each : reachable) {
            tasks.add(() -> search.along(each, true));
            tasks.add(() -> search.along(each, false));
        }
        return done(workers, "moving one dimension at a time", tasks);
    }

    private JointSearch.Found search(
            Workers workers,
            List<FreeDimension> reachable,
            Map<String, Double> start,
            Trial atStart,
            List<Flip> flips) {
        Standings standings = new Standings(trials);
        Standing first = standings.at(start, false);
        Map<String, Double> allowed = new LinkedHashMap<>();
        for (Requirement each : family.written().requirements()) {
            double room = first.room(each.name());
            if (each.condition() instanceof Requirement.PupilSeen && atStart.holds(each.name()) && room < 0) {
                allowed.put(each.name(), -room);
            }
        }
        JointSearch.Sides sides = (from, failing) ->
                new Planes(reachable, from, from.equals(start) ? flips : flips(workers, reachable, from, failing));
        return new JointSearch(reachable, standings, sides, allowed, workers, watch).from(first);
    }

    /** Round values with some room in every requirement; where there are none, those that hold by a hair: the full check judges them. */
    private Optional<Map<String, Double>> passing(JointSearch.Found found) {
        Map<String, Double> nearest = found.nearest().values();
        Rounding rounding = new Rounding(dimensions);
        Optional<Map<String, Double>> roomy = found.holds() && !watch.stop()
                ? rounding.of(
                        nearest, values -> holds(values) && found.measure().isRoomy(values))
                : Optional.empty();
        return roomy.isEmpty() && !watch.stop() && holds(nearest) ? rounding.of(nearest, this::holds) : roomy;
    }

    /** Whether values hold in a short look. */
    private boolean holds(Map<String, Double> values) {
        Trial trial = trials.at(values, requirements);
        return !trial.stopped() && trial.holdsAll(requirements);
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

    /** With a round value a little farther than the one that was found, if the requirement holds there too. */
    private SmallestChange change(FreeDimension dimension, Flip flip) {
        double round = Rounding.outward(dimension, flip.far());
        boolean holds = trials.at(Map.of(dimension.name(), round), List.of(flip.requirement()))
                .holds(flip.requirement());
        return change(dimension, flip, holds ? round : flip.far());
    }

    private SmallestChange change(FreeDimension dimension, Flip flip, double to) {
        List<RequirementMargin> effects = trials.check(
                        Map.of(dimension.name(), to),
                        Set.copyOf(requirements),
                        MarginScope.REQUIREMENTS,
                        settings.seed(),
                        Trials.BATCHES)
                .filter(result -> !watch.stop())
                .map(RequirementMargin::of)
                .orElse(List.of());
        return new SmallestChange(flip.requirement(), dimension.name(), dimension.value(), to, effects);
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
