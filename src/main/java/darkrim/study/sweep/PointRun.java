package darkrim.study.sweep;

import darkrim.study.Point;
import darkrim.study.PointCheck;
import darkrim.study.PointResult;
import darkrim.study.PointWorkers;
import darkrim.study.UnusableStudy;
import darkrim.study.WorkersLost;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Works through points in their order, leaving out those that an earlier run has finished. What an interrupted run and its continuation find
 * together is what one run would have found: a point that is compared with one from before the interruption has that one worked out again. Used
 * by one thread.
 */
final class PointRun {
    /** Points handed to the workers at once: bounds what is held of finished points. */
    private static final int SLICE = 256;
    /** Results that are kept with all their samples, for comparison. */
    private static final int REMEMBERED = 64;

    private final PointCheck check;
    private final double confidence;
    private final PointWorkers workers;
    private final StudyRecord<SweepPoint> record;
    private final Watch watch;
    private final List<SweepPoint> points = new ArrayList<>();
    private final Map<Integer, PointResult> remembered = new LinkedHashMap<>();
    private int announced;

    /**
     * A point to work out.
     *
     * @param chosen values of dimensions by name
     * @param compareWith number of an earlier point to compare it with
     */
    record Task(Map<String, Double> chosen, Optional<Integer> compareWith) {}

    /**
     * @param check checks a point
     * @param confidence of each statement that there is a difference
     * @param workers work out the points
     * @param record keeps them
     * @param watch hears how far it is
     */
    PointRun(PointCheck check, double confidence, PointWorkers workers, StudyRecord<SweepPoint> record, Watch watch) {
        this.check = check;
        this.confidence = confidence;
        this.workers = workers;
        this.record = record;
        this.watch = watch;
    }

    /** All points so far, in the order of the work. */
    List<SweepPoint> points() {
        return List.copyOf(points);
    }

    /** Works out points; false if it was stopped. */
    boolean all(List<Task> tasks) throws WorkersLost, UnusableStudy, IOException {
        announced += tasks.size();
        List<Task> open = new ArrayList<>();
        for (Task task : tasks) {
            int number = points.size() + open.size() + 1;
            if (number <= record.found().size()) {
                SweepPoint known = record.found().get(number - 1);
                if (!known.chosen().equals(new TreeMap<>(task.chosen()))) {
                    throw new UnusableStudy(
                            "the journal holds another point " + number + " than this study: remove it to begin anew");
                }
                points.add(known);
            } else {
                open.add(task);
            }
        }
        tell();
        for (int from = 0; from < open.size(); from += SLICE) {
            List<Task> some = open.subList(from, Math.min(open.size(), from + SLICE));
            if (work(some) < some.size()) {
                return false;
            }
        }
        return true;
    }

    private int work(List<Task> tasks) throws WorkersLost, IOException {
        List<Point> asked = tasks.stream().map(task -> Point.of(task.chosen())).toList();
        int before = points.size();
        try {
            return workers.work(
                    check, asked, result -> finished(tasks.get(points.size() - before), result), watch::stop);
        } catch (UncheckedIOException notKept) {
            throw notKept.getCause();
        }
    }

    private void finished(Task task, PointResult result) {
        int number = points.size() + 1;
        Optional<SweepPoint.Numbered> other =
                task.compareWith().map(known -> new SweepPoint.Numbered(known, resultOf(known)));
        SweepPoint point = SweepPoint.of(number, result, other, confidence);
        try {
            record.append(point);
        } catch (IOException notKept) {
            throw new UncheckedIOException(notKept);
        }
        points.add(point);
        remember(number, result);
        tell();
    }

    private PointResult resultOf(int number) {
        PointResult known = remembered.get(number);
        if (known == null) {
            known = check.at(points.get(number - 1).chosen());
            remember(number, known);
        }
        return known;
    }

    private void remember(int number, PointResult result) {
        remembered.put(number, result);
        if (remembered.size() > REMEMBERED) {
            remembered.remove(remembered.keySet().iterator().next());
        }
    }

    private void tell() {
        watch.progress("checking points", points.size(), announced);
    }
}
