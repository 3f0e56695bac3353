package darkrim.study.tolerance;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Place;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Requirement;
import darkrim.sampling.Streams;
import darkrim.study.CheckResult;
import darkrim.study.LayoutFamily;
import darkrim.study.PointCheck;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.stream.Stream;

/**
 * What the tolerances of a layout do to its requirements: the worst case, the root sum square and sampled builds, all from the same
 * tolerances and with the same random numbers at every point, so that what differs comes from the geometry.
 */
public final class ToleranceStudy {
    private final ToleranceSettings settings;
    private final CheckResult drawn;
    private final DeviatingLayout layout;
    private final Slices slices;
    private final Watch watch;

    private ToleranceStudy(
            ToleranceSettings settings, CheckResult drawn, DeviatingLayout layout, Slices slices, Watch watch) {
        this.settings = settings;
        this.drawn = drawn;
        this.layout = layout;
        this.slices = slices;
        this.watch = watch;
    }

    /** Slopes and worst case of a requirement, as far as they were found. */
    private record Edges(RequirementMargin drawn, List<Slope> slopes, Optional<WorstCase> worst) {}

    /**
     * Does a study.
     *
     * @param family the layout
     * @param settings how to go about it
     * @param watch hears how far it is; after a stop what is finished is kept
     * @throws UnusableInput if the layout as drawn has an error, or states no tolerance
     */
    public static ToleranceResult of(LayoutFamily family, ToleranceSettings settings, Watch watch)
            throws UnusableInput {
        long start = System.nanoTime();
        List<Contributor> contributors = Contributor.of(family.written());
        if (contributors.isEmpty()) {
            throw new UnusableInput(List.of(Finding.error(
                    "tolerance",
                    new Place(family.name(), 1, 1),
                    "the layout states no tolerance, expected the key 'tolerance' in a dimension or"
                            + " 'placement_tolerance' in a part")));
        }
        PointCheck check = new PointCheck(family, settings.seed(), settings.batches());
        CheckResult drawn = check.asWritten();
        try (Workers workers = new Workers(settings.threads())) {
            ToleranceStudy study = new ToleranceStudy(
                    settings,
                    drawn,
                    new DeviatingLayout(check, contributors),
                    new Slices(workers, settings.threads(), watch),
                    watch);
            return study.result(start);
        }
    }

    private ToleranceResult result(long start) {
        List<Requirement> requirements = drawn.layout().requirements();
        List<String> names = requirements.stream().map(Requirement::name).toList();
        Streams streams = new Streams(drawn.effort().seed());
        List<Edges> edges = edges(names);
        List<Build> builds = new Builds(layout, names, streams, settings.withMargins()).make(settings.builds(), slices);
        Optional<LoosestFactor> loosest = settings.wantedYield()
                .map(wanted -> new LoosestFactorSearch(layout, builds, wanted, slices)
                        .find(drawn.judgement().verdict()));
        double confidence = drawn.effort().confidence();
        List<RequirementTolerance> lines = new ArrayList<>();
        for (int i = 0; i < edges.size(); i++) {
            lines.add(line(requirements.get(i), i, edges.get(i), builds, confidence));
        }
        return new ToleranceResult(
                drawn,
                settings,
                layout.contributors(),
                lines,
                builds,
                YieldInterval.of(builds.stream().map(Build::verdict).toList(), confidence),
                loosest,
                watch.stop(),
                (System.nanoTime() - start) * 1e-9);
    }

    /** All that does not need builds, requirement by requirement. */
    private List<Edges> edges(List<String> names) {
        int count = layout.contributors().size();
        List<Callable<RequirementMargin>> ends = new ArrayList<>();
        for (String name : names) {
            ends.add(() -> layout.margin(layout.asDrawn(), name));
            for (int i = 0; i < count; i++) {
                int at = i;
                Stream.of(-1, 1).forEach(side -> ends.add(() -> layout.margin(end(at, side), name)));
            }
        }
        List<RequirementMargin> found = slices.all("measuring margins", ends);
        int each = 1 + 2 * count;
        List<Callable<Edges>> searches = new ArrayList<>();
        for (int r = 0; r < names.size() && (r + 1) * each <= found.size(); r++) {
            String name = names.get(r);
            List<RequirementMargin> own = found.subList(r * each, (r + 1) * each);
            searches.add(() -> edges(name, own));
        }
        List<Edges> all = new ArrayList<>(slices.all("looking for the worst case", searches));
        for (int r = all.size(); r < names.size(); r++) {
            // The check of the drawn layout is known in any case; its margin is not.
            all.add(new Edges(unmeasured(r), List.of(), Optional.empty()));
        }
        return all;
    }

    private Edges edges(String name, List<RequirementMargin> found) {
        RequirementMargin asDrawn = found.get(0);
        List<Slope> slopes = new ArrayList<>();
        for (int i = 0; i < layout.contributors().size(); i++) {
            slopes.add(Slope.of(layout.contributors().get(i), asDrawn, found.get(1 + 2 * i), found.get(2 + 2 * i)));
        }
        WorstCase worst = new WorstCaseSearch(layout, name, asDrawn, watch::stop).find(slopes);
        return new Edges(asDrawn, slopes, watch.stop() ? Optional.empty() : Optional.of(worst));
    }

    private RequirementMargin unmeasured(int requirement) {
        return RequirementMargin.unmeasured(drawn.judgement().requirements().get(requirement));
    }

    private List<Double> end(int contributor, int side) {
        List<Double> deviations = new ArrayList<>(layout.asDrawn());
        deviations.set(contributor, layout.contributors().get(contributor).at(side) + 0.0);
        return deviations;
    }

    private RequirementTolerance line(
            Requirement requirement, int index, Edges edges, List<Build> builds, double confidence) {
        String name = requirement.name();
        List<Verdict> verdicts =
                builds.stream().map(build -> build.verdict(name)).toList();
        boolean holds = edges.worst
                .flatMap(worst -> worst.margin().verdict())
                .filter(verdict -> verdict != Verdict.FAIL)
                .isPresent();
        OptionalInt brokenBy = holds
                ? builds.stream()
                        .filter(build -> build.verdict(name) == Verdict.FAIL && isWithin(build))
                        .mapToInt(Build::number)
                        .findFirst()
                : OptionalInt.empty();
        return new RequirementTolerance(
                requirement,
                edges.drawn,
                edges.slopes,
                edges.worst,
                edges.slopes.isEmpty()
                        ? Optional.empty()
                        : RootSumSquare.of(layout.contributors(), edges.drawn.margin(), edges.slopes)
                                .filter(known -> edges.drawn.isKnown()),
                YieldInterval.of(verdicts, confidence),
                brokenBy,
                SampledMargins.of(builds, index, layout.contributors().size()));
    }

    private boolean isWithin(Build build) {
        for (int i = 0; i < build.deviations().size(); i++) {
            if (!layout.contributors().get(i).allows(build.deviations().get(i))) {
                return false;
            }
        }
        return true;
    }
}
