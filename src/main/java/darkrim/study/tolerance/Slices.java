package darkrim.study.tolerance;

import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;

/**
 * Long lists of work in short slices, so that it can be watched and stopped.
 *
 * @param workers do the work
 * @param threads how many there are
 * @param watch hears how far it is
 */
record Slices(Workers workers, int threads, Watch watch) {
    private static final int TASKS_A_THREAD = 2;

    /** Does tasks in order; after a stop the results of those that are done. */
    <T> List<T> all(String step, List<? extends Callable<T>> tasks) {
        List<T> done = new ArrayList<>();
        int slice = TASKS_A_THREAD * threads;
        for (int from = 0; from < tasks.size() && !watch.stop(); from += slice) {
            watch.progress(step, from, tasks.size());
            done.addAll(workers.all(tasks.subList(from, Math.min(tasks.size(), from + slice)).stream()));
        }
        watch.progress(step, done.size(), tasks.size());
        return done;
    }
}
