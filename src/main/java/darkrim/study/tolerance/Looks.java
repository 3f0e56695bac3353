package darkrim.study.tolerance;

import darkrim.study.Point;
import darkrim.study.PointCheck;
import darkrim.study.PointResult;
import darkrim.study.PointWorkers;
import darkrim.study.WorkersLost;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Looks at layouts, each once: what this run or an interrupted one has found before is not looked at again. So a study that goes on takes the
 * same way as one that was never interrupted. Used by one thread.
 */
final class Looks {
    /** Looks handed to the workers at once: bounds what is held of finished ones. */
    private static final int SLICE = 256;

    private final DeviatingLayout layout;
    private final LookTable table;
    private final PointWorkers workers;
    private final StudyRecord<Looked> record;
    private final Watch watch;
    private final Map<Look, PointResult> known;

    /** Hears how many of some looks are done. */
    interface Count {
        void done(long looks);
    }

    /**
     * @param layout what is looked at
     * @param table writes and reads looks
     * @param workers look
     * @param record keeps what they find, and knows what an earlier run has found
     * @param watch says when to stop
     */
    Looks(DeviatingLayout layout, LookTable table, PointWorkers workers, StudyRecord<Looked> record, Watch watch) {
        this(layout, table, workers, record, watch, new HashMap<>());
        record.found().forEach(each -> known.put(each.look(), each.result()));
    }

    private Looks(
            DeviatingLayout layout,
            LookTable table,
            PointWorkers workers,
            StudyRecord<Looked> record,
            Watch watch,
            Map<Look, PointResult> known) {
        this.layout = layout;
        this.table = table;
        this.workers = workers;
        this.record = record;
        this.watch = watch;
        this.known = known;
    }

    /** Further looks of the same study, for which the layout is checked in another way. */
    Looks by(PointCheck check) {
        DeviatingLayout other = new DeviatingLayout(check, layout.contributors());
        return new Looks(other, table, workers, record, watch, known);
    }

    /** Looks, showing how far it is. */
    List<PointResult> all(String step, List<Look> looks) throws WorkersLost, IOException {
        return all(looks, done -> watch.progress(step, done, looks.size()));
    }

    /** The results of looks, in their order; after a stop those before the first that is not finished. */
    List<PointResult> all(List<Look> looks, Count count) throws WorkersLost, IOException {
        Set<Look> open = new LinkedHashSet<>(looks);
        open.removeIf(known::containsKey);
        List<Look> waiting = List.copyOf(open);
        long[] done = {looks.size() - waiting.size()};
        count.done(done[0]);
        boolean whole = true;
        for (int from = 0; from < waiting.size() && whole; from += SLICE) {
            List<Look> some = waiting.subList(from, Math.min(waiting.size(), from + SLICE));
            whole = look(some, () -> count.done(++done[0]));
        }
        List<PointResult> results = new ArrayList<>();
        for (Look each : looks) {
            PointResult found = known.get(each);
            if (found == null) {
                break;
            }
            results.add(found);
        }
        return results;
    }

    private boolean look(List<Look> looks, Runnable one) throws WorkersLost, IOException {
        List<Point> points = looks.stream().map(layout::point).toList();
        int[] next = {0};
        try {
            int done = workers.work(
                    layout.check(),
                    points,
                    result -> {
                        keep(new Looked(looks.get(next[0]++), result));
                        one.run();
                    },
                    watch::stop);
            return done == looks.size();
        } catch (UncheckedIOException notKept) {
            throw notKept.getCause();
        }
    }

    private void keep(Looked looked) {
        Looked kept = table.kept(looked);
        try {
            record.append(kept);
        } catch (IOException notKept) {
            throw new UncheckedIOException(notKept);
        }
        known.put(kept.look(), kept.result());
    }
}
