package darkrim.study.tolerance;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Place;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Requirement;
import darkrim.sampling.Streams;
import darkrim.study.CheckResult;
import darkrim.study.LayoutFamily;
import darkrim.study.PointCheck;
import darkrim.study.PointResult;
import darkrim.study.PointWorkers;
import darkrim.study.RequirementMargin;
import darkrim.study.WorkersLost;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the tolerances of a layout do to its requirements: the worst case, the root sum square and sampled builds, all from the same
 * tolerances and with the same random numbers at every point, so that what differs comes from the geometry.
 */
public final class ToleranceStudy {
    private final LayoutFamily family;
    private final ToleranceSettings settings;
    private final CheckResult drawn;
    private final List<Contributor> contributors;
    private final Looks looks;
    private final Watch watch;

    private ToleranceStudy(
            LayoutFamily family,
            ToleranceSettings settings,
            CheckResult drawn,
            List<Contributor> contributors,
            Looks looks,
            Watch watch) {
        this.family = family;
        this.settings = settings;
        this.drawn = drawn;
        this.contributors = contributors;
        this.looks = looks;
        this.watch = watch;
    }

    /** Slopes and worst case of a requirement, as far as they were found. */
    private record Edges(RequirementMargin drawn, List<Slope> slopes, Optional<WorstCase> worst) {}

    /**
     * How a study's looks are written, for the record that keeps them.
     *
     * @throws UnusableInput if the layout states no tolerance
     */
    public static LookTable table(LayoutFamily family) throws UnusableInput {
        return new LookTable(contributors(family), family.written().requirements());
    }

    private static List<Contributor> contributors(LayoutFamily family) throws UnusableInput {
        List<Contributor> contributors = Contributor.of(family.written());
        if (contributors.isEmpty()) {
            throw new UnusableInput(List.of(Finding.error(
                    "tolerance",
                    new Place(family.name(), 1, 1),
                    "the layout states no tolerance, expected the key 'tolerance' in a dimension or"
                            + " 'placement_tolerance' in a part")));
        }
        return contributors;
    }

    /**
     * Does a study.
     *
     * @param family the layout
     * @param settings how to go about it
     * @param workers look at layouts; who they are and how many never changes a result
     * @param record keeps what was found, and knows what an earlier run has found
     * @param watch hears how far it is; after a stop what is finished is shown
     * @throws UnusableInput if the layout as drawn has an error, or states no tolerance
     * @throws WorkersLost if the workers cannot go on
     * @throws IOException if something finished cannot be kept
     */
    public static ToleranceResult of(
            LayoutFamily family,
            ToleranceSettings settings,
            PointWorkers workers,
            StudyRecord<Looked> record,
            Watch watch)
            throws UnusableInput, WorkersLost, IOException {
        long start = System.nanoTime();
        List<Contributor> contributors = contributors(family);
        PointCheck check = settings.check(family);
        CheckResult drawn = check.asWritten();
        Looks looks = new Looks(new DeviatingLayout(check, contributors), table(family), workers, record, watch);
        return new ToleranceStudy(family, settings, drawn, contributors, looks, watch).result(start);
    }

    private ToleranceResult result(long start) throws WorkersLost, IOException {
        List<Requirement> requirements = drawn.layout().requirements();
        List<String> names = requirements.stream().map(Requirement::name).toList();
        Streams streams = new Streams(drawn.effort().seed());
        double confidence = drawn.effort().confidence();
        List<Edges> edges = edges(names);
        List<Build> builds =
                new Builds(contributors, streams).make(settings.builds(), looks.by(settings.checkOfBuilds(family)));
        Optional<LoosestFactors> loosest = Optional.empty();
        if (settings.wantedYield().isPresent()) {
            loosest = Optional.of(new LoosestFactorSearch(builds, looks, confidence)
                    .find(settings.wantedYield().get(), drawn.judgement().verdict()));
        }
        List<RequirementTolerance> lines = new ArrayList<>();
        for (int i = 0; i < edges.size(); i++) {
            lines.add(line(requirements.get(i), i, edges.get(i), builds, confidence));
        }
        return new ToleranceResult(
                drawn,
                settings,
                contributors,
                lines,
                builds,
                YieldInterval.of(builds.stream().map(Build::verdict).toList(), confidence),
                loosest,
                watch.stop(),
                (System.nanoTime() - start) * 1e-9);
    }

    /** All that does not need builds, requirement by requirement. */
    private List<Edges> edges(List<String> names) throws WorkersLost, IOException {
        List<Double> asDrawn = contributors.stream().map(each -> 0.0).toList();
        List<Look> ends = new ArrayList<>();
        for (String name : names) {
            ends.add(new Look(asDrawn, name));
            for (int i = 0; i < contributors.size(); i++) {
                ends.add(new Look(end(asDrawn, i, -1), name));
                ends.add(new Look(end(asDrawn, i, 1), name));
            }
        }
        List<RequirementMargin> found = margins(looks.all("measuring margins", ends));
        int each = 1 + 2 * contributors.size();
        List<String> measured = names.subList(0, found.size() / each);
        List<List<Slope>> slopes = new ArrayList<>();
        List<WorstCaseSearch> searches = new ArrayList<>();
        for (int r = 0; r < measured.size(); r++) {
            List<RequirementMargin> own = found.subList(r * each, (r + 1) * each);
            slopes.add(slopes(own));
            searches.add(new WorstCaseSearch(contributors, own.get(0), slopes.get(r)));
        }
        search(measured, searches);
        List<Edges> all = new ArrayList<>();
        for (int r = 0; r < names.size(); r++) {
            // The check of the drawn layout is known in any case; its margin is not.
            all.add(
                    r >= measured.size()
                            ? new Edges(unmeasured(r), List.of(), Optional.empty())
                            : new Edges(
                                    found.get(r * each),
                                    slopes.get(r),
                                    Optional.of(searches.get(r))
                                            .filter(search -> search.next().isEmpty())
                                            .map(WorstCaseSearch::result)));
        }
        return all;
    }

    /** Goes on with all searches side by side, a look or more each at a time; after a stop some are not at their end. */
    private void search(List<String> names, List<WorstCaseSearch> searches) throws WorkersLost, IOException {
        while (true) {
            List<Look> wanted = new ArrayList<>();
            for (int r = 0; r < names.size(); r++) {
                String name = names.get(r);
                searches.get(r).next().forEach(deviations -> wanted.add(new Look(deviations, name)));
            }
            if (wanted.isEmpty()) {
                return;
            }
            long before = searches.stream().mapToLong(WorstCaseSearch::looks).sum();
            long all =
                    before + searches.stream().mapToLong(WorstCaseSearch::left).sum();
            List<RequirementMargin> found = margins(
                    looks.all(wanted, done -> watch.progress("looking for the worst case", before + done, all)));
            if (found.size() < wanted.size()) {
                return;
            }
            int from = 0;
            for (WorstCaseSearch each : searches) {
                int count = each.next().size();
                if (count > 0) {
                    each.found(found.subList(from, from + count));
                }
                from += count;
            }
        }
    }

    private static List<RequirementMargin> margins(List<PointResult> results) {
        return results.stream().map(each -> each.margins().get(0)).toList();
    }

    private List<Slope> slopes(List<RequirementMargin> found) {
        List<Slope> slopes = new ArrayList<>();
        for (int i = 0; i < contributors.size(); i++) {
            slopes.add(Slope.of(contributors.get(i), found.get(0), found.get(1 + 2 * i), found.get(2 + 2 * i)));
        }
        return slopes;
    }

    private RequirementMargin unmeasured(int requirement) {
        return RequirementMargin.unmeasured(drawn.judgement().requirements().get(requirement));
    }

    private List<Double> end(List<Double> asDrawn, int contributor, int side) {
        List<Double> deviations = new ArrayList<>(asDrawn);
        deviations.set(contributor, contributors.get(contributor).at(side) + 0.0);
        return deviations;
    }

    private RequirementTolerance line(
            Requirement requirement, int index, Edges edges, List<Build> builds, double confidence) {
        String name = requirement.name();
        List<Verdict> verdicts =
                builds.stream().map(build -> build.verdict(name)).toList();
        List<Build> within =
                builds.stream().filter(build -> build.isWithin(contributors)).toList();
        Optional<RequirementTolerance.WorseBuild> worse = edges.worst
                .map(WorstCase::verdict)
                .flatMap(worst -> RequirementTolerance.WorseBuild.of(within, name, worst));
        return new RequirementTolerance(
                requirement,
                edges.drawn,
                edges.slopes,
                edges.worst,
                edges.slopes.isEmpty() ? Optional.empty() : RootSumSquare.of(contributors, edges.drawn, edges.slopes),
                YieldInterval.of(verdicts, confidence),
                worse,
                edges.worst.flatMap(worst -> RequirementTolerance.LesserBuild.of(within, index, worst.margin())),
                SampledMargins.of(builds, index, contributors.size()));
    }
}
