package darkrim.study;

import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Whoever works out the points of a study: threads of this program, or machines of a cluster. Which of them it is, and how many they are, never
 * changes a result. Used by one thread at a time; may be given points again and again until it is closed.
 */
public interface PointWorkers extends AutoCloseable {
    /**
     * Works out points and hands over their results one by one, in the order of the points, each as soon as it and all before it are there.
     *
     * @param check how a point is checked
     * @param points what is asked
     * @param results receives the results, in the calling thread
     * @param stop asked several times a second, in the calling thread; once it says yes, no more results come
     * @return how many results were handed over: as many as there are points, unless it was stopped
     * @throws WorkersLost if those who work out points cannot go on; what was handed over until then is good
     * @throws IllegalArgumentException if the layout does not define a name that a point holds
     */
    int work(PointCheck check, List<Point> points, Consumer<PointResult> results, BooleanSupplier stop)
            throws WorkersLost;

    /** Lets go of threads or of the cluster. */
    @Override
    void close();
}
