package darkrim.study.sweep;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Requirement;
import darkrim.study.LayoutFamily;
import darkrim.study.PointWorkers;
import darkrim.study.UnusableStudy;
import darkrim.study.WorkersLost;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Checks all points of a design, closes in on the changes of side where that is asked, and says what came out. */
public final class SweepStudy {
    private final LayoutFamily family;
    private final SweepSettings settings;
    private final Design design;
    private final List<String> requirements;

    /**
     * @param family the layouts
     * @param settings what to do; its design has been checked
     */
    public SweepStudy(LayoutFamily family, SweepSettings settings) {
        this.family = family;
        this.settings = settings;
        this.design = settings.design();
        this.requirements =
                family.written().requirements().stream().map(Requirement::name).toList();
    }

    /**
     * Does it.
     *
     * @param workers work out the points; who they are and how many never changes a result
     * @param record keeps the points, and knows those of an earlier run
     * @param watch hears how far it is
     * @throws WorkersLost if the workers cannot go on
     * @throws UnusableStudy if the record holds points of something else
     * @throws UnusableInput if the layout cannot be used
     * @throws IOException if a point cannot be kept
     */
    public SweepResult run(PointWorkers workers, StudyRecord<SweepPoint> record, Watch watch)
            throws WorkersLost, UnusableStudy, UnusableInput, IOException {
        Findings findings = new Findings();
        family.with(Map.of(), findings);
        long seed = settings.seedFor(family);
        List<Map<String, Double>> planned = design.points(seed);
        PointRun run =
                new PointRun(settings.check(family), family.written().sampling().confidence(), workers, record, watch);
        boolean whole = run.all(tasks(planned));
        if (whole && design.refine().isPresent()) {
            whole = closeIn(run, design.refine().get());
        }
        List<SweepPoint> points = design.variations().size() == 1 ? ascending(run.points()) : run.points();
        return new SweepResult(
                family.written(),
                settings,
                seed,
                points,
                planned.size(),
                !whole,
                turns(points),
                idle(points),
                findings.sorted());
    }

    /** Each point of a row is compared with the one before it. */
    private List<PointRun.Task> tasks(List<Map<String, Double>> planned) {
        int row = design.row();
        List<PointRun.Task> tasks = new ArrayList<>();
        for (int i = 0; i < planned.size(); i++) {
            tasks.add(new PointRun.Task(planned.get(i), i % row == 0 ? Optional.empty() : Optional.of(i)));
        }
        return tasks;
    }

    /** Bisects wherever neighbours differ in a verdict, until they are close enough. */
    private boolean closeIn(PointRun run, double width) throws WorkersLost, UnusableStudy, IOException {
        String dimension = design.variations().get(0).dimension();
        while (true) {
            List<SweepPoint> sorted = ascending(run.points());
            List<PointRun.Task> halves = new ArrayList<>();
            for (int i = 1; i < sorted.size(); i++) {
                SweepPoint lower = sorted.get(i - 1);
                double from = lower.chosen().get(dimension);
                double to = sorted.get(i).chosen().get(dimension);
                boolean turns = !Turn.in(sorted.subList(i - 1, i + 1), dimension, requirements)
                        .isEmpty();
                double middle = from + (to - from) / 2;
                // Between two numbers that follow each other there is none.
                if (turns && to - from > width && from < middle && middle < to) {
                    halves.add(new PointRun.Task(Map.of(dimension, middle), Optional.of(lower.number())));
                }
            }
            if (halves.isEmpty()) {
                return true;
            }
            if (!run.all(halves)) {
                return false;
            }
        }
    }

    private List<SweepPoint> ascending(List<SweepPoint> points) {
        String dimension = design.variations().get(0).dimension();
        return points.stream()
                .sorted(Comparator.comparingDouble(point -> point.chosen().get(dimension)))
                .toList();
    }

    private List<Turn> turns(List<SweepPoint> points) {
        if (design.spread().isPresent()) {
            return List.of();
        }
        String last = design.variations().get(design.variations().size() - 1).dimension();
        int row = design.variations().size() == 1 ? Math.max(1, points.size()) : design.row();
        List<Turn> turns = new ArrayList<>();
        for (int from = 0; from < points.size(); from += row) {
            turns.addAll(Turn.in(points.subList(from, Math.min(points.size(), from + row)), last, requirements));
        }
        return turns;
    }

    /** Dimensions along which every group of points that differ in nothing else has one and the same result. */
    private List<String> idle(List<SweepPoint> points) {
        if (design.spread().isPresent() || points.size() < 2) {
            return List.of();
        }
        List<String> idle = new ArrayList<>();
        for (Variation each : design.variations()) {
            Collection<List<SweepPoint>> groups = points.stream()
                    .collect(Collectors.groupingBy(
                            point -> {
                                Map<String, Double> others = new TreeMap<>(point.chosen());
                                others.remove(each.dimension());
                                return others;
                            },
                            LinkedHashMap::new,
                            Collectors.toList()))
                    .values();
            boolean varied = groups.stream().anyMatch(group -> group.size() > 1);
            boolean alike = groups.stream()
                    .allMatch(group ->
                            group.stream().map(SweepStudy::found).distinct().count() == 1);
            if (varied && alike) {
                idle.add(each.dimension());
            }
        }
        return idle;
    }

    private static List<Object> found(SweepPoint point) {
        return List.of(
                point.verdict(),
                point.lines().stream().map(RequirementLine::figure).toList());
    }
}
