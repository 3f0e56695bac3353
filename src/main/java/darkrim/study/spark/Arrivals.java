package darkrim.study.spark;

import java.util.ArrayDeque;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Future;
import scala.runtime.AbstractFunction2;
import scala.runtime.BoxedUnit;

/** Where results arrive from the cluster, in any order, each under the number of its point. */
final class Arrivals extends AbstractFunction2<Object, SentResult, BoxedUnit> {
    private final Map<Integer, CompletableFuture<SentResult>> awaited = new ConcurrentHashMap<>();
    private final Queue<CompletableFuture<SentResult>> coming = new ArrayDeque<>();

    /**
     * @param count how many will come
     */
    Arrivals(int count) {
        for (int number = 0; number < count; number++) {
            CompletableFuture<SentResult> result = new CompletableFuture<>();
            awaited.put(number, result);
            coming.add(result);
        }
    }

    /** Called by Spark, in a thread of its own, once for each number. */
    @Override
    public BoxedUnit apply(Object number, SentResult result) {
        awaited.remove((Integer) number).complete(result);
        return BoxedUnit.UNIT;
    }

    /** Says of all that have not arrived that they will not. */
    void end(Throwable why) {
        awaited.values().forEach(each -> each.completeExceptionally(why));
    }

    /** The results in the order of the points; for one thread. */
    Queue<? extends Future<SentResult>> coming() {
        return coming;
    }
}
