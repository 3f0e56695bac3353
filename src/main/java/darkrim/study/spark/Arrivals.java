package darkrim.study.spark;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import scala.runtime.AbstractFunction2;
import scala.runtime.BoxedUnit;

/** Where results arrive from the cluster, in any order, each under the number of its point. */
final class Arrivals extends AbstractFunction2<Object, SentResult, BoxedUnit> {
    private final List<CompletableFuture<SentResult>> coming;

    /**
     * @param count how many will come
     */
    Arrivals(int count) {
        coming =
                Stream.generate(CompletableFuture<SentResult>::new).limit(count).toList();
    }

    /** Called by Spark, in a thread of its own. */
    @Override
    public BoxedUnit apply(Object number, SentResult result) {
        coming.get((Integer) number).complete(result);
        return BoxedUnit.UNIT;
    }

    /** Says of all that have not arrived that they will not. */
    void end(Throwable why) {
        coming.forEach(each -> each.completeExceptionally(why));
    }

    /** The results in the order of the points. */
    List<? extends Future<SentResult>> coming() {
        return coming;
    }
}
